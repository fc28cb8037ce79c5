// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/closed_loop.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/diagnosis/findings.h"
#include "core/hydraulics/circuit.h"

namespace bw::closed_loop {
namespace {

constexpr int kMostChecks = 40;
constexpr int kDraws = 8;

double chanceOf(Generator& g) {
    return g.uniform();
}

std::uint64_t mixed(std::uint64_t seed, const std::string& cause, int machine) {
    for (const char c : cause) seed = seed * 1099511628211ULL + static_cast<unsigned char>(c);
    return seed * 31 + static_cast<std::uint64_t>(machine);
}

double meanControl(const Simulation& run) {
    double sum = 0, n = 0;
    for (std::size_t i = run.trace.size() / 3; i < run.trace.size(); ++i)
        sum += run.trace[i].actuator, n += 1;
    return sum / n;
}

double limitShare(const Simulation& run, LoopLimit limit) {
    double at = 0, n = 0;
    for (std::size_t i = run.trace.size() / 3; i < run.trace.size(); ++i)
        at += run.trace[i].limit == limit ? 1 : 0, n += 1;
    return at / n;
}

double badness(const Simulation& run) {
    return std::max(std::abs(run.reading.shown.mean - 1), run.reading.shown.spread);
}

using Answers = std::map<std::string, std::string>;

/// Checks that look straight at a part, with what is seen if nothing is wrong with it, and if the
/// cause sits there. Empty answer: only the likelihoods know.
struct Look {
    std::string well;
    Answers causes;
};
const std::map<std::string, Look>& looks() {
    static const std::map<std::string, Look> kLooks{
        {"valve_positions",
         {"right",
          {{"agitation_open", "return"},
           {"return_open", "return"},
           {"bypass_passing", ""},
           {"restrictor_position", "restrictor"}}}},
        {"suction_hose", {"firm", {{"suction_hose", "flattens"}, {"suction_strainer", ""}}}},
        {"return_seen", {"dry", {{"return_open", "returns"}, {"bypass_passing", "returns"}}}},
        {"leaks_drips",
         {"none",
          {{"section_leak", "leak"},
           {"checks_drip", "drips_after"},
           {"suction_air", ""},
           {"foam", ""}}}},
        {"pump_speed", {"right", {{"pump_drive", "low"}}}},
        {"valve_stroke",
         {"smooth",
          {{"actuator_stiff", "sticky"},
           {"actuator_slow", "sticky"},
           {"actuator_reversed", "wrong_way"}}}},
        {"electrical_wiggle", {"solid", {{"speed_noisy", ""}}}},
        {"speed_course", {"within", {{"speed_high", "reads_fast"}, {"speed_low", "reads_slow"}}}},
        {"speed_display", {"steady", {{"speed_noisy", "jumps"}}}},
        {"nozzle_identity",
         {"right",
          {{"nozzle_small", "wrong_all"}, {"nozzle_large", "wrong_all"}, {"nozzles_worn", ""}}}},
        {"sensor_zero", {"agree", {{"sensor_high", "reads_high"}, {"sensor_low", "reads_low"}}}},
        {"suction_strainer", {"clean", {{"suction_strainer", "dirty"}, {"suction_air", ""}}}},
        {"strainers",
         {"clean",
          {{"line_strainer", "main"},
           {"section_strainer", "section"},
           {"nozzle_strainers", "nozzles"},
           {"one_nozzle_blocked", "nozzles"}}}},
        {"meter_open", {"clean", {{"meter_fouled", "fouled"}}}},
        {"settings_review",
         {"match",
          {{"floor_high", "control"},
           {"ceiling_low", "control"},
           {"gain_high", "control"},
           {"gain_low", "control"},
           {"dead_band_small", "control"},
           {"dead_band_large", "control"},
           {"width_large", "geometry"},
           {"width_small", "geometry"},
           {"meter_high", ""},
           {"meter_low", ""},
           {"speed_high", ""},
           {"speed_low", ""},
           {"density_ignored", "cal"},
           {"actuator_reversed", ""}}}},
        {"foam_bubbles",
         {"clear", {{"foam", "foam"}, {"suction_air", "bubbles"}, {"meter_part_full", ""}}}},
        {"tank_out",
         {"agree",
          {{"meter_high", "less_out"},
           {"meter_low", "more_out"},
           {"meter_fouled", "more_out"},
           {"meter_part_full", ""}}}},
    };
    return kLooks;
}

}  // namespace

Caller::Caller(build::LoopCase machine, Fault fault, std::uint64_t seed, Rules rules)
    : m_case(std::move(machine)),
      m_fault(std::move(fault)),
      m_rules(rules),
      m_generator(seed),
      m_setup(m_case.setup()),
      m_healthySetup(m_setup) {
    (void)applyFault(m_setup, m_fault);
    notice();
}

/// The driver holds the speed that the display shows: the usual one first, then `part` of it.
Simulation Caller::runOf(const LoopSetup& setup, double part, double seconds) {
    SimulationWish wish;
    wish.length = Duration::fromSi(seconds);
    const Speed held = setup.usual / setup.meter.speedScale;
    wish.drive = part == 1.0 ? Drive::steady(held)
                             : Drive::steps(held, {{Duration::fromSi(seconds / 6), part * held}});
    return simulate(setup, wish);
}

void Caller::readMachine(const LoopSetup& setup, const Simulation& run, Readings& out) const {
    const auto set = [&](Reading kind, double x) { out[static_cast<std::size_t>(kind)] = x; };
    const CircuitState state = Circuit(setup.running()).atControl(meanControl(run));
    set(Reading::SensorPressure, run.sensorReading.si());
    set(Reading::GaugePressure, run.sensor.si());
    set(Reading::PumpPressure, state.pumpOutlet.si());
    set(Reading::SuctionVacuum, state.suctionLoss.si());
    set(Reading::ControlPosition, meanControl(run));
    set(Reading::ShownFlow, run.shownFlow.si());
    set(Reading::ShownRate, run.reading.shown.mean * setup.target.si());
    const BoomLine& boom = setup.parts.boom;
    const auto& first = boom.sections().front();
    const auto& last = boom.sections().back();
    set(Reading::CatchGood, boom.sectionFlow(run.sensor, last).si() / last.nozzles);
    double weak = boom.sectionFlow(run.sensor, first).si() / first.nozzles;
    const double one = m_fault.cause == "one_nozzle_blocked" ? 1 - m_fault.severity
                       : m_fault.cause == "one_nozzle_worn"  ? 1 + m_fault.severity
                                                             : 1.0;
    if (&setup == &m_setup && one != 1.0)
        weak = boom.sectionFlow(run.sensor, first).si() / first.openNozzles * one;
    set(Reading::CatchWeak, weak);
}

/// Time outside 5 % after a change of speed, beyond what the same time later has.
bool Caller::settlesSlowly() const {
    SimulationWish wish;
    wish.length = Duration::fromSi(160);
    const Speed held = m_setup.usual / m_setup.meter.speedScale;
    wish.drive = Drive::steps(held, {{Duration::fromSi(60), 1.2 * held}});
    std::vector<double> soon, late;
    for (const auto& s : simulate(m_setup, wish).trace) {
        if (s.time.si() > 110)
            late.push_back(s.shown / s.target);
        else if (s.time.si() > 60)
            soon.push_back(s.shown / s.target);
    }
    const Duration step = Duration::fromSi(RateLoop::kStep);
    return isSlowToSettle(timeUnsettled(soon, step) - timeUnsettled(late, step));
}

/// The display's verdict at the usual speed, then at the job's other speeds where the healthy
/// machine holds the rate.
bool Caller::noticesRate() {
    for (const double part :
         {1.0, m_case.job.fast->value / m_setup.usual, m_case.job.slow->value / m_setup.usual}) {
        m_part = part;
        m_run = runOf(m_setup, part, 150);
        if (m_run.reading.verdict == TraceVerdict::OnRate) continue;
        const auto healthy = runOf(m_healthySetup, part, 150).reading.verdict;
        if (healthy != TraceVerdict::OnRate) continue;
        m_symptom = m_run.reading.verdict == TraceVerdict::Hunting     ? Symptom::Hunting
                    : m_run.reading.verdict == TraceVerdict::StuckHigh ? Symptom::StuckHigh
                                                                       : Symptom::StuckLow;
        return true;
    }
    m_part = 1.0;
    m_run = runOf(m_setup, 1.0, 150);
    return false;
}

/// What the caller complains of, if anything: the display's verdict, then what is seen on the boom,
/// in the tank, after a change of speed; then a figure of the display that is not what it was.
void Caller::notice() {
    m_feels = true;
    const bool offRate = noticesRate();
    readMachine(m_setup, m_run, m_readings);
    if (offRate) return;
    const auto at = [](const Readings& r, Reading kind) {
        return *r[static_cast<std::size_t>(kind)];
    };
    if (std::abs(at(m_readings, Reading::CatchWeak) / at(m_readings, Reading::CatchGood) - 1) >
        0.1) {
        m_symptom = Symptom::UnevenBoom;
        return;
    }
    if (std::abs(m_run.real.mean - 1) > 0.03) {
        m_symptom = Symptom::TankWrong;
        return;
    }
    if (settlesSlowly()) {
        m_symptom = Symptom::SlowToSettle;
        return;
    }
    Readings healthy;
    readMachine(m_healthySetup, runOf(m_healthySetup, 1.0, 150), healthy);
    for (const auto kind : {Reading::SensorPressure, Reading::ShownFlow, Reading::ShownRate,
                            Reading::ControlPosition}) {
        const double error = readingError(kind, at(healthy, kind));
        if (std::abs(at(m_readings, kind) - at(healthy, kind)) <= 2 * error) continue;
        m_oddFigure = kind;
        return;
    }
    m_feels = false;
}

CaseRecord Caller::call() {
    CaseRecord record;
    record.machine = m_case.machine;
    record.nozzle = m_case.nozzle;
    record.job = m_case.job;
    record.symptom = m_symptom;
    record.tank = "water";
    record.company = "second_person";
    record.place = "yard";
    Observation speed;
    speed.check = "speed";
    speed.reading = anyQuantity(m_part * m_setup.usual);
    record.observations.push_back(speed);
    for (const auto* id : {"shown_flow", "shown_rate", "sensor_pressure"})
        record.observations.push_back(answer(*Knowledge::shipped().check(id)));
    if (m_oddFigure == Reading::ControlPosition)  // it is what the call is about
        record.observations.push_back(answer(*Knowledge::shipped().check("control_position")));
    return record;
}

/// The speed, as displayed, from which the rate comes right.
std::optional<double> Caller::rightFrom() const {
    const double way = m_run.reading.verdict == TraceVerdict::StuckHigh ? 1.05 : 1 / 1.05;
    for (double part = way; part > 0.3 && part < 3; part *= way) {
        const Simulation run = runOf(m_setup, m_part * part, 90);
        if (std::abs(run.reading.shown.mean - 1) < 0.025) return m_part * part * m_setup.usual.si();
    }
    return std::nullopt;
}

std::optional<std::string> Caller::figureAnswer(const std::string& check) const {
    const bool hunts = m_run.reading.verdict == TraceVerdict::Hunting;
    if (check == "limit_flags") {
        if (limitShare(m_run, LoopLimit::Floor) > 0.5) return "floor_active";
        if (limitShare(m_run, LoopLimit::Ceiling) > 0.5) return "ceiling_active";
        return "none";
    }
    if (check == "flow_follows_speed") {
        if (hunts) return "wanders";
        const double change = runOf(m_setup, 1.33 * m_part, 90).shownFlow / m_run.shownFlow;
        const double other = m_run.shownFlow / runOf(m_setup, m_part / 1.33, 90).shownFlow;
        return std::max(change, other) > 1.17 ? "follows" : "constant";
    }
    if (check == "speed_range") {
        const double slow = badness(runOf(m_setup, 0.75, 90)),
                     fast = badness(runOf(m_setup, 1.25, 90));
        if (slow > 2 * fast && slow > 0.03) return "slow_end";
        if (fast > 2 * slow && fast > 0.03) return "fast_end";
        return "all_speeds";
    }
    if (check == "patterns_look") {
        const double part = *m_readings[static_cast<std::size_t>(Reading::CatchWeak)] /
                            *m_readings[static_cast<std::size_t>(Reading::CatchGood)];
        const bool one = m_fault.cause.starts_with("one_nozzle_");
        if (std::abs(part - 1) > 0.1) return one ? "few_bad" : "one_section";
    }
    return std::nullopt;
}

std::optional<std::string> Caller::straightLook(const std::string& check) const {
    const auto look = looks().find(check);
    if (look == looks().end()) return std::nullopt;
    const auto seen = look->second.causes.find(m_fault.cause);
    if (seen == look->second.causes.end()) return look->second.well;
    if (seen->second.empty()) return std::nullopt;
    return seen->second;
}

std::string Caller::drawn(const Check& check) {
    Hypothesis truth;
    truth.id = m_fault.cause;
    truth.cause = Knowledge::shipped().cause(m_fault.cause);
    Scenario scenario;
    if (m_fault.cause == "restrictor_position")
        scenario.variant =
            m_setup.restrictor.position == RestrictorPosition::Narrowed ? "narrowed" : "full_bore";
    double left = chanceOf(m_generator);
    for (const auto& a : check.answers) {
        left -= Evidence::answerChance(check, a.id, truth, scenario);
        if (left <= 0) return a.id;
    }
    return check.answers.back().id;
}

Observation Caller::readingAnswer(const Check& check, Reading kind) {
    Observation out;
    out.check = check.id;
    out.answer = std::string(kCantTell);
    std::optional<double> value = m_readings[static_cast<std::size_t>(kind)];
    if (kind == Reading::RightFrom) value = rightFrom();
    if (!value) return out;
    const bool swings = m_run.reading.verdict == TraceVerdict::Hunting;
    const double error = readingError(kind, *value) * (swings ? 2.0 : 1.0);
    double read = *value + error * m_generator.normal();
    if (chanceOf(m_generator) < m_rules.wrongAnswers)
        read *= chanceOf(m_generator) < 0.5 ? 0.65 : 1.5;
    read = std::max(0.0, read);
    if (kind == Reading::ControlPosition) read = std::min(1.0, read);
    out.answer.clear();
    out.reading = AnyQuantity{dimensionOf(kind), read};
    return out;
}

Observation Caller::answer(const Check& check) {
    Observation out;
    out.check = check.id;
    out.answer = std::string(kCantTell);
    if (chanceOf(m_generator) < m_rules.cantTell) return out;
    if (const auto kind = choiceFor<Reading>(check.reading)) return readingAnswer(check, *kind);
    auto word = figureAnswer(check.id);
    if (!word) word = straightLook(check.id);
    if (!word && m_rules.drawsWords) word = drawn(check);
    if (!word) return out;
    if (chanceOf(m_generator) < m_rules.wrongAnswers) {
        std::vector<std::string> others;
        for (const auto& a : check.answers)
            if (a.id != *word) others.push_back(a.id);
        word = others[static_cast<std::size_t>(chanceOf(m_generator) *
                                               static_cast<double>(others.size()))];
    }
    out.answer = *word;
    return out;
}

namespace {

int rankOf(const std::vector<Finding>& findings, const std::string& cause, std::size_t& size) {
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const auto& all = findings[i].causes;
        if (std::find(all.begin(), all.end(), cause) == all.end()) continue;
        size = all.size();
        return static_cast<int>(i) + 1;
    }
    return static_cast<int>(findings.size()) + 1;
}

int causeRankOf(const CallState& state, const std::string& cause) {
    for (std::size_t i = 0; i < state.standing.size(); ++i)
        if (state.standing[i].cause == cause) return static_cast<int>(i) + 1;
    return static_cast<int>(state.standing.size()) + 1;
}

/// By prior × fit of the complaint, no machine, no numbers; groups as shipped.
int priorRankOf(const CaseRecord& record, const std::string& cause) {
    const Knowledge& k = Knowledge::shipped();
    std::map<std::string, double> weights;
    std::string mine;
    for (const auto& c : k.causes) {
        const std::string id = c.group.empty() ? c.id : c.group;
        double fit = 1.0;
        if (record.symptom) {
            const auto found = c.symptoms.find(*record.symptom);
            fit = found == c.symptoms.end() ? 0.02 : found->second;
        }
        weights[id] += c.prior * fit;
        if (c.id == cause) mine = id;
    }
    int rank = 1;
    for (const auto& [id, weight] : weights) rank += weight > weights[mine] ? 1 : 0;
    return rank;
}

bool opensTooSoon(const CaseRecord& record, const Check& next) {
    if (next.place != CheckPlace::LineOpened) return false;
    const Knowledge& k = Knowledge::shipped();
    const CaseNumbers numbers(record);
    const auto symptom = record.symptom ? record.symptom : symptomFromNumbers(numbers);
    const auto predictor = predictorFor(record, numbers);
    const Evidence evidence(k, *predictor, sortObservations(record, k, numbers, *predictor),
                            symptom);
    return std::any_of(k.checks.begin(), k.checks.end(), [&](const Check& c) {
        if (c.place == CheckPlace::LineOpened || c.place == CheckPlace::Sum) return false;
        if (evidence.given().asked.contains(c.id) || checkStanding(c, record).barred) return false;
        if (!machineHas(c.needs, numbers)) return false;
        const bool fits =
            c.onlyFor.empty() ||
            (symptom ? std::find(c.onlyFor.begin(), c.onlyFor.end(), *symptom) != c.onlyFor.end()
                     : !numbers.shownRatio());
        return fits && expectedBits(c, evidence) >= kTellsBits;
    });
}

}  // namespace

Outcome call(const build::LoopCase& machine, int number, const std::string& cause, Rules rules,
             std::uint64_t seed) {
    const Knowledge& k = Knowledge::shipped();
    const SeverityRange range = k.cause(cause)->severity;
    Generator draws(mixed(seed, cause, number));
    Outcome out;
    out.cause = cause;
    out.machine = number;
    for (int i = 0; i < kDraws && !out.felt; ++i) {
        out.severity = range.from + (range.to - range.from) * draws.uniform();
        Caller caller(machine, {cause, out.severity}, draws.next(), rules);
        if (!caller.feels()) continue;
        out.felt = true;
        CaseRecord record = caller.call();
        out.priorRank = priorRankOf(record, cause);
        out.path = record.symptom ? std::string(choiceName(*record.symptom)) : "figures";
        CallState state = reason(record, k);
        while (state.next && out.checks < kMostChecks) {
            const Check& check = *k.check(state.next->check);
            out.unsafe = out.unsafe || opensTooSoon(record, check);
            record.observations.push_back(caller.answer(check));
            const auto& given = record.observations.back();
            out.path += " " + check.id + "=" +
                        (given.reading ? std::to_string(given.reading->si) : given.answer);
            ++out.checks;
            state = reason(record, k);
        }
        const auto findings = findingsOf(state, k);
        out.first = findings.front().id;
        out.rank = rankOf(findings, cause, out.groupSize);
        out.causeRank = causeRankOf(state, cause);
    }
    return out;
}

std::vector<build::LoopCase> machines() {
    std::vector<build::LoopCase> out{build::lowRate100(), build::highRate100(),
                                     build::trailedCase()};
    for (const auto& drawn : build::tenMachines())
        if (out.size() < 10) out.push_back(drawn);
    return out;
}

double Tally::medianChecks() const {
    if (checks.empty()) return 0;
    auto sorted = checks;
    std::sort(sorted.begin(), sorted.end());
    const std::size_t n = sorted.size();
    return n % 2 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
}

Tally tally(const std::vector<Outcome>& outcomes) {
    Tally out;
    for (const auto& o : outcomes) {
        if (!o.felt) {
            ++out.notFelt;
            continue;
        }
        ++out.counted;
        out.first += o.rank == 1;
        out.causeFirst += o.causeRank == 1;
        out.firstThree += o.rank <= 3;
        out.priorsFirst += o.priorRank == 1;
        out.unsafe += o.unsafe;
        out.checks.push_back(o.checks);
    }
    return out;
}

std::vector<Outcome> runAll(const std::vector<build::LoopCase>& machines, Rules rules,
                            std::uint64_t seed) {
    std::vector<Outcome> out;
    for (const auto& cause : injectableCauses())
        for (std::size_t m = 0; m < machines.size(); ++m)
            out.push_back(call(machines[m], static_cast<int>(m), cause, rules, seed));
    return out;
}

}  // namespace bw::closed_loop
