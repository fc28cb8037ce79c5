// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/run_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>

#include "core/simulation/stability.h"
#include "core/simulation/why.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kLongestRead = 60.0;  // s
constexpr double kFelt = 0.005;        // share of the time at a limit worth naming

Argument number(std::string name, double value) {
    return {std::move(name), anyQuantity(value)};
}
/// Percent with one decimal.
double percentOf(double part) {
    return std::round(part * 1000.0) / 10.0;
}
double rounded(double value) {
    return std::round(value * 100.0) / 100.0;
}

}  // namespace

QString RunWords::say(std::string code, std::vector<Argument> arguments) const {
    return qs(
        m_sentences.of(Fact{"cause_effect." + std::move(code), std::move(arguments)}, m_style));
}

QString RunWords::why(const Run& run) const {
    QStringList sentences;
    for (const Fact& fact : whySo(run.loop())) sentences.append(qs(m_sentences.of(fact, m_style)));
    return sentences.join(u' ');
}

std::optional<RunReading> RunWords::readingOf(const Run& run) {
    if (run.script() != Script::Steady) return std::nullopt;
    return run.trace().reading(run.lastChange(), Duration::fromSi(kLongestRead),
                               run.healthy().profileDeadBand);
}

QString RunWords::verdictTitle(const Run& run, const std::optional<RunReading>& reading) const {
    if (run.script() != Script::Steady) return say("verdict.speed_moves");
    if (!reading) return say("verdict.settling");
    return say("verdict." + std::string(choiceName(reading->shown.verdict)));
}

QString RunWords::verdictText(const std::optional<RunReading>& reading) const {
    if (!reading) return {};
    const TraceReading& shown = reading->shown;
    QStringList out{say("reading", {number("mean", percentOf(shown.shown.mean)),
                                    number("spread", percentOf(shown.shown.spread))})};
    if (shown.period) out += say("swing", {{"period", anyQuantity(*shown.period)}});
    if (shown.shareAtLimit > kFelt)
        out += say("at_limit", {number("share", std::round(100 * shown.shareAtLimit))});
    out += say("ground", {number("mean", percentOf(reading->real.mean)),
                          number("spread", percentOf(reading->real.spread))});
    return out.join(u' ');
}

QString RunWords::stability(const Run& run) const {
    const LoopSetup& setup = run.loop().setup();
    if (setup.senses == Senses::Nothing) return say("stability.by_hand");
    const auto at = bw::stability(setup, run.loop().sample().speed);
    if (!at) return say("stability.none");
    return say(at->isStable() ? "stability.calm" : "stability.swings",
               {number("gain", rounded(at->gain)),
                number("limit", rounded(at->gainAtLimit)),
                {"period", anyQuantity(at->period)}});
}

CircuitReadings RunWords::circuit(const Run& run) const {
    const LoopSetup& setup = run.loop().setup();
    const CircuitState s = Circuit(setup.running()).atControl(run.loop().sample().actuator);
    const auto words = [&](auto q) { return shown(q, m_style); };
    const auto lost = [&](Pressure p) { return p.si() > 0 ? u'\u2212' + words(p) : QString(); };
    const auto flow = [&](Flow q) { return q.si() > 0 ? words(q) : QString(); };
    CircuitReadings out;
    out.boomFlow = words(s.metered);
    out.sensorPressure = words(s.sensor);
    out.nozzle = QCoreApplication::translate("RunWords", "%1 sprayed").arg(words(s.sprayed));
    out.suctionLoss = lost(s.suctionLoss);
    out.pumpOutlet = words(s.pumpOutlet);
    out.pumpFlow = words(s.pump);
    out.agitation = flow(s.agitation);
    out.bypass = flow(s.bypass);
    out.valveLoss = lost(s.valveLoss);
    out.lineLoss = lost(s.lineLoss);
    out.meterLoss = lost(s.plumbingLoss);
    out.restrictorLoss = lost(s.restrictorLoss);
    return out;
}

QString partsAssumed(const std::vector<std::string>& keys) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("RunWords", text); };
    const std::pair<const char*, QString> parts[] = {
        {"pump", tr("pump")},
        {"control_valve", tr("control valve")},
        {"control", tr("what changes the rate")},
        {"senses", tr("what senses the rate")},
        {"restrictor", tr("restrictor valve")},
        {"spacing", tr("nozzle spacing")},
        {"loop", tr("timing of the controller")},
    };
    QStringList words;
    for (const auto& [part, name] : parts) {
        for (const std::string& key : keys) {
            if ((key == part || key.starts_with(std::string(part) + ".")) && !words.contains(name))
                words.append(name);
        }
    }
    return words.join(u", "_s);
}

QString placeOf(const Problem& problem) {
    const std::string& where = problem.where;
    if (where.starts_with("job")) return u"season"_s;
    if (where.starts_with("nozzle")) return u"nozzles"_s;
    const auto dot = where.find('.');
    const std::string field = dot == std::string::npos ? std::string() : where.substr(dot + 1);
    std::string key;
    const Machine any;
    visitFields(any, [&](std::string_view name, const auto&) {
        const std::string own(name);
        if (key.empty() && !field.empty() && (own == field || own.starts_with(field + ".")))
            key = own;
    });
    return key.empty() ? u"machine"_s : u"machine#"_s + qs(key);
}

}  // namespace bw
