// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>

#include "core/exchange/json.h"
#include "core/units/parse.h"
#include "tests/core/exchange/random_models.h"

namespace bw {
namespace {

using testing::RandomModels;

/// Reads back what was written, with the text shown if that fails.
template <class T>
T mustRead(const Result<T>& read, const std::string& text) {
    EXPECT_TRUE(read.isOk()) << text << "\n"
                             << (read ? "" : read.problem().code + " at " + read.problem().where);
    return read ? *read : T{};
}

TEST(JsonRoundTrip, RandomMachinesComeBackEqual) {
    RandomModels random(11);
    for (int i = 0; i < 400; ++i) {
        const Machine machine = random.machine();
        const std::string text = toJson(machine, i % 2 == 0 ? -1 : 2);
        ASSERT_EQ(mustRead(machineFromJson(text), text), machine) << text;
    }
}

TEST(JsonRoundTrip, RandomNozzlesComeBackEqual) {
    RandomModels random(12);
    for (int i = 0; i < 400; ++i) {
        const Nozzle nozzle = random.nozzle();
        const std::string text = toJson(nozzle, static_cast<UnitSystem>(i % 3));
        ASSERT_EQ(mustRead(nozzleFromJson(text), text), nozzle) << text;
    }
}

TEST(JsonRoundTrip, RandomJobsComeBackEqual) {
    RandomModels random(13);
    for (int i = 0; i < 400; ++i) {
        const Job job = random.job();
        const std::string text = toJson(job, static_cast<UnitSystem>(i % 3));
        ASSERT_EQ(mustRead(jobFromJson(text), text), job) << text;
    }
}

TEST(JsonRoundTrip, RandomCasesComeBackEqual) {
    RandomModels random(14);
    for (int i = 0; i < 200; ++i) {
        const CaseRecord record = random.record();
        const std::string text = toJson(record);
        ASSERT_EQ(mustRead(caseFromJson(text), text), record) << text;
    }
}

TEST(JsonRoundTrip, ARecordWithNothingKnownStaysUnknown) {
    EXPECT_EQ(*machineFromJson(toJson(Machine{})), Machine{});
    EXPECT_EQ(*nozzleFromJson(toJson(Nozzle{})), Nozzle{});
    EXPECT_EQ(*jobFromJson(toJson(Job{})), Job{});
    EXPECT_EQ(*caseFromJson(toJson(CaseRecord{})), CaseRecord{});
}

TEST(JsonRoundTrip, WhatWasTypedIsKeptAsItWas) {
    const auto job = jobFromJson(R"({"rate": "7 1/2 gal/ac", "usual": "15mph"})");
    ASSERT_TRUE(job.isOk());
    EXPECT_EQ(job->rate->typed, "7 1/2 gal/ac");
    EXPECT_DOUBLE_EQ(job->rate->value.si(), parse<AreaRate>("7.5 gal/ac")->si());
    EXPECT_THAT(toJson(*job), ::testing::HasSubstr(R"("rate":"7 1/2 gal/ac","usual":"15mph")"));
}

TEST(JsonRoundTrip, ATypedDecimalCommaIsKeptBesideANumberWithAPoint) {
    Machine machine;
    machine.limits.pressureFloor = Sourced<Pressure>(*parse<Pressure>("2.8 bar"));
    machine.limits.pressureFloor->typed = "2,8 bar";
    const std::string text = toJson(machine);
    EXPECT_THAT(text, ::testing::HasSubstr(R"("value":"2.8 bar")"));
    EXPECT_THAT(text, ::testing::HasSubstr(R"("typed":"2,8 bar")"));
    EXPECT_EQ(*machineFromJson(text), machine);
}

TEST(JsonRoundTrip, ComputedValuesAreWrittenInTheMachinesUnits) {
    Machine machine;
    machine.units = UnitSystem::Us;
    machine.limits.topSpeed = Sourced<Speed>(*parse<Speed>("20 mph"));
    machine.meter.maximum = Sourced<Flow>(*parse<Flow>("75 gal/min"));
    const std::string text = toJson(machine);
    EXPECT_THAT(text, ::testing::HasSubstr(R"("20 mph")"));
    EXPECT_THAT(text, ::testing::HasSubstr(R"("75 gal/min")"));
}

TEST(JsonRoundTrip, NumbersThatAreNotFiniteAreLeftOut) {
    Machine machine;
    machine.limits.topSpeed =
        Sourced<Speed>(Speed::fromSi(std::numeric_limits<double>::infinity()));
    machine.meter.scale = Sourced<double>(std::nan(""));
    machine.pump.curve =
        Sourced<std::vector<CurvePoint>>({{Flow::fromSi(std::nan("")), Pressure{}}});
    EXPECT_EQ(*machineFromJson(toJson(machine)), Machine{});
}

TEST(JsonRoundTrip, BytesThatAreNoUtf8DoNotStopTheWriting) {
    Machine machine;
    machine.name = "broken \xff\xfe name";
    const auto back = machineFromJson(toJson(machine));
    ASSERT_TRUE(back.isOk());
    EXPECT_EQ(back->name, "broken \uFFFD\uFFFD name");
}

TEST(JsonRoundTrip, ARestrictorGroupMeansThatOneIsFittedUnlessItSaysOtherwise) {
    EXPECT_TRUE(machineFromJson(R"({"restrictor": {"hole": "14 mm"}})")->restrictor.fitted->value);
    EXPECT_FALSE(machineFromJson(R"({"restrictor": {"fitted": false}})")->restrictor.fitted->value);
    EXPECT_FALSE(machineFromJson(R"({"restrictor": {"fitted": null, "hole": "14 mm"}})")
                     ->restrictor.fitted.has_value());
    EXPECT_FALSE(machineFromJson("{}")->restrictor.fitted.has_value());
    const std::string whole = R"({"spacing": "50 cm", "sections": [8]})";
    EXPECT_FALSE(machineFromJson(whole, JsonUse::Request)->restrictor.fitted->value);
}

TEST(JsonRoundTrip, ARequestsGapsAreFilledAsDocumentedAndMarkedAssumed) {
    const auto machine = machineFromJson(
        R"({"spacing": "50 cm", "sections": [8], "restrictor": {}})", JsonUse::Request);
    ASSERT_TRUE(machine.isOk());
    EXPECT_EQ(machine->units, UnitSystem::Metric);
    EXPECT_EQ(machine->senses->value, Senses::Flow);
    EXPECT_EQ(machine->control->value, Control::PumpSpeed);
    EXPECT_EQ(machine->sectionReturns->value, SectionReturns::None);
    EXPECT_EQ(machine->restrictor.position->value, RestrictorPosition::FullBore);
    EXPECT_DOUBLE_EQ(machine->restrictor.dischargeCoefficient->value, 0.62);
    EXPECT_EQ(machine->senses->origin, Origin::Assumed);
    EXPECT_FALSE(machine->restrictor.changeoverFlow.has_value());
}

TEST(JsonRoundTrip, ASketchOfAMachineLeavesTheRestUnknown) {
    const auto machine =
        machineFromJson(R"({"limits": {"pressure_floor": "2 bar"}})", JsonUse::Partial);
    ASSERT_TRUE(machine.isOk());
    EXPECT_FALSE(machine->senses.has_value());
    EXPECT_FALSE(machine->restrictor.fitted.has_value());
}

TEST(JsonQuantity, AnyQuantityMayBeAnObject) {
    const auto nozzle = nozzleFromJson(
        R"({"table": [["1 bar", {"value": "1 L/min", "origin": "measured"}], ["4 bar", "2 L/min"]],
            "droplets": [{"from": {"value": "1 bar"}, "to": "3 bar", "category": "C"}]})",
        JsonUse::Request);
    ASSERT_TRUE(nozzle.isOk()) << nozzle.problem().code << nozzle.problem().where;
    EXPECT_DOUBLE_EQ(nozzle->table->value[0].flow.si(), 1e-3 / 60);
    EXPECT_DOUBLE_EQ(nozzle->droplets->value[0].from.si(), 1e5);
    const auto broken = nozzleFromJson(R"({"table": [["1 bar", {"value": "1 L"}]]})");
    EXPECT_EQ(broken.problem().where, "nozzle.table[0][1].value");
}

TEST(JsonQuantity, PlainGallonsAreUsGallonsHere) {
    EXPECT_DOUBLE_EQ(parseJsonQuantity("300 gal", Dimension::Volume)->si,
                     300 * info(Unit::GallonUs).inSi);
    EXPECT_DOUBLE_EQ(parseJsonQuantity("64 fl oz", Dimension::Volume)->si,
                     0.5 * info(Unit::GallonUs).inSi);
    EXPECT_EQ(jsonUnitFor("gal"), Unit::GallonUs);
    EXPECT_EQ(parseJsonQuantity("gal", Dimension::Volume).problem().code, "number_letters");
}

TEST(JsonQuantity, EveryUnitsPlainSymbolReadsBack) {
    for (const auto& unit : units()) {
        if (unit.unit == Unit::None) continue;
        const std::string symbol = jsonSymbol(unit.unit);
        EXPECT_EQ(jsonUnitFor(symbol), unit.unit) << symbol;
        for (const char c : symbol) EXPECT_LT(static_cast<unsigned char>(c), 128U) << symbol;
    }
}

TEST(JsonQuantity, ExactTextReadsBackAsTheSameNumber) {
    std::mt19937 random(15);
    std::uniform_real_distribution<double> decades(-9, 9);
    for (int i = 0; i < 2000; ++i) {
        const AnyQuantity pressure{Dimension::Pressure, std::pow(10.0, decades(random))};
        EXPECT_EQ(*parseJsonQuantity(exactText(pressure, UnitSystem::Us), Dimension::Pressure),
                  pressure);
        // No unit of a rate is its SI unit: the last digit may be out of reach.
        const AnyQuantity rate{Dimension::AreaRate, std::pow(10.0, decades(random))};
        EXPECT_DOUBLE_EQ(
            parseJsonQuantity(exactText(rate, UnitSystem::Us), Dimension::AreaRate)->si, rate.si);
    }
}

}  // namespace
}  // namespace bw
