// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "core/exchange/demo_season.h"
#include "core/model/nozzle_sizes.h"
#include "core/store/connection.h"
#include "core/store/demo_file.h"
#include "ui/undo/farm_session.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

/// A session on the demo season, in memory. Everything in it is invented.
class SessionTest : public testing::Test {
  protected:
    void SetUp() override {
        auto file = demoFarmFileInMemory();
        ASSERT_TRUE(file.isOk());
        m_session = std::make_unique<FarmSession>(std::move(file).value());
    }

    FarmSession& session() { return *m_session; }
    FarmContents stored() {
        auto contents = session().file().read();
        EXPECT_TRUE(contents.isOk());
        return std::move(contents).value();
    }
    /// What the pages see is what the file holds.
    void expectMirrorIsFile() {
        const auto contents = stored();
        EXPECT_EQ(session().season(), contents.season);
        EXPECT_EQ(session().cases(), contents.cases);
        EXPECT_EQ(session().customers(), contents.customers);
        EXPECT_EQ(session().yardRecords(), contents.yard);
    }
    /// From now on nothing can be written into a table.
    void block(const QString& table) {
        for (const QString& deed : {u"INSERT"_s, u"UPDATE"_s, u"DELETE"_s}) {
            ASSERT_TRUE(session()
                            .file()
                            .connection()
                            .run(u"CREATE TEMP TRIGGER block_%1_%2 BEFORE %2 ON %1"
                                 " BEGIN SELECT RAISE(ABORT, 'blocked'); END"_s.arg(table, deed))
                            .isOk());
        }
    }
    void unblock(const QString& table) {
        for (const QString& deed : {u"INSERT"_s, u"UPDATE"_s, u"DELETE"_s}) {
            ASSERT_TRUE(session()
                            .file()
                            .connection()
                            .run(u"DROP TRIGGER block_%1_%2"_s.arg(table, deed))
                            .isOk());
        }
    }
    /// The edit makes one named step; undo and redo give back exactly what was.
    template <class Edit>
    void expectOneStep(Edit&& edit) {
        const auto before = stored();
        const int steps = session().undoStack().index();
        edit(u"the step"_s);
        ASSERT_EQ(session().undoStack().count(), steps + 1);
        EXPECT_EQ(session().undoStack().undoText(), u"the step"_s);
        const auto after = stored();
        expectMirrorIsFile();
        for (int round = 0; round < 2; ++round) {
            session().undoStack().undo();
            expectMirrorIsFile();
            expectSame(stored(), before);
            session().undoStack().redo();
            expectMirrorIsFile();
            expectSame(stored(), after);
        }
    }
    static void expectSame(const FarmContents& a, const FarmContents& b) {
        EXPECT_EQ(a.season, b.season);
        EXPECT_EQ(a.cases, b.cases);
        EXPECT_EQ(a.customers, b.customers);
    }
    std::vector<std::string> jobNames(RecordId machine) {
        std::vector<std::string> out;
        for (const auto& job : session().jobsOf(machine)) out.push_back(job.job.name);
        return out;
    }
    static Job jobNamed(const std::string& name) {
        Job job;
        job.name = name;
        return job;
    }

    std::unique_ptr<FarmSession> m_session;
};

TEST_F(SessionTest, ShowsWhatTheFileHolds) {
    const auto demo = demoSeason();
    EXPECT_EQ(session().season(), demo->season);
    EXPECT_EQ(session().cases(), demo->cases);
    EXPECT_EQ(session().customers(), demo->customers);
    EXPECT_TRUE(session().problems().empty());
    EXPECT_EQ(session().machine(99), nullptr);
    EXPECT_EQ(session().job(0), nullptr);
}

// Every kind of edit

TEST_F(SessionTest, MachinesAreAddedEditedRemoved) {
    Machine machine;
    machine.name = "new";
    RecordId id = 0;
    expectOneStep([&](const QString& text) {
        const auto added = session().addMachine(machine, text);
        ASSERT_TRUE(added.isOk());
        id = *added;
    });
    ASSERT_NE(session().machine(id), nullptr);
    expectOneStep([&](const QString& text) {
        machine.tank = Sourced<Volume>(Volume::fromSi(2.0));
        EXPECT_TRUE(session().editMachine(id, machine, text).isOk());
    });
    EXPECT_EQ(*session().machine(id), machine);
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().removeMachine(id, text).isOk()); });
}

TEST_F(SessionTest, AMachineGoesWithItsJobsAndItsCasesStay) {
    const auto cases = session().cases();
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().removeMachine(1, text).isOk()); });
    EXPECT_TRUE(session().jobsOf(1).empty());
    EXPECT_EQ(session().jobsOf(2).size(), 6U);
    EXPECT_EQ(session().cases(), cases);
    EXPECT_FALSE(session().cases()[0].record.machine.name.empty());
}

TEST_F(SessionTest, NozzlesAreAddedEditedRemoved) {
    Nozzle nozzle = builtInNozzles().front();
    nozzle.name = "own";
    RecordId id = 0;
    expectOneStep([&](const QString& text) {
        const auto added = session().addNozzle(nozzle, text);
        ASSERT_TRUE(added.isOk());
        id = *added;
    });
    EXPECT_FALSE(session().nozzle(id)->isBuiltIn) << "a copy of a built-in size is the farm's own";
    expectOneStep([&](const QString& text) {
        nozzle.notes = "worn";
        EXPECT_TRUE(session().editNozzle(id, nozzle, text).isOk());
    });
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().removeNozzle(id, text).isOk()); });
    expectOneStep([&](const QString& text) {
        Nozzle other;
        other.name = "other";
        EXPECT_TRUE(session().addNozzles({nozzle, other}, text).isOk());
    });
}

TEST_F(SessionTest, ANewNameOfANozzleIsCarriedOver) {
    const std::string old = "Demo low-drift fan 04";
    Nozzle renamed = *session().nozzleNamed(old);
    const auto& all = session().season().nozzles;
    const RecordId id = std::find_if(all.begin(), all.end(), [&](const auto& n) {
                            return n.nozzle.name == old;
                        })->id;
    renamed.name = "renamed";
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().editNozzle(id, renamed, text).isOk()); });
    EXPECT_EQ(session().nozzleNamed(old), nullptr);
    EXPECT_EQ(session().machine(1)->setsAboard[0].nozzle, "renamed");
    EXPECT_EQ(session().job(1)->pinnedNozzle, "renamed");
    EXPECT_EQ(session().cases()[0].record.nozzle.name, old) << "a case keeps what was";
}

TEST_F(SessionTest, ANameIsGivenToOneNozzleOnly) {
    Nozzle twin;
    twin.name = session().season().nozzles[1].nozzle.name;
    const auto codeOf = [](const auto& result) { return result ? "" : result.problem().code; };
    EXPECT_EQ(codeOf(session().addNozzle(twin, u"x"_s)), "nozzle_name_taken");
    EXPECT_EQ(codeOf(session().editNozzle(1, twin, u"x"_s)), "nozzle_name_taken");
    EXPECT_TRUE(session().editNozzle(2, twin, u"x"_s).isOk()) << "its own name is free to it";
    Nozzle fresh;
    fresh.name = "fresh";
    const auto before = stored();
    EXPECT_EQ(codeOf(session().addNozzles({fresh, fresh}, u"x"_s)), "nozzle_name_taken");
    expectSame(stored(), before);
}

TEST_F(SessionTest, OwnNozzlesComeBeforeBuiltInOnes) {
    const Nozzle& builtIn = builtInNozzles().front();
    EXPECT_EQ(session().nozzleNamed(builtIn.name), &builtIn);
    Nozzle own;
    own.name = builtIn.name;
    const auto id = session().addNozzle(own, u"x"_s);
    ASSERT_TRUE(id.isOk());
    EXPECT_EQ(session().nozzleNamed(builtIn.name), session().nozzle(*id));
    EXPECT_EQ(session().nozzleNamed("none"), nullptr);
}

TEST_F(SessionTest, JobsAreAddedWhereAsked) {
    const auto names = jobNames(1);
    for (const int at : {0, 3, 6, -1, 99}) {
        SCOPED_TRACE(at);
        expectOneStep([&](const QString& text) {
            EXPECT_TRUE(session().addJob(1, jobNamed("new"), at, text).isOk());
        });
        auto expected = names;
        const int index = at < 0 || at > 6 ? 6 : at;
        expected.insert(expected.begin() + index, "new");
        EXPECT_EQ(jobNames(1), expected);
        session().undoStack().undo();
    }
    EXPECT_EQ(jobNames(1), names);
}

TEST_F(SessionTest, ManyJobsInOneStep) {
    auto jobs = session().jobsOf(2);
    jobs.resize(2);
    jobs[0].job.name = "first";
    jobs[1].job.area.reset();
    jobs.push_back({0, 2, -1, jobNamed("pasted 1")});
    jobs.push_back({0, 2, -1, jobNamed("pasted 2")});
    jobs.push_back({0, 1, 0, jobNamed("elsewhere")});
    expectOneStep([&](const QString& text) { EXPECT_TRUE(session().editJobs(jobs, text).isOk()); });
    const auto names = jobNames(2);
    ASSERT_EQ(names.size(), 8U);
    EXPECT_EQ(names[0], "first");
    EXPECT_EQ(names[6], "pasted 1");
    EXPECT_EQ(names[7], "pasted 2");
    EXPECT_EQ(jobNames(1)[0], "elsewhere");
}

TEST_F(SessionTest, JobsMoveEditAndGo) {
    auto jobs = session().jobsOf(1);
    std::swap(jobs[0].position, jobs[5].position);
    const std::string last = jobs[0].job.name;
    expectOneStep([&](const QString& text) { EXPECT_TRUE(session().editJobs(jobs, text).isOk()); });
    EXPECT_EQ(jobNames(1)[5], last);
    expectOneStep([&](const QString& text) {
        EXPECT_TRUE(session().editJob(jobs[2].id, jobNamed("edited"), text).isOk());
    });
    expectOneStep([&](const QString& text) {
        EXPECT_TRUE(session().removeJobs({jobs[0].id, jobs[3].id, jobs[0].id}, text).isOk());
    });
    EXPECT_EQ(jobNames(1).size(), 4U);
}

TEST_F(SessionTest, CustomersAreAddedEditedRemoved) {
    RecordId id = 0;
    expectOneStep([&](const QString& text) {
        const auto added = session().addCustomer({"Test farm (invented)", "", "", "", true}, text);
        ASSERT_TRUE(added.isOk());
        id = *added;
    });
    expectOneStep([&](const QString& text) {
        EXPECT_TRUE(session().editCustomer(id, {"renamed", "", "", "", true}, text).isOk());
    });
    expectOneStep([&](const QString& text) {
        EXPECT_TRUE(session().setMachineCustomer(1, id, text).isOk());
    });
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().removeCustomer(id, text).isOk()); });
    EXPECT_EQ(session().season().machines[0].customer, 0);
}

TEST_F(SessionTest, CasesAreSavedWithoutAStep) {
    CaseRecord record;
    record.opened = "2026-05-01T08:00:00";
    QSignalSpy changed(m_session.get(), &FarmSession::casesChanged);
    const auto id = session().saveCase(0, record);
    ASSERT_TRUE(id.isOk());
    record.observations.push_back({"onset", "sudden", std::nullopt, ""});
    EXPECT_EQ(*session().saveCase(*id, record), *id);
    EXPECT_EQ(*session().saveCase(*id, record), *id) << "nothing new: nothing stored";
    EXPECT_EQ(changed.count(), 2);
    EXPECT_EQ(session().undoStack().count(), 0);
    EXPECT_EQ(session().caseRecord(*id)->record, record);
    expectMirrorIsFile();
    expectOneStep(
        [&](const QString& text) { EXPECT_TRUE(session().removeCase(*id, text).isOk()); });
    EXPECT_EQ(session().saveCase(*id, record).problem().code, "record_gone");
}

TEST_F(SessionTest, YardRecordsAreSavedWithoutAStep) {
    const auto id = session().saveYardRecord(0, {});
    EXPECT_EQ(*session().saveYardRecord(*id, session().yardRecords()[0].record), *id);
    EXPECT_EQ(session().undoStack().count(), 0);
    expectMirrorIsFile();
    expectOneStep([&](const QString& t) { EXPECT_TRUE(session().removeYardRecord(*id, t)); });
}

TEST_F(SessionTest, AnEditThatChangesNothingMakesNoStep) {
    QSignalSpy saved(m_session.get(), &FarmSession::saved);
    EXPECT_TRUE(session().editMachine(1, *session().machine(1), u"x"_s).isOk());
    EXPECT_TRUE(session().editNozzle(1, *session().nozzle(1), u"x"_s).isOk());
    EXPECT_TRUE(session().editJob(1, *session().job(1), u"x"_s).isOk());
    EXPECT_TRUE(session().editJobs(session().jobsOf(1), u"x"_s).isOk());
    EXPECT_TRUE(session().removeJobs({}, u"x"_s).isOk());
    EXPECT_EQ(session().undoStack().count(), 0);
    EXPECT_EQ(saved.count(), 0);
}

TEST_F(SessionTest, WhatIsNotThereCannotBeEdited) {
    const auto codeOf = [](const auto& result) { return result ? "" : result.problem().code; };
    EXPECT_EQ(codeOf(session().editMachine(99, {}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().removeMachine(99, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().setMachineCustomer(99, 1, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().editNozzle(99, {}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().removeNozzle(99, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().addJob(99, {}, 0, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().editJob(99, {}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().editJobs({{99, 1, 0, {}}}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().editJobs({{1, 99, 0, {}}}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().removeJobs({1, 99}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().editCustomer(99, {}, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().removeCustomer(99, u"x"_s)), "record_gone");
    EXPECT_EQ(codeOf(session().removeCase(99, u"x"_s)), "record_gone");
    EXPECT_EQ(session().undoStack().count(), 0);
}

// Stored first, then shown, then told

TEST_F(SessionTest, WhenASignalComesTheFileHasItAlready) {
    int heard = 0;
    QObject::connect(m_session.get(), &FarmSession::seasonChanged, m_session.get(), [&] {
        ++heard;
        expectMirrorIsFile();
    });
    QSignalSpy saved(m_session.get(), &FarmSession::saved);
    QSignalSpy cases(m_session.get(), &FarmSession::casesChanged);
    EXPECT_TRUE(session().editJob(1, jobNamed("x"), u"x"_s).isOk());
    session().undoStack().undo();
    EXPECT_EQ(heard, 2);
    EXPECT_EQ(saved.count(), 2);
    EXPECT_EQ(cases.count(), 0);
}

TEST_F(SessionTest, AnEditThatCannotBeStoredChangesNothing) {
    const auto before = stored();
    QSignalSpy season(m_session.get(), &FarmSession::seasonChanged);
    QSignalSpy saved(m_session.get(), &FarmSession::saved);
    block(u"job"_s);
    // The nozzle's own row goes through; that of a job which uses it does not.
    Nozzle renamed = *session().nozzleNamed("Demo air fan 08");
    renamed.name = "renamed";
    EXPECT_EQ(session().editNozzle(7, renamed, u"x"_s).problem().code, "store_failed");
    EXPECT_FALSE(session().addJob(1, jobNamed("x"), 0, u"x"_s).isOk());
    EXPECT_EQ(session().undoStack().count(), 0);
    EXPECT_EQ(season.count() + saved.count(), 0);
    expectMirrorIsFile();
    unblock(u"job"_s);
    expectSame(stored(), before);
}

TEST_F(SessionTest, AnUndoThatCannotBeStoredIsSaidAndTheStepStays) {
    EXPECT_TRUE(session().editJob(1, jobNamed("one"), u"one"_s).isOk());
    EXPECT_TRUE(session().editJob(2, jobNamed("two"), u"two"_s).isOk());
    const auto after = stored();
    QSignalSpy failed(m_session.get(), &FarmSession::failed);
    block(u"job"_s);
    session().undoStack().setIndex(0);  // both steps at once: only the first is tried
    EXPECT_EQ(failed.count(), 1);
    EXPECT_EQ(failed[0][0].value<Problem>().code, "store_failed");
    QCoreApplication::processEvents();
    EXPECT_EQ(session().undoStack().index(), 2);
    expectMirrorIsFile();
    unblock(u"job"_s);
    expectSame(stored(), after);
    session().undoStack().setIndex(0);
    EXPECT_EQ(session().job(1)->name, "Stubble weeds, autumn");
    EXPECT_EQ(session().undoStack().index(), 0);
}

TEST_F(SessionTest, ARedoThatCannotBeStoredIsSaidAndTheStepStays) {
    EXPECT_TRUE(session().editJob(1, jobNamed("one"), u"one"_s).isOk());
    EXPECT_TRUE(session().editJob(1, jobNamed("two"), u"two"_s).isOk());
    session().undoStack().setIndex(0);
    const auto before = stored();
    QSignalSpy failed(m_session.get(), &FarmSession::failed);
    block(u"job"_s);
    session().undoStack().setIndex(2);
    QCoreApplication::processEvents();
    EXPECT_EQ(failed.count(), 1);
    EXPECT_EQ(session().undoStack().index(), 0);
    unblock(u"job"_s);
    expectSame(stored(), before);
    session().undoStack().setIndex(2);
    EXPECT_EQ(session().job(1)->name, "two");
    expectMirrorIsFile();
}

// What is in hand

TEST_F(SessionTest, SomethingIsInHandFromTheStart) {
    EXPECT_EQ(session().currentMachine(), 1);
    EXPECT_EQ(session().currentJob(), 1);
    EXPECT_EQ(session().currentNozzle(), 1);
}

TEST_F(SessionTest, MachineAndJobInHandBelongTogether) {
    QSignalSpy changed(m_session.get(), &FarmSession::selectionChanged);
    session().setCurrentMachine(2);
    EXPECT_EQ(session().currentJob(), session().jobsOf(2).front().id);
    session().setCurrentJob(3);
    EXPECT_EQ(session().currentMachine(), 1);
    session().setCurrentJob(3);
    session().setCurrentMachine(1);
    session().setCurrentMachine(99);
    session().setCurrentNozzle(99);
    EXPECT_EQ(session().currentJob(), 3);
    EXPECT_EQ(changed.count(), 2) << "once for each real change";
}

TEST_F(SessionTest, WhatIsRemovedLeavesTheHand) {
    session().setCurrentMachine(2);
    QSignalSpy changed(m_session.get(), &FarmSession::selectionChanged);
    EXPECT_TRUE(session().removeMachine(2, u"x"_s).isOk());
    EXPECT_EQ(session().currentMachine(), 1);
    EXPECT_EQ(session().currentJob(), 1);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_TRUE(session().removeMachine(1, u"x"_s).isOk());
    EXPECT_EQ(session().currentMachine(), 0);
    EXPECT_EQ(session().currentJob(), 0);
    session().undoStack().undo();
    EXPECT_EQ(session().currentMachine(), 1);
}

TEST_F(SessionTest, UnitsAreTheMachinesAndTheDecimalMarkTheUsers) {
    QSignalSpy changed(m_session.get(), &FarmSession::styleChanged);
    session().setDecimalMark(',');
    session().setDecimalMark(',');
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(session().currentStyle(), (NumberStyle{UnitSystem::Us, ','}));
    session().setCurrentMachine(2);
    EXPECT_EQ(session().currentStyle(), (NumberStyle{UnitSystem::Metric, ','}));
}

// With a file

TEST(SessionOnDisk, AFileForLookingRefusesEditsAndLosesNothing) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(u"demo.boomwright"_s);
    ASSERT_TRUE(createDemoFarmFile(path).isOk());
    FarmFileOptions looking;
    looking.readOnly = true;
    auto file = FarmFile::open(path, looking);
    ASSERT_TRUE(file.isOk());
    FarmSession session(std::move(file).value());
    EXPECT_EQ(session.season(), demoSeason()->season);
    EXPECT_EQ(session.addMachine({}, u"x"_s).problem().code, "file_read_only");
    EXPECT_EQ(session.removeJobs({1}, u"x"_s).problem().code, "file_read_only");
    EXPECT_EQ(session.saveCase(1, {}).problem().code, "file_read_only");
    EXPECT_EQ(session.season(), demoSeason()->season);
    EXPECT_EQ(session.undoStack().count(), 0);
    EXPECT_EQ(session.path(), path);
}

TEST(SessionOnDisk, WhatWasSetAsideAndABackupThatFailedAreSaid) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(u"demo.boomwright"_s);
    {
        auto made = createDemoFarmFile(path);
        ASSERT_TRUE(made.isOk());
        ASSERT_TRUE(
            made.value()->connection().run(u"UPDATE job SET droplets = '?' WHERE id = 2"_s).isOk());
    }
    QFile inTheWay(folder.filePath(u"demo backups"_s));
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    auto file = FarmFile::open(path);
    ASSERT_TRUE(file.isOk());
    FarmSession session(std::move(file).value());
    ASSERT_EQ(session.problems().size(), 1U);
    EXPECT_EQ(session.problems()[0].code, "record_set_aside");
    EXPECT_EQ(session.season().jobs.size(), 11U);
    QSignalSpy noticed(&session, &FarmSession::noticed);
    EXPECT_TRUE(session.removeJobs({1}, u"x"_s).isOk()) << "the edit itself goes through";
    EXPECT_TRUE(session.removeJobs({3}, u"x"_s).isOk());
    ASSERT_EQ(noticed.count(), 1);
    EXPECT_EQ(noticed[0][0].value<Problem>().code, "backup_failed");
}

TEST(SessionOnDisk, OfManyRecordsSetAsideAFewAreNamedAndTheRestCounted) {
    auto file = demoFarmFileInMemory();
    ASSERT_TRUE(file.isOk());
    ASSERT_TRUE(file.value()->connection().run(u"UPDATE job SET droplets = '?'"_s).isOk());
    const FarmSession session(std::move(file).value());
    ASSERT_EQ(session.problems().size(), 4U);
    EXPECT_EQ(session.problems()[2].code, "record_set_aside");
    EXPECT_EQ(session.problems()[3].code, "records_set_aside_more");
    EXPECT_EQ(session.problems()[3].arguments[0].value, ArgumentValue("9"));
}

}  // namespace
}  // namespace bw
