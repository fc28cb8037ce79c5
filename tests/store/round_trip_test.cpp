// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/exchange/demo_season.h"
#include "core/store/connection.h"
#include "core/store/demo_file.h"
#include "tests/store/store_fixture.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

class RoundTrip : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        m_file = create(u"farm.boomwright"_s);
        ASSERT_TRUE(m_file);
    }
    FarmContents readAgain() {
        m_file.reset();
        m_file = open(u"farm.boomwright"_s);
        auto contents = m_file->read();
        EXPECT_TRUE(contents.isOk()) << codeOf(contents);
        EXPECT_TRUE(contents.value().setAside.empty());
        return std::move(contents).value();
    }
    void store(const std::vector<RecordChange>& changes) {
        const auto stored = m_file->apply(changes);
        ASSERT_TRUE(stored.isOk()) << codeOf(stored);
    }
    std::unique_ptr<FarmFile> m_file;
};

TEST_F(RoundTrip, ANewFileIsEmpty) {
    const auto contents = readAgain();
    EXPECT_EQ(contents.season, Season{});
    EXPECT_TRUE(contents.cases.empty());
    EXPECT_TRUE(contents.customers.empty());
}

TEST_F(RoundTrip, EveryFieldOfEveryRecordComesBackEqual) {
    const StoredCustomer customer{7, fullCustomer()};
    const StoredMachine machine{3, 7, fullMachine()};
    const StoredNozzle nozzle{5, fullNozzle()};
    const StoredJob job{2, 3, 4, fullJob()};
    const StoredCase record{9, fullCase()};
    const StoredYardRecord yard{4, fullYardRecord()};
    store({added(customer), added(machine), added(nozzle), added(job), added(record), added(yard)});
    const auto contents = readAgain();
    EXPECT_EQ(contents.yard, std::vector{yard});
    EXPECT_EQ(contents.customers, std::vector{customer});
    EXPECT_EQ(contents.season.machines, std::vector{machine});
    EXPECT_EQ(contents.season.nozzles, std::vector{nozzle});
    EXPECT_EQ(contents.season.jobs, std::vector{job});
    EXPECT_EQ(contents.cases, std::vector{record});
}

TEST_F(RoundTrip, EmptyRecordsComeBackEqual) {
    const StoredMachine machine{1, 0, {}};
    const StoredNozzle nozzle{1, {}};
    const StoredJob job{1, 1, 0, {}};
    const StoredCase record{1, {}};
    const StoredYardRecord yard{1, {}};
    store({added(machine), added(nozzle), added(job), added(record), added(yard)});
    const auto contents = readAgain();
    EXPECT_EQ(contents.yard, std::vector{yard});
    EXPECT_EQ(contents.season.machines, std::vector{machine});
    EXPECT_EQ(contents.season.nozzles, std::vector{nozzle});
    EXPECT_EQ(contents.season.jobs, std::vector{job});
    EXPECT_EQ(contents.cases, std::vector{record});
}

TEST_F(RoundTrip, AChangedRecordComesBackAsChanged) {
    const StoredMachine before{1, 0, fullMachine()};
    StoredMachine after = before;
    after.machine.tank.reset();
    after.machine.limits.pressureFloor->typed = "31 psi";
    after.machine.limits.pressureFloor->from.reset();
    after.machine.setsAboard.pop_back();
    after.machine.units = UnitSystem::Us;
    store({added(before)});
    store({changed(before, after)});
    EXPECT_EQ(readAgain().season.machines, std::vector{after});
}

TEST_F(RoundTrip, AYardRecordGrowsEntryByEntryAndGoesAgain) {
    StoredYardRecord before{1, fullYardRecord()};
    StoredYardRecord after = before;
    after.record.catchTest.catches.push_back(
        {20, false, Volume::fromSi(8.1e-4), Duration::fromSi(30), "810 mL"});
    store({added(before)});
    store({changed(before, after)});
    EXPECT_EQ(readAgain().yard, std::vector{after});
    store({removed(after)});
    EXPECT_TRUE(readAgain().yard.empty());
}

TEST_F(RoundTrip, AYardRecordThatMakesNoSenseIsSetAsideAndStays) {
    store({added(StoredYardRecord{1, fullYardRecord()}), added(StoredYardRecord{2, {}})});
    const auto spoilt = m_file->connection().run(
        u"UPDATE yard_record SET body = '{\"kind\": \"lark\"}' WHERE id = 1"_s);
    ASSERT_TRUE(spoilt.isOk());
    const auto contents = m_file->read();
    ASSERT_TRUE(contents.isOk());
    ASSERT_EQ(contents->yard.size(), 1U);
    EXPECT_EQ(contents->yard[0].id, 2);
    ASSERT_EQ(contents->setAside.size(), 1U);
    EXPECT_EQ(argumentOf(contents->setAside[0], "field"), "yard.kind");
    EXPECT_EQ(*m_file->connection().value(u"SELECT count(*) FROM yard_record"_s), u"2"_s);
}

TEST_F(RoundTrip, NumbersThatAreNotFiniteAreRefusedInYardRecords) {
    StoredYardRecord record{1, fullYardRecord()};
    record.record.readings[0].value.si = std::numeric_limits<double>::infinity();
    EXPECT_EQ(codeOf(m_file->apply({added(record)})), "value_not_finite");
    record = {1, fullYardRecord()};
    record.record.catchTest.catches[0].volume =
        Volume::fromSi(std::numeric_limits<double>::quiet_NaN());
    EXPECT_EQ(codeOf(m_file->apply({added(record)})), "value_not_finite");
    EXPECT_TRUE(readAgain().yard.empty());
}

TEST_F(RoundTrip, AnEditOfOneFieldWritesOneRow) {
    const StoredMachine before{1, 0, fullMachine()};
    StoredMachine after = before;
    after.machine.tank->value = Volume::fromSi(3.3);
    store({added(before)});
    const auto changes = m_file->connection().value(u"SELECT total_changes()"_s);
    store({changed(before, after)});
    const auto now = m_file->connection().value(u"SELECT total_changes()"_s);
    EXPECT_EQ(now->toInt() - changes->toInt(), 2) << "the machine's own row and that of the tank";
}

TEST_F(RoundTrip, JobsComeInTheOrderOfTheirMachine) {
    store({added(StoredMachine{1, 0, {}}), added(StoredMachine{2, 0, {}}),
           added(StoredJob{1, 2, 0, {}}), added(StoredJob{2, 1, 5, {}}),
           added(StoredJob{3, 1, 4, {}})});
    std::vector<RecordId> order;
    for (const auto& job : readAgain().season.jobs) order.push_back(job.id);
    EXPECT_EQ(order, (std::vector<RecordId>{3, 2, 1}));
}

TEST_F(RoundTrip, SettingsOfTheFarmAreKept) {
    EXPECT_EQ(m_file->setting(u"season.name"_s), QString());
    ASSERT_TRUE(m_file->setSetting(u"season.name"_s, u"2025"_s).isOk());
    ASSERT_TRUE(m_file->setSetting(u"season.name"_s, u"2026 \u00BD"_s).isOk());
    EXPECT_EQ(readAgain().season.name, "2026 \xC2\xBD");
}

TEST_F(RoundTrip, KeysAreNeverUsedTwice) {
    const RecordId first = m_file->newId(RecordKind::Nozzle);
    EXPECT_EQ(m_file->newId(RecordKind::Nozzle), first + 1);
    const StoredNozzle nozzle{first + 1, {}};
    store({added(nozzle)});
    store({removed(nozzle)});
    readAgain();
    EXPECT_GT(m_file->newId(RecordKind::Nozzle), first + 1);
    EXPECT_EQ(m_file->newId(RecordKind::Machine), 1);
}

// What must not be stored

template <class Spoil>
void expectRefused(FarmFile& file, const char* where, Spoil&& spoil) {
    StoredMachine machine{1, 0, fullMachine()};
    spoil(machine.machine);
    const std::string before = dump(file);
    const auto stored = file.apply({added(machine)});
    ASSERT_EQ(codeOf(stored), "value_not_finite");
    EXPECT_EQ(stored.problem().where, where);
    EXPECT_EQ(dump(file), before);
}

TEST_F(RoundTrip, NumbersThatAreNotFiniteAreRefusedWhereverTheyStand) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    expectRefused(*m_file, "tank", [&](Machine& m) { m.tank->value = Volume::fromSi(nan); });
    expectRefused(*m_file, "meter.scale", [&](Machine& m) { m.meter.scale->from = inf; });
    expectRefused(*m_file, "meter.scale", [&](Machine& m) { m.meter.scale->to = -inf; });
    expectRefused(*m_file, "pump.curve",
                  [&](Machine& m) { m.pump.curve->value[1].flow = Flow::fromSi(nan); });
}

TEST_F(RoundTrip, NumbersThatAreNotFiniteAreRefusedInCases) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    StoredCase record{1, fullCase()};
    record.record.observations[1].reading->si = nan;
    EXPECT_EQ(codeOf(m_file->apply({added(record)})), "value_not_finite");
    record.record = fullCase();
    record.record.nozzle.flow->value = Flow::fromSi(nan);
    const auto stored = m_file->apply({added(record)});
    ASSERT_EQ(codeOf(stored), "value_not_finite");
    EXPECT_EQ(stored.problem().where, "nozzle.flow");
    EXPECT_TRUE(readAgain().cases.empty());
}

TEST_F(RoundTrip, AJobNeedsItsMachine) {
    EXPECT_EQ(codeOf(m_file->apply({added(StoredJob{1, 99, 0, {}})})), "store_failed");
    EXPECT_TRUE(readAgain().season.jobs.empty());
}

TEST_F(RoundTrip, ARecordThatIsGoneCannotBeChangedOrRemoved) {
    const StoredNozzle nozzle{1, {}};
    EXPECT_EQ(codeOf(m_file->apply({removed(nozzle)})), "record_gone");
    EXPECT_EQ(codeOf(m_file->apply({changed(nozzle, StoredNozzle{1, fullNozzle()})})),
              "record_gone");
}

TEST_F(RoundTrip, ChangesAreStoredAllOrNone) {
    store({added(StoredMachine{1, 0, fullMachine()})});
    const std::string before = dump(*m_file);
    // The last of the changes fails, here by a trigger; the ones before it must not stay.
    ASSERT_TRUE(m_file->connection()
                    .run(u"CREATE TEMP TRIGGER stop BEFORE INSERT ON job WHEN NEW.name = 'stop'"
                         " BEGIN SELECT RAISE(ABORT, 'interrupted'); END"_s)
                    .isOk());
    Job stop;
    stop.name = "stop";
    StoredMachine after{1, 0, fullMachine()};
    after.machine.name = "other";
    const auto stored = m_file->apply(
        {changed(StoredMachine{1, 0, fullMachine()}, after), added(StoredNozzle{1, fullNozzle()}),
         added(StoredJob{1, 1, 0, fullJob()}), added(StoredJob{2, 1, 1, stop})});
    ASSERT_EQ(codeOf(stored), "store_failed");
    EXPECT_NE(argumentOf(stored.problem(), "detail").find("interrupted"), std::string::npos);
    EXPECT_EQ(dump(*m_file), before);
    EXPECT_TRUE(m_file->apply({added(StoredNozzle{1, fullNozzle()})}).isOk()) << "and it goes on";
}

// One odd record must not stop the rest

class OddRecord : public RoundTrip {
  protected:
    void SetUp() override {
        RoundTrip::SetUp();
        Machine odd = fullMachine();
        odd.name = "odd machine";
        store({added(StoredMachine{1, 0, fullMachine()}), added(StoredMachine{2, 0, odd}),
               added(StoredJob{1, 1, 0, fullJob()}), added(StoredJob{2, 2, 0, fullJob()}),
               added(StoredNozzle{1, fullNozzle()}), added(StoredCase{1, fullCase()})});
    }
    FarmContents readWith(const QString& damage) {
        EXPECT_TRUE(m_file->connection().run(damage).isOk());
        auto contents = m_file->read();
        EXPECT_TRUE(contents.isOk());
        return std::move(contents).value();
    }
};

TEST_F(OddRecord, AMachineIsSetAsideWithItsJobsAndNamed) {
    const auto contents = readWith(
        u"UPDATE machine_value SET value = 'sideways' WHERE machine_id = 2 AND key = 'control'"_s);
    ASSERT_EQ(contents.season.machines.size(), 1U);
    EXPECT_EQ(contents.season.machines[0].id, 1);
    EXPECT_EQ(contents.season.jobs.size(), 1U);
    ASSERT_EQ(contents.setAside.size(), 2U);
    EXPECT_EQ(contents.setAside[0].code, "record_set_aside");
    EXPECT_EQ(argumentOf(contents.setAside[0], "name"), "odd machine");
    EXPECT_EQ(argumentOf(contents.setAside[0], "field"), "control");
    EXPECT_EQ(argumentOf(contents.setAside[1], "field"), "machine");
}

TEST_F(OddRecord, EachKindIsSetAsideByItself) {
    const std::vector<std::pair<QString, std::string>> damages{
        {u"UPDATE machine_value SET value = '[[1' WHERE machine_id = 2 AND key = 'pump.curve'"_s,
         "pump.curve"},
        {u"UPDATE machine_value SET value = 1.5 WHERE machine_id = 2 AND key = 'body_positions'"_s,
         "body_positions"},
        {u"UPDATE job SET droplets = 'C,Q' WHERE id = 1"_s, "droplets"},
        {u"UPDATE job_value SET value = 'fast' WHERE job_id = 2 AND key = 'usual'"_s, "usual"},
        {u"UPDATE nozzle_value SET value = '[[1, 2, \"Q\"]]' WHERE key = 'droplets'"_s, "droplets"},
        {u"UPDATE case_record SET machine = '[]'"_s, "machine"},
        {u"UPDATE case_record SET symptom = 'sings'"_s, "symptom"},
        {u"UPDATE observation SET dimension = 'colour' WHERE reading IS NOT NULL"_s,
         "observations"},
    };
    for (const auto& [damage, field] : damages) {
        SCOPED_TRACE(damage.toStdString());
        ASSERT_TRUE(m_file->connection().run(u"SAVEPOINT healthy"_s).isOk());
        const auto contents = readWith(damage);
        ASSERT_GE(contents.setAside.size(), 1U);
        EXPECT_EQ(argumentOf(contents.setAside[0], "field"), field);
        ASSERT_TRUE(m_file->connection().run(u"ROLLBACK TO healthy"_s).isOk());
        ASSERT_TRUE(m_file->connection().run(u"RELEASE healthy"_s).isOk());
    }
}

TEST_F(OddRecord, KeysOfALaterVersionAreLeftAlone) {
    ASSERT_TRUE(
        m_file->connection()
            .run(
                u"INSERT INTO machine_value VALUES (1, 'later', 1.0, '', 'assumed', '', NULL, NULL)"_s)
            .isOk());
    auto contents = m_file->read();
    ASSERT_TRUE(contents.isOk());
    EXPECT_TRUE(contents->setAside.empty());
    StoredMachine after = contents->season.machines[0];
    after.machine.tank.reset();
    store({changed(contents->season.machines[0], after)});
    EXPECT_EQ(
        *m_file->connection().value(u"SELECT count(*) FROM machine_value WHERE key = 'later'"_s),
        u"1"_s);
}

TEST_F(OddRecord, TheFileItselfRefusesNonsense) {
    Connection& c = m_file->connection();
    EXPECT_FALSE(c.run(u"UPDATE machine SET units = 'nautical'"_s).isOk());
    EXPECT_FALSE(c.run(u"UPDATE machine_value SET value = 9e999 WHERE key = 'tank'"_s).isOk());
    EXPECT_FALSE(c.run(u"UPDATE machine_value SET origin = 'guessed'"_s).isOk());
    EXPECT_FALSE(c.run(u"UPDATE machine SET is_demo = 2"_s).isOk());
    EXPECT_FALSE(c.run(u"UPDATE job SET machine_id = 99"_s).isOk());
    EXPECT_FALSE(
        c.run(u"UPDATE observation SET reading = 'much' WHERE reading IS NOT NULL"_s).isOk());
    EXPECT_FALSE(c.run(u"UPDATE case_record SET job = '{'"_s).isOk());
}

TEST_F(RoundTrip, TheDemoSeasonIsInTheDemoFile) {
    const auto demo = demoSeason();
    ASSERT_TRUE(demo.isOk());
    auto file = createDemoFarmFile(at(u"demo.boomwright"_s), options());
    ASSERT_TRUE(file.isOk()) << codeOf(file);
    const auto contents = file.value()->read();
    ASSERT_TRUE(contents.isOk());
    EXPECT_EQ(contents->season, demo->season);
    EXPECT_EQ(contents->cases, demo->cases);
    EXPECT_EQ(contents->customers, demo->customers);
    EXPECT_TRUE(contents->setAside.empty());
    EXPECT_EQ(codeOf(createDemoFarmFile(at(u"demo.boomwright"_s), options())), "file_exists");
    auto inMemory = demoFarmFileInMemory();
    ASSERT_TRUE(inMemory.isOk());
    EXPECT_EQ(dump(*inMemory.value()), dump(*file.value()));
}

TEST_F(RoundTrip, AThousandJobs) {
    std::vector<RecordChange> changes{added(StoredMachine{1, 0, fullMachine()})};
    for (int i = 1; i <= 1000; ++i) changes.push_back(added(StoredJob{i, 1, i, fullJob()}));
    store(changes);
    const auto contents = readAgain();
    ASSERT_EQ(contents.season.jobs.size(), 1000U);
    EXPECT_EQ(contents.season.jobs[999], (StoredJob{1000, 1, 1000, fullJob()}));
}

}  // namespace
}  // namespace bw::test
