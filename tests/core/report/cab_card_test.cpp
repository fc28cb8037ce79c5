// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/report/boom_height.h"
#include "core/report/cab_parts.h"
#include "tests/core/report/report_fixture.h"

namespace bw::test {
namespace {

using namespace build;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

WindowModel modelOf(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    auto model = WindowModel::make(machine, nozzle, job);
    EXPECT_TRUE(model.isOk()) << (model ? "" : model.problem().code);
    return std::move(model).value();
}
Sheet card(const Machine& machine, const Nozzle& nozzle, const Job& job,
           UnitSystem units = UnitSystem::Metric) {
    return cabCard(modelOf(machine, nozzle, job), context(units));
}
Sheet usualCard() {
    return card(namedTrailed(), namedLowDrift03(), flagLeaf());
}

TEST(CabCard, NamesJobRateSetColourAndPosition) {
    const std::string text = joined(usualCard());
    for (const char* words :
         {"Flag leaf (invented)", "150 L/ha", "Test trailed (invented), 56 nozzles",
          "Low-drift 03 (invented)", "03 blue, position 2 on the body", "weight against water 1.00",
          "floor 1.6 bar\nceiling 7 bar", "Printed 25 Nov 2026 · Not a spray record"})
        EXPECT_THAT(text, HasSubstr(words));
    EXPECT_THAT(text, Not(HasSubstr("<")));  // a code without words
    EXPECT_THAT(text, Not(HasSubstr("{")));  // a gap that nobody filled
}

TEST(CabCard, FiguresUnderTheScaleAreThoseOfTheLaws) {
    // No losses, no opening pressure: 150 L/ha at 8, 10 and 12 km/h on 0.5 m is 1.0, 1.25 and 1.5
    // L/min a nozzle. With 1.2 L/min at 3 bar that takes 3 (q / 1.2)^2: 2.08, 3.26 and 4.69 bar.
    Nozzle nozzle = namedLowDrift03();
    nozzle.flow = Sourced<Flow>(lpm(1.2));
    const Machine plain = machine({10, 8, 10});
    const Sheet sheet = card(plain, nozzle, flagLeaf());
    const auto* scale = firstOf<SheetScale>(sheet.blocks);
    ASSERT_TRUE(scale);
    std::map<std::string, std::vector<std::string>> bySpeed;
    for (const auto& column : scale->columns) bySpeed[column.figures.at(0)] = column.figures;
    // 28 nozzles.
    EXPECT_THAT(bySpeed["8"], ElementsAre("8", "2.1", "28.0", "C"));
    EXPECT_THAT(bySpeed["10"], ElementsAre("10", "3.3", "35", "M"));
    EXPECT_THAT(bySpeed["12"], ElementsAre("12", "4.7", "42", "M"));
}

TEST(CabCard, FiguresOutsideTheWindowStandInBracketsAndAreExplained) {
    const Sheet sheet = usualCard();
    const auto* scale = firstOf<SheetScale>(sheet.blocks);
    ASSERT_TRUE(scale);
    ASSERT_TRUE(scale->low && scale->high);
    int outside = 0;
    for (const auto& column : scale->columns) {
        const bool isOut = column.at < *scale->low - 1e-9 || column.at > *scale->high + 1e-9;
        EXPECT_EQ(column.figures.at(1).front() == '(', isOut) << column.at;
        outside += isOut ? 1 : 0;
    }
    EXPECT_EQ(joined(sheet).find("In brackets") != std::string::npos, outside > 0);
}

TEST(CabCard, TheJobsOwnSpeedsAreAlwaysThereAndBold) {
    Job job = flagLeaf();
    job.slow = Sourced<Speed>(kmh(8.3));
    job.usual = Sourced<Speed>(kmh(9.7));
    job.fast = Sourced<Speed>(kmh(11.9));
    const Sheet sheet = card(namedTrailed(), namedLowDrift03(), job);
    const auto* scale = firstOf<SheetScale>(sheet.blocks);
    ASSERT_TRUE(scale);
    std::vector<std::string> bold;
    for (const auto& column : scale->columns) {
        if (column.isBold) bold.push_back(column.figures.at(0));
    }
    EXPECT_THAT(bold, testing::IsSupersetOf({"8.3", "9.7", "11.9"}));
    EXPECT_LE(scale->columns.size(), 8u);
}

TEST(CabCard, HoldsItsCautionsWhole) {
    const Sheet sheet = usualCard();
    const auto* box = firstOf<SheetCautions>(sheet.blocks);
    ASSERT_TRUE(box);
    std::vector<std::string> ids;
    for (const auto& item : box->items) {
        ids.push_back(item.id);
        EXPECT_FALSE(item.text.empty()) << item.id;
    }
    EXPECT_THAT(ids, ElementsAre("C19", "C20", "C18", "C21", "C5", "C30"));
}

TEST(CabCard, HeavyLiquidBringsItsCautionAndItsWeight) {
    Job job = flagLeaf();
    job.droplets.clear();
    job.specificGravity = Sourced<double>(1.28);
    Nozzle nozzle = namedLowDrift03();
    nozzle.droplets.reset();
    const Sheet sheet = card(namedTrailed(), nozzle, job);
    std::vector<std::string> ids;
    for (const auto& item : firstOf<SheetCautions>(sheet.blocks)->items) ids.push_back(item.id);
    EXPECT_THAT(ids, Contains("C25"));
    EXPECT_THAT(ids, Not(Contains("C21")));
    EXPECT_THAT(joined(sheet), HasSubstr("weight against water 1.28"));
    EXPECT_THAT(joined(sheet), HasSubstr("none asked"));
}

TEST(CabCard, UnknownNeverPasses) {
    Nozzle nozzle = namedLowDrift03();
    nozzle.droplets.reset();
    const Sheet sheet = card(namedTrailed(), nozzle, flagLeaf());
    const std::string text = joined(sheet);
    EXPECT_THAT(text, HasSubstr("Would hold"));
    EXPECT_THAT(text, HasSubstr("droplets M or C: the nozzle has no droplet table"));
    EXPECT_TRUE(firstOf<SheetScale>(sheet.blocks)->isUnchecked);
    EXPECT_THAT(text, Not(HasSubstr("nothing left open")));
}

TEST(CabCard, SaysInWordsWhatDoesNotHold) {
    Job job = flagLeaf();
    job.droplets = {DropletCategory::XC};
    const std::string text = joined(card(namedTrailed(), namedLowDrift03(), job));
    EXPECT_THAT(text, HasSubstr("This nozzle has no droplets XC at any pressure"));
    EXPECT_THAT(text, HasSubstr("no speed holds"));
    Job fast = flagLeaf();
    fast.fast = Sourced<Speed>(kmh(15));
    EXPECT_THAT(joined(card(namedTrailed(), namedLowDrift03(), fast)),
                HasSubstr("km/h, not slow to fast"));
}

TEST(CabCard, RestrictorStandsAsReckonedAndWhatIsAdvised) {
    Machine m = selfPropelled100();
    m.senses = Sourced<Senses>(Senses::Flow);
    Job job = build::job(gpa(21), mph(7.5), mph(8), mph(9));
    const std::string text = joined(card(m, airFan08(), job, UnitSystem::Us));
    EXPECT_THAT(text, HasSubstr("Restrictor valve\nnarrowed"));
    EXPECT_THAT(text, HasSubstr("psi at the boom gauge"));
    EXPECT_THAT(text, HasSubstr("on each acre"));
    EXPECT_THAT(joined(usualCard()), Not(HasSubstr("Restrictor valve")));
}

TEST(CabCard, PulsedNozzlesHaveOnTimeAndNoRuleForThePressure) {
    Machine m = machine();
    m.pulsed = {Sourced<Pressure>(bar(3)), Sourced<double>(0.3), Sourced<double>(1.0)};
    // 1.25 L/min at 10 km/h of the 2.5 that the nozzle gives at 3 bar: half of the time.
    Nozzle nozzle = build::nozzle(lpm(2.5));
    const Sheet sheet = card(m, nozzle, build::job());
    const std::string text = joined(sheet);
    EXPECT_THAT(text, HasSubstr("set to 3 bar"));
    EXPECT_THAT(text, HasSubstr("% on-time"));
    EXPECT_THAT(text, Not(HasSubstr("hold one speed and set its pressure")));
    for (const auto& column : firstOf<SheetScale>(sheet.blocks)->columns) {
        if (column.figures.at(0) == "10") {
            EXPECT_EQ(column.figures.at(1), "50");
        }
    }
}

TEST(CabCard, MarksWhereValuesComeFrom) {
    Machine m = namedTrailed();
    m.limits.topSpeed = Sourced<Speed>(kmh(16), Origin::Assumed);
    m.limits.pressureFloor = Sourced<Pressure>(bar(1.6), Origin::Measured);
    m.limits.pressureFloor->date = "2026-02-26";
    const auto list = restsOnList(modelOf(m, namedLowDrift03(), flagLeaf()), context(), 40);
    bool hasAssumed = false;
    for (const auto& item : list.items)
        hasAssumed |= item.mark == SheetMark::originOf(Origin::Assumed) && item.note == "assumed";
    EXPECT_TRUE(hasAssumed);
    EXPECT_THAT(restsOnList(modelOf(m, namedLowDrift03(), flagLeaf()), context(), 2).items,
                SizeIs(3));  // two and the rest counted
}

TEST(BoomHeight, GeometryAndPublishedAdviceStandApart) {
    // 50 cm / (2 tan 55 deg) = 17.5 cm for patterns that just meet, 2 of them = 35.0 for 100 %
    // overlap, 1.3 = 22.8 for 30 %: plain geometry. 19 to 20 in: Michigan State University
    // Extension, 'Sprayer boom height reminder'.
    const auto words = boomHeightWords(namedTrailed(), namedLowDrift03(), context());
    ASSERT_THAT(words, SizeIs(2));
    EXPECT_THAT(words[0], HasSubstr("23 cm over the target for 30 % overlap, 35 cm for 100 %"));
    EXPECT_THAT(words[1], HasSubstr("48 to 51 cm (Michigan State University Extension"));
    const auto us = boomHeightWords(namedTrailed(), namedLowDrift03(), context(UnitSystem::Us));
    EXPECT_THAT(us[1], HasSubstr("19 to 20 in"));
}

TEST(BoomHeight, WithoutAnAngleItIsNotCheckedAndStreamsHaveNone) {
    Nozzle nozzle = namedLowDrift03();
    nozzle.sprayAngle = Sourced<double>(65);
    EXPECT_THAT(boomHeightWords(namedTrailed(), nozzle, context()), SizeIs(1));
    nozzle.sprayAngle.reset();
    EXPECT_THAT(boomHeightWords(namedTrailed(), nozzle, context()),
                ElementsAre(HasSubstr("Not checked")));
    nozzle.kind = Sourced<NozzleKind>(NozzleKind::Stream);
    EXPECT_THAT(boomHeightWords(namedTrailed(), nozzle, context()), IsEmpty());
}

TEST(AxisTicks, AreRoundAndInside) {
    const auto ticks = axisTicks(5.2, 15.9, 6, ',');
    std::vector<std::string> texts;
    for (const auto& [at, text] : ticks) texts.push_back(text);
    EXPECT_THAT(texts, ElementsAre("6", "8", "10", "12", "14"));
    EXPECT_EQ(axisTicks(0, 0.4, 4, ',').at(1).second, "0,1");
    EXPECT_THAT(axisTicks(3, 3, 5, '.'), IsEmpty());
}

TEST(Overview, HasARowForEveryJobAndMarksWhatDoesNotHold) {
    const Machine m = namedTrailed();
    Job fails = flagLeaf();
    fails.name = "Too fast (invented)";
    fails.fast = Sourced<Speed>(kmh(15));
    Job broken = flagLeaf();
    broken.name = "No rate (invented)";
    broken.rate.reset();
    const std::vector<Nozzle> nozzles{namedLowDrift03()};
    const std::vector<PlannedJob> jobs{plannedJob(m, flagLeaf(), nozzles),
                                       plannedJob(m, fails, nozzles),
                                       plannedJob(m, broken, nozzles)};
    const Sheet sheet = machineOverview(m, jobs, context());
    const auto* table = firstOf<SheetTable>(sheet.blocks);
    ASSERT_TRUE(table);
    ASSERT_THAT(table->rows, SizeIs(3));
    for (const auto& row : table->rows) EXPECT_THAT(row.cells, SizeIs(table->columns.size()));
    EXPECT_THAT(table->rows[0].cells.back(), "holds slow to fast");
    EXPECT_FALSE(table->rows[0].isEmphasised);
    EXPECT_THAT(table->rows[1].cells.back(), "holds the usual speed only");
    EXPECT_TRUE(table->rows[1].isEmphasised);
    EXPECT_THAT(table->rows[2].cells.back(), "The spray rate is missing.");
    EXPECT_THAT(table->rows[0].cells.at(3), "2");
    const std::string csv = toCsv(*table);
    EXPECT_THAT(csv, HasSubstr("Flag leaf (invented),150,"));
}

TEST(CabCards, OneJobAPageAndARefusedJobSaysWhy) {
    const Machine m = namedTrailed();
    Job broken = flagLeaf();
    broken.rate.reset();
    const std::vector<Nozzle> nozzles{namedLowDrift03()};
    const Sheet sheet = cabCards(
        m, {plannedJob(m, flagLeaf(), nozzles), plannedJob(m, broken, nozzles)}, context());
    int breaks = 0;
    for (const auto& block : sheet.blocks)
        breaks += std::holds_alternative<SheetPageBreak>(block.content) ? 1 : 0;
    EXPECT_EQ(breaks, 1);
    EXPECT_TRUE(sheet.fillsPages);
    EXPECT_THAT(joined(sheet), HasSubstr("The spray rate is missing."));
    EXPECT_THAT(joined(cabCards(m, {}, context())), HasSubstr("no jobs yet"));
}

}  // namespace
}  // namespace bw::test
