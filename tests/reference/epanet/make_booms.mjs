// SPDX-License-Identifier: GPL-3.0-or-later
// Writes booms.csv: random booms solved by EPANET (npm package epanet-js), for boom_network_test.cpp.
// Run in this folder:  npm install --no-save epanet-js@0.9.0 && node make_booms.mjs
import { writeFileSync } from "node:fs";
import { NodeProperty, Project, Workspace } from "epanet-js";

const kBooms = 240;
// EPANET reckons with 32.2 ft/s²; heads become pressures with the same figure.
const kGravity = 32.2 * 0.3048;
const kPerMetre = 1000 * kGravity; // Pa per metre of water

let state = 20240917;
const random = () => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 4294967296;
};
const between = (a, b) => a + (b - a) * random();
const whole = (a, b) => Math.floor(between(a, b + 1));

function makeBoom(id) {
  const nozzles = whole(8, 160);
  const feeds = new Set([whole(1, nozzles)]);
  if (random() < 0.5) feeds.add(whole(1, nozzles));
  return {
    id, nozzles,
    spacing: [0.25, 0.381, 0.5, 0.508, 0.762][whole(0, 4)],
    bore: between(0.013, 0.032),
    roughness: random() < 0.3 ? between(5e-6, 5e-5) : 1.5e-6,
    viscosity: random() < 0.3 ? between(0.8e-6, 3e-6) : 1e-6,
    feeds: [...feeds].sort((a, b) => a - b),
    ring: random() < 0.35,
    flow: between(0.3, 2.4) / 60000, // m³/s at 3 bar
    exponent: random() < 0.3 ? between(0.42, 0.55) : 0.5,
    pressure: between(0.8e5, 6e5),
  };
}

function inpOf(b) {
  const isFeed = (i) => b.feeds.includes(i);
  // Emitter: L/s per (metre of head)^n.
  const coefficient = (b.flow * 1000) / Math.pow(3e5 / kPerMetre, b.exponent);
  const lines = ["[JUNCTIONS]"];
  for (let i = 1; i <= b.nozzles; ++i) if (!isFeed(i)) lines.push(`N${i} 0 0`);
  lines.push("[RESERVOIRS]");
  for (const f of b.feeds) lines.push(`N${f} ${(b.pressure / kPerMetre).toPrecision(15)}`);
  lines.push("[EMITTERS]");
  for (let i = 1; i <= b.nozzles; ++i) if (!isFeed(i)) lines.push(`N${i} ${coefficient.toPrecision(15)}`);
  lines.push("[PIPES]");
  const pipe = (name, from, to, length) =>
    lines.push(`${name} N${from} N${to} ${length.toPrecision(15)} ${(b.bore * 1000).toPrecision(15)} ${(b.roughness * 1000).toPrecision(15)} 0 Open`);
  for (let i = 1; i < b.nozzles; ++i) pipe(`P${i}`, i, i + 1, b.spacing);
  if (b.ring) pipe("PR", b.nozzles, 1, (b.nozzles - 1) * b.spacing);
  lines.push("[OPTIONS]", "Units LPS", "Headloss D-W", `Viscosity ${b.viscosity.toExponential(12)}`, `Emitter Exponent ${b.exponent.toPrecision(15)}`,
    "Accuracy 0.00001", "FLOWCHANGE 0.0000001", "HEADERROR 0.0000001", "Trials 500", "[TIMES]", "Duration 0", "[END]");
  return lines.join("\n");
}

const workspace = new Workspace();
await workspace.loadModule();

function solve(b) {
  const model = new Project(workspace);
  workspace.writeFile("boom.inp", inpOf(b));
  model.open("boom.inp", "boom.rpt", "boom.bin");
  model.openH();
  model.initH(0);
  model.runH();
  const pressures = [];
  for (let i = 1; i <= b.nozzles; ++i) {
    const head = b.feeds.includes(i) ? b.pressure / kPerMetre : model.getNodeValue(model.getNodeIndex(`N${i}`), NodeProperty.Pressure);
    pressures.push((head * kPerMetre).toFixed(3));
  }
  const version = workspace.version;
  model.closeH();
  model.close();
  return { pressures, version };
}

const rows = [];
let version = "";
for (let id = 1; id <= kBooms; ++id) {
  const b = makeBoom(id);
  const solved = solve(b);
  version = solved.version;
  rows.push([id, b.nozzles, b.spacing, b.bore, b.roughness, b.viscosity, b.feeds.join(" "), b.ring ? 1 : 0, b.flow, b.exponent, b.pressure, solved.pressures.join(" "), "invented boom; EPANET"].join(","));
}
const head = [
  `# Booms drawn at random (invented), solved by EPANET ${version} through npm epanet-js 0.9.0 (MIT); written by make_booms.mjs.`,
  "# Held pressure at the feeds; Darcy-Weisbach; pressures of the nozzles from 1 on.",
  "id,nozzles,spacing_m,bore_m,roughness_m,viscosity_m2_per_s,feeds,ring,flow_at_3_bar_m3_per_s,exponent,feed_pa,pressures_pa,source",
];
writeFileSync("booms.csv", head.concat(rows).join("\n") + "\n");
console.log(`${rows.length} booms, EPANET ${version}`);
