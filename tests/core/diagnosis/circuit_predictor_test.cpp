// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/circuit_predictor.h"

#include "core/diagnosis/alike.h"
#include "core/simulation/simulate.h"
#include "tests/core/diagnosis/case_builders.h"
#include "tests/support/closed_loop.h"

namespace bw {
namespace {

using namespace build;

double at(const Scenario& s, Reading kind) {
    return s.readings[static_cast<std::size_t>(kind)].value_or(-1);
}

TraceVerdict sameWord(Shown shown) {
    switch (shown) {
        case Shown::OnRate:
            return TraceVerdict::OnRate;
        case Shown::StuckHigh:
            return TraceVerdict::StuckHigh;
        case Shown::StuckLow:
            return TraceVerdict::StuckLow;
        case Shown::Hunting:
            break;
    }
    return TraceVerdict::Hunting;
}

Simulation runFor(const LoopSetup& setup, double seconds) {
    SimulationWish wish;
    wish.length = Duration::fromSi(seconds);
    return simulate(setup, wish);
}

/// Where these come to rest depends on where they were before.
bool restsAnywhere(const std::string& cause) {
    return cause == "actuator_reversed" || cause == "dead_band_large" || cause == "actuator_stiff";
}

// Solved at rest against run in time: nothing is shared but the equations of the line. A rest is
// anywhere in the dead band, so pressures may differ by twice it and noise.
TEST(SteadyCircuit, ReadsAsTheRunningLoopDoes) {
    int compared = 0, words = 0, wrong = 0;
    for (const auto& machine : closed_loop::machines()) {
        for (const auto& cause : injectableCauses()) {
            if (restsAnywhere(cause)) continue;
            const SeverityRange range = Knowledge::shipped().cause(cause)->severity;
            for (const double part : {0.4, 1.0}) {
                LoopSetup setup = machine.setup();
                const double x = range.from + (range.to - range.from) * part;
                ASSERT_TRUE(applyFault(setup, {cause, x}).isOk());
                const Scenario s = steadyCircuit(setup, {.speed = setup.usual});
                const Simulation run = runFor(setup, 150);
                if (s.shown) {
                    ++words;
                    wrong += sameWord(*s.shown) != run.reading.verdict;
                }
                if (run.reading.verdict == TraceVerdict::Hunting || s.shown == Shown::Hunting ||
                    !s.shown)
                    continue;
                ++compared;
                const double off = std::max(0.05, 2.2 * setup.control.deadBand);
                EXPECT_NEAR(at(s, Reading::GaugePressure) / run.sensor.si(), 1, off)
                    << cause << " " << x;
                EXPECT_NEAR(at(s, Reading::SensorPressure) / run.sensorReading.si(), 1, off)
                    << cause << " " << x;
                // noise of 0.7 s memory leaves the mean of 100 s unsure by an eighth of its spread
                const Spread& swing = run.reading.shown;
                EXPECT_NEAR(at(s, Reading::ShownFlow) / run.shownFlow.si(), 1,
                            off / 2 + 0.25 * swing.spread / swing.mean)
                    << cause << " " << x;
                EXPECT_NEAR(*s.real, run.real.mean, off / 2) << cause << " " << x;
            }
        }
    }
    RecordProperty("compared", compared);
    RecordProperty("words_wrong", wrong);
    EXPECT_GT(compared, 500);
    EXPECT_LT(wrong, words / 50) << wrong << " of " << words;
}

// ∫ of the linear theory against the run's own spread, where the control is at rest near target.
TEST(SteadyCircuit, NoiseThroughTheLoopAsTheTraceHasIt) {
    for (const auto& machine : {lowRate100(), highRate100(), trailedCase()}) {
        LoopSetup setup = machine.setup();
        setup.control.deadBand = 0;
        setup.control.stiction = 0;
        setup.meter.noise = 0.05;
        const auto control = workingControl(setup, setup.usual);
        ASSERT_TRUE(control);
        const Circuit circuit(setup.running());
        const auto spread = noiseSpread(setup, circuit.atControl(*control).metered,
                                        flowPerStroke(circuit, *control));
        ASSERT_TRUE(spread);
        const Simulation run = runFor(setup, 900);
        EXPECT_NEAR(*spread / run.reading.shown.spread, 1, 0.12);
    }
}

TEST(CircuitPredictor, FallsBackToTheBoomWhereThePumpIsNotKnown) {
    auto record = highFlowCase();
    const CaseNumbers numbers(record);
    EXPECT_TRUE(CircuitPredictor::make(record, numbers));
    record.machine.pump = {};
    EXPECT_FALSE(CircuitPredictor::make(record, CaseNumbers(record)));
    const auto boom = predictorFor(record, CaseNumbers(record));
    EXPECT_GT(at(boom->healthy(), Reading::SensorPressure), 0);
    EXPECT_LT(at(boom->healthy(), Reading::PumpPressure), 0);
}

// A loop that nobody described takes the start values meant for the running machine, and says so by
// nothing: it is written into no machine.
TEST(CircuitPredictor, UnknownLoopTakesTheStartValues) {
    auto record = highFlowCase();
    record.machine.loop = {};
    const auto predictor = CircuitPredictor::make(record, CaseNumbers(record));
    ASSERT_TRUE(predictor);
    EXPECT_EQ(predictor->healthy().shown, Shown::OnRate);
    EXPECT_FALSE(record.machine.loop.deadTime);
}

TEST(CircuitPredictor, EveryInjectableCauseIsPredicted) {
    const auto record = highFlowCase();
    const auto predictor = CircuitPredictor::make(record, CaseNumbers(record));
    ASSERT_TRUE(predictor);
    for (const auto& id : injectableCauses()) {
        const Cause* cause = Knowledge::shipped().cause(id);
        ASSERT_TRUE(cause) << id;
        double weight = 0;
        for (const auto& s : predictor->predict(*cause).scenarios) weight += s.weight;
        EXPECT_NEAR(weight, 1.0, 1e-9) << id;
        EXPECT_GT(at(predictor->predict(*cause).scenarios.front(), Reading::PumpPressure), 0) << id;
    }
}

// Source: tests/reference/finder_readings.csv (prototype of the same equations).
TEST(CircuitPredictor, PumpAndSuctionAreItsOwn) {
    const auto record = highFlowCase();
    const auto predictor = CircuitPredictor::make(record, CaseNumbers(record));
    LoopSetup setup = highRate100().setup();
    ASSERT_TRUE(applyFault(setup, {"line_strainer", 0.92}).isOk());
    const Scenario line = steadyCircuit(setup, {.speed = setup.usual});
    EXPECT_NEAR(at(line, Reading::PumpPressure) / psi(106).si(), 1, 0.02);
    setup = highRate100().setup();
    ASSERT_TRUE(applyFault(setup, {"suction_strainer", 0.8}).isOk());
    const Scenario suction = steadyCircuit(setup, {.speed = setup.usual});
    EXPECT_NEAR(at(suction, Reading::PumpPressure) / psi(19).si(), 1, 0.03);
    EXPECT_NEAR(at(suction, Reading::SuctionVacuum) / psi(9).si(), 1, 0.01);
    EXPECT_EQ(suction.shown, Shown::StuckLow);
}

TEST(Alike, SameEquationsAreOneGroupAndAGaugePartsTheOthers) {
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    record.observations = {read("sensor_pressure", psi(23)), read("shown_flow", gpm(35.9)),
                           read("pump_pressure", psi(101))};  // a kinked hose, by the prototype
    const auto state = reasoned(record);
    std::string line, hose, pump;
    for (const auto& s : state.standing) {
        if (s.cause == "line_strainer") line = s.group;
        if (s.cause == "hose_kinked") hose = s.group;
        if (s.cause == "pump_worn") pump = s.group;
    }
    EXPECT_EQ(line, hose);
    EXPECT_NE(line, "");
    EXPECT_NE(line, pump);
}

}  // namespace
}  // namespace bw
