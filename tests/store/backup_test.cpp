// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/backup.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFileInfo>

#include "tests/store/store_fixture.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

const QString kName = u"farm.boomwright"_s;

class BackupTest : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        m_file = create(kName);
        ASSERT_TRUE(m_file);
    }
    /// Closed and opened again, as on the next morning.
    void comeBack(int days) {
        m_file.reset();
        m_now = m_now.addDays(days);
        m_file = open(kName);
    }
    Outcome edit() {
        return m_file->apply({added(StoredNozzle{m_file->newId(RecordKind::Nozzle), {}})});
    }
    QStringList names() const {
        QStringList out;
        for (const QString& path : m_file->backups()) out << QFileInfo(path).fileName();
        return out;
    }
    std::unique_ptr<FarmFile> m_file;
};

TEST_F(BackupTest, ANewFileNeedsNoneOnItsFirstDay) {
    ASSERT_TRUE(edit().isOk());
    EXPECT_TRUE(m_file->backups().isEmpty());
}

TEST_F(BackupTest, TheFirstEditOfADayIsPrecededByACopy) {
    ASSERT_TRUE(edit().isOk());
    const std::string before = dump(*m_file);
    comeBack(1);
    EXPECT_TRUE(names().isEmpty()) << "looking alone needs no copy";
    ASSERT_TRUE(edit().isOk());
    ASSERT_TRUE(edit().isOk());
    ASSERT_EQ(names(), QStringList{u"farm 2026-05-02.boomwright"_s});
    auto copy = FarmFile::open(m_file->backups()[0], options());
    ASSERT_TRUE(copy.isOk()) << codeOf(copy);
    EXPECT_EQ(dump(*copy.value()), before);
}

TEST_F(BackupTest, AFileLeftOpenOvernightIsBackedUpAsWell) {
    ASSERT_TRUE(edit().isOk());
    m_now = m_now.addDays(1);
    const std::string before = dump(*m_file);
    ASSERT_TRUE(edit().isOk());
    ASSERT_TRUE(edit().isOk());
    ASSERT_EQ(names(), QStringList{u"farm 2026-05-02.boomwright"_s});
    m_now = m_now.addDays(1);
    ASSERT_TRUE(m_file->setSetting(u"season.name"_s, u"2026"_s).isOk());
    ASSERT_EQ(names().size(), 2);
    auto copy = FarmFile::open(m_file->backups()[1], options());
    ASSERT_TRUE(copy.isOk()) << codeOf(copy);
    EXPECT_EQ(dump(*copy.value()), before);
}

TEST_F(BackupTest, OneADayIsEnough) {
    comeBack(1);
    ASSERT_TRUE(m_file->backUpIfDue().isOk());
    const QByteArray first = bytesOf(m_file->backups()[0]);
    ASSERT_TRUE(edit().isOk());
    comeBack(0);
    ASSERT_TRUE(edit().isOk());
    ASSERT_EQ(names().size(), 1);
    EXPECT_EQ(bytesOf(m_file->backups()[0]), first);
}

TEST_F(BackupTest, TheNewestTenAreKept) {
    for (int day = 1; day <= 13; ++day) {
        comeBack(1);
        ASSERT_TRUE(edit().isOk());
    }
    const QStringList kept = names();
    ASSERT_EQ(kept.size(), 10);
    EXPECT_EQ(kept.first(), u"farm 2026-05-14.boomwright"_s);
    EXPECT_EQ(kept.last(), u"farm 2026-05-05.boomwright"_s);
}

TEST_F(BackupTest, PruningTouchesNothingElse) {
    const QDir folder(at(u"farm backups"_s));
    ASSERT_TRUE(folder.mkpath(u"."_s));
    const QStringList others{u"farm old.boomwright"_s, u"my farm 2020-01-01.boomwright"_s,
                             u"notes.txt"_s, u"farm 2020-01-01 before format 1.boomwright"_s};
    for (const QString& name : others) writeBytes(folder.filePath(name), "x");
    for (int day = 1; day <= 12; ++day) {
        comeBack(1);
        ASSERT_TRUE(edit().isOk());
    }
    for (const QString& name : others) EXPECT_TRUE(folder.exists(name)) << name.toStdString();
}

TEST_F(BackupTest, AFailedCopyDoesNotStopTheEditButIsSaid) {
    writeBytes(at(u"farm backups"_s), "a file where the folder should be");
    comeBack(1);
    ASSERT_TRUE(edit().isOk());
    ASSERT_EQ(m_file->notices().size(), 1U);
    EXPECT_EQ(m_file->notices()[0].code, "backup_failed");
    EXPECT_EQ(m_file->read()->season.nozzles.size(), 1U);
}

TEST_F(BackupTest, ACopyThatIsNotSoundIsThrownAway) {
    // A row that breaks a rule, got in with the rules switched off; the copy has it, too.
    ASSERT_TRUE(m_file->connection().run(u"PRAGMA foreign_keys = OFF"_s).isOk());
    ASSERT_TRUE(
        m_file->connection().run(u"INSERT INTO set_aboard VALUES (77, 0, 1, 'none')"_s).isOk());
    const auto written = m_file->saveCopy(at(u"copy.boomwright"_s));
    ASSERT_EQ(codeOf(written), "backup_failed");
    EXPECT_NE(argumentOf(written.problem(), "detail").find("belongs to nothing"),
              std::string::npos);
    EXPECT_TRUE(QDir(folder()).entryList({u"copy*"_s}, QDir::Files).isEmpty());
}

TEST_F(BackupTest, ACopyOfTheUsersChoiceNeverReplacesAnything) {
    ASSERT_TRUE(edit().isOk());
    ASSERT_TRUE(m_file->saveCopy(at(u"copy.boomwright"_s)).isOk());
    EXPECT_EQ(dump(*open(u"copy.boomwright"_s)), dump(*m_file));
    writeBytes(at(u"mine.txt"_s), "mine");
    EXPECT_EQ(codeOf(m_file->saveCopy(at(u"mine.txt"_s))), "backup_failed");
    EXPECT_EQ(bytesOf(at(u"mine.txt"_s)), "mine");
}

TEST_F(BackupTest, AChosenFolderKeepsFarmsOfOneNameApart) {
    const BackupFolder one(u"/a/farm.boomwright"_s, at(u"safe"_s), 10);
    const BackupFolder two(u"/b/farm.boomwright"_s, at(u"safe"_s), 10);
    EXPECT_NE(one.path(), two.path());
    EXPECT_TRUE(one.path().startsWith(at(u"safe"_s)));
    ASSERT_TRUE(one.writeDaily(m_file->connection(), {2026, 5, 1}).isOk());
    EXPECT_TRUE(one.hasDaily({2026, 5, 1}));
    EXPECT_FALSE(two.hasDaily({2026, 5, 1}));
    EXPECT_EQ(one.all().size(), 1);
}

TEST_F(BackupTest, WhatAnInterruptedCopyLeftIsClearedAway) {
    const QDir folder(at(u"farm backups"_s));
    ASSERT_TRUE(folder.mkpath(u"."_s));
    writeBytes(folder.filePath(u"farm 2026-04-30.boomwright.part-0a1b2c3d"_s), "half");
    comeBack(1);
    ASSERT_TRUE(edit().isOk());
    EXPECT_EQ(folder.entryList(QDir::Files), QStringList{u"farm 2026-05-02.boomwright"_s});
}

}  // namespace
}  // namespace bw::test
