// SPDX-License-Identifier: GPL-3.0-or-later
// Times EPANET on the boom of 144 nozzles that core_bench.cpp solves (BoomOf144Nozzles), once with
// reading the network and once solving alone. compare_epanet.sh runs both and prints the ratio.
import { Project, Workspace } from "epanet-js";

const kNozzles = 144, kSpacing = 0.25, kBore = 20, kRoughness = 0.0015; // m, mm, mm
const kFeeds = [36, 108];
const kPerMetre = 1000 * 32.2 * 0.3048; // Pa per metre of water, as EPANET reckons
const kHead = 3e5 / kPerMetre;

function network() {
  const coefficient = 0.8 / 60 / Math.sqrt(kHead); // 0.8 L/min at 3 bar, in L/s per m^0.5
  const isFeed = (i) => kFeeds.includes(i);
  const lines = ["[JUNCTIONS]"];
  for (let i = 1; i <= kNozzles; ++i) if (!isFeed(i)) lines.push(`N${i} 0 0`);
  lines.push("[RESERVOIRS]", ...kFeeds.map((f) => `N${f} ${kHead}`), "[EMITTERS]");
  for (let i = 1; i <= kNozzles; ++i) if (!isFeed(i)) lines.push(`N${i} ${coefficient}`);
  lines.push("[PIPES]");
  for (let i = 1; i < kNozzles; ++i) lines.push(`P${i} N${i} N${i + 1} ${kSpacing} ${kBore} ${kRoughness} 0 Open`);
  lines.push("[OPTIONS]", "Units LPS", "Headloss D-W", "Viscosity 1e-6", "Emitter Exponent 0.5", "Accuracy 0.00001",
    "FLOWCHANGE 0.0000001", "HEADERROR 0.0000001", "Trials 500", "[TIMES]", "Duration 0", "[END]");
  return lines.join("\n");
}

const workspace = new Workspace();
await workspace.loadModule();
workspace.writeFile("boom.inp", network());

const median = (times) => times.sort((a, b) => a - b)[Math.floor(times.length / 2)];
function timed(rounds, work) {
  const times = [];
  for (let i = 0; i < rounds; ++i) {
    const began = process.hrtime.bigint();
    work();
    times.push(Number(process.hrtime.bigint() - began));
  }
  return median(times);
}

const whole = timed(200, () => {
  const model = new Project(workspace);
  model.open("boom.inp", "boom.rpt", "boom.bin");
  model.openH();
  model.initH(0);
  model.runH();
  model.closeH();
  model.close();
});
const model = new Project(workspace);
model.open("boom.inp", "boom.rpt", "boom.bin");
model.openH();
const kFresh = 10; // initial flows anew for each round
const solving = timed(500, () => {
  model.initH(kFresh);
  model.runH();
});
console.log(`${Math.round(whole)} ${Math.round(solving)} ${workspace.version}`);
