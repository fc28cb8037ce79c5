// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/farm_file.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/store/connection.h"
#include "core/store/file_identity.h"
#include "core/store/migrator.h"
#include "core/text/sentences.h"
#include "tests/store/store_fixture.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

const QString kName = u"farm.boomwright"_s;

class FarmFileTest : public StoreTest {
  protected:
    Result<std::unique_ptr<FarmFile>> tryOpen(const QString& name) {
        return FarmFile::open(at(name), options());
    }
    /// Refused with this code, with a sentence that names the file, and not touched.
    void expectRefused(const QString& name, const std::string& code) {
        SCOPED_TRACE(code);
        const auto content = [&] {
            return QFileInfo(at(name)).isFile() ? bytesOf(at(name)) : QByteArray();
        };
        const QByteArray before = content();
        const QStringList around = QDir(folder()).entryList(QDir::AllEntries | QDir::Hidden);
        const auto opened = tryOpen(name);
        ASSERT_EQ(codeOf(opened), code);
        EXPECT_EQ(content(), before);
        EXPECT_EQ(QDir(folder()).entryList(QDir::AllEntries | QDir::Hidden), around);
        const std::string said = Sentences::shipped().of(opened.problem(), {});
        EXPECT_NE(said.find(QFileInfo(name).fileName().toStdString()), std::string::npos) << said;
        EXPECT_EQ(said.find('<'), std::string::npos) << said;
    }
    /// A database that is healthy but for what `sql` does to it.
    void makeDatabase(const QString& name, const QStringList& sql) {
        auto connection = Connection::open(at(name), {.writeAhead = false});
        ASSERT_TRUE(connection.isOk());
        for (const QString& one : sql) ASSERT_TRUE(connection.value()->run(one).isOk());
    }
    QString asOurs() const { return u"PRAGMA application_id = %1"_s.arg(kFarmApplicationId); }
};

// Refused, each by its name

TEST_F(FarmFileTest, RefusesWhatIsNotThere) {
    expectRefused(u"missing.boomwright"_s, "file_missing");
    expectRefused(u"no folder/farm.boomwright"_s, "file_folder_missing");
}

TEST_F(FarmFileTest, RefusesAFolder) {
    ASSERT_TRUE(QDir(folder()).mkdir(u"farm"_s));
    expectRefused(u"farm"_s, "file_is_folder");
}

TEST_F(FarmFileTest, RefusesWhatIsNoDatabase) {
    writeBytes(at(u"empty.boomwright"_s), {});
    expectRefused(u"empty.boomwright"_s, "file_empty");
    writeBytes(at(u"short.boomwright"_s), "SQLite format 3");
    expectRefused(u"short.boomwright"_s, "file_not_database");
    writeBytes(at(u"junk.boomwright"_s), QByteArray(5000, '\x5a'));
    expectRefused(u"junk.boomwright"_s, "file_not_database");
}

TEST_F(FarmFileTest, RefusesTheDatabaseOfAnotherProgram) {
    makeDatabase(u"plain.db"_s, {u"CREATE TABLE t (x)"_s});
    expectRefused(u"plain.db"_s, "file_foreign");
    makeDatabase(u"other.db"_s, {u"PRAGMA application_id = 12345"_s, u"CREATE TABLE t (x)"_s});
    expectRefused(u"other.db"_s, "file_foreign");
}

TEST_F(FarmFileTest, RefusesANewerFormatAndNamesBoth) {
    makeDatabase(kName, {asOurs(), u"PRAGMA user_version = 99"_s});
    expectRefused(kName, "file_newer");
    const auto opened = tryOpen(kName);
    EXPECT_EQ(argumentOf(opened.problem(), "format"), "99");
    EXPECT_EQ(argumentOf(opened.problem(), "known"), std::to_string(farmFormat()));
}

TEST_F(FarmFileTest, RefusesANewerFormatThatOnlyItsLogKnows) {
    auto file = create(kName);
    ASSERT_TRUE(file->connection().run(u"PRAGMA user_version = 99"_s).isOk());
    // As a power cut leaves it: what was written last stands in the log alone.
    ASSERT_TRUE(QFile::copy(at(kName), at(u"cut.boomwright"_s)));
    ASSERT_TRUE(QFile::copy(at(kName + u"-wal"_s), at(u"cut.boomwright-wal"_s)));
    const QByteArray before = bytesOf(at(u"cut.boomwright"_s));
    const QByteArray logBefore = bytesOf(at(u"cut.boomwright-wal"_s));
    EXPECT_EQ(codeOf(tryOpen(u"cut.boomwright"_s)), "file_newer");
    EXPECT_EQ(bytesOf(at(u"cut.boomwright"_s)), before);
    EXPECT_EQ(bytesOf(at(u"cut.boomwright-wal"_s)), logBefore);
}

TEST_F(FarmFileTest, RefusesADamagedFile) {
    create(kName).reset();
    QByteArray bytes = bytesOf(at(kName));
    ASSERT_GT(bytes.size(), 3 * 4096);
    bytes.replace(4096, 2 * 4096, QByteArray(2 * 4096, '\x5a'));
    writeBytes(at(kName), bytes);
    EXPECT_EQ(codeOf(tryOpen(kName)), "file_damaged");
    EXPECT_EQ(bytesOf(at(kName)), bytes);
}

TEST_F(FarmFileTest, RefusesAFileThatMayNotBeRead) {
    create(kName).reset();
    ASSERT_TRUE(QFile::setPermissions(folder(), QFile::Permissions(0x7755)));
    ASSERT_TRUE(QFile::setPermissions(at(kName), {}));
    const AsOrdinaryUser user;
    EXPECT_EQ(codeOf(tryOpen(kName)), "file_no_rights");
}

TEST_F(FarmFileTest, RefusesAFileThatIsOpenElsewhereAndSaysWhere) {
    const auto first = create(kName);
    const auto second = tryOpen(kName);
    ASSERT_EQ(codeOf(second), "file_in_use");
    EXPECT_NE(argumentOf(second.problem(), "who"), "");
    EXPECT_NE(argumentOf(second.problem(), "lock").find("farm.boomwright.lock"), std::string::npos);
}

TEST_F(FarmFileTest, ALinkToAFileIsThatFile) {
    const auto first = create(kName);
    ASSERT_TRUE(QFile::link(at(kName), at(u"link.boomwright"_s)));
    EXPECT_EQ(codeOf(tryOpen(u"link.boomwright"_s)), "file_in_use");
}

TEST_F(FarmFileTest, CreatesOnlyWhereNothingIs) {
    writeBytes(at(kName), "mine");
    EXPECT_EQ(codeOf(FarmFile::create(at(kName), options())), "file_exists");
    EXPECT_EQ(bytesOf(at(kName)), "mine");
    EXPECT_EQ(codeOf(FarmFile::create(at(u"no folder/x"_s), options())), "file_folder_missing");
    EXPECT_EQ(codeOf(FarmFile::create(folder(), options())), "file_is_folder");
    ASSERT_TRUE(QFile::setPermissions(folder(), QFile::Permissions(0x5555)));
    {
        const AsOrdinaryUser user;
        EXPECT_EQ(codeOf(FarmFile::create(at(u"new"_s), options())), "file_no_rights");
    }
    ASSERT_TRUE(QFile::setPermissions(folder(), QFile::Permissions(0x7700)));
    EXPECT_EQ(QDir(folder()).entryList(QDir::Files), QStringList{kName});
}

// Opened

TEST_F(FarmFileTest, ANewFileIsOursAndOfThisFormat) {
    create(kName).reset();
    const auto identity = identify(at(kName), farmFormat());
    ASSERT_TRUE(identity.isOk());
    EXPECT_EQ(identity->format, farmFormat());
    EXPECT_TRUE(identity->isAtRest) << "the log is folded in and gone after closing";
    EXPECT_FALSE(QFileInfo::exists(at(kName + u".lock"_s)));
}

TEST_F(FarmFileTest, TheSettingsOfTheConnectionReadBack) {
    const auto file = create(kName);
    const auto pragma = [&](const QString& name) {
        return *file->connection().value(u"PRAGMA "_s + name);
    };
    EXPECT_EQ(pragma(u"foreign_keys"_s), u"1"_s);
    EXPECT_EQ(pragma(u"synchronous"_s), u"2"_s);  // FULL
    EXPECT_EQ(pragma(u"journal_mode"_s), u"wal"_s);
    EXPECT_EQ(pragma(u"temp_store"_s), u"2"_s);  // MEMORY
    EXPECT_EQ(pragma(u"busy_timeout"_s), u"20"_s);
    EXPECT_TRUE(file->notices().empty());
}

TEST_F(FarmFileTest, ASettingThatDoesNotReadBackIsAProblem) {
    const auto file = create(kName);
    const auto set = file->connection().setPragma(u"synchronous"_s, u"OFF"_s, u"2"_s);
    ASSERT_EQ(codeOf(set), "file_not_opened");
    EXPECT_EQ(argumentOf(set.problem(), "detail"), "synchronous is 0, not 2");
}

TEST_F(FarmFileTest, OffALocalDiskTheJournalIsARollbackJournal) {
    FarmFileOptions away = options();
    away.onLocalDisk = false;
    auto file = FarmFile::create(at(kName), away);
    ASSERT_TRUE(file.isOk());
    EXPECT_EQ(*file.value()->connection().value(u"PRAGMA journal_mode"_s), u"delete"_s);
    EXPECT_EQ(*file.value()->connection().value(u"PRAGMA synchronous"_s), u"2"_s);
    ASSERT_EQ(file.value()->notices().size(), 1U);
    EXPECT_EQ(file.value()->notices()[0].code, "file_on_network");
    EXPECT_TRUE(file.value()->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
}

TEST_F(FarmFileTest, WhatWasStoredSurvivesAPowerCut) {
    const auto file = create(kName);
    ASSERT_TRUE(file->apply({added(StoredMachine{1, 0, fullMachine()})}).isOk());
    ASSERT_TRUE(QFile::copy(at(kName), at(u"cut.boomwright"_s)));
    ASSERT_TRUE(QFile::copy(at(kName + u"-wal"_s), at(u"cut.boomwright-wal"_s)));
    const auto after = open(u"cut.boomwright"_s);
    ASSERT_TRUE(after);
    EXPECT_EQ(dump(*after), dump(*file));
    EXPECT_NE(dump(*after).find("machine_value"), std::string::npos);
}

TEST_F(FarmFileTest, ALockOfAnotherProgramIsSaidAndPasses) {
    const auto file = create(kName);
    auto other = Connection::open(at(kName), {.busyMilliseconds = 20});
    ASSERT_TRUE(other.isOk());
    {
        const auto held = Transaction::begin(*other.value());
        ASSERT_TRUE(held.isOk());
        EXPECT_EQ(codeOf(file->apply({added(StoredNozzle{1, fullNozzle()})})), "file_locked");
        EXPECT_EQ(codeOf(file->setSetting(u"a"_s, u"b"_s)), "file_locked");
        EXPECT_TRUE(file->read()->season.nozzles.empty());
    }
    EXPECT_TRUE(file->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
}

TEST_F(FarmFileTest, AFullDiskIsSaidAndNothingIsLost) {
    const auto file = create(kName);
    ASSERT_TRUE(file->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
    const std::string before = dump(*file);
    ASSERT_TRUE(file->connection().value(u"PRAGMA max_page_count = 1"_s).isOk());
    std::vector<RecordChange> many;
    for (int i = 2; i < 200; ++i) many.push_back(added(StoredNozzle{i, fullNozzle()}));
    EXPECT_EQ(codeOf(file->apply(many)), "file_full");
    EXPECT_EQ(dump(*file), before);
}

// Looking only

void expectLooksOnly(FarmFile& file) {
    EXPECT_TRUE(file.isReadOnly());
    const auto contents = file.read();
    ASSERT_TRUE(contents.isOk());
    EXPECT_EQ(contents->season.nozzles.size(), 1U);
    EXPECT_EQ(codeOf(file.apply({added(StoredNozzle{2, fullNozzle()})})), "file_read_only");
    EXPECT_EQ(codeOf(file.setSetting(u"a"_s, u"b"_s)), "file_read_only");
    EXPECT_TRUE(file.backUpIfDue().isOk());
}

TEST_F(FarmFileTest, AFileThatMayNotBeWrittenOpensForLooking) {
    ASSERT_TRUE(create(kName)->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
    ASSERT_TRUE(QFile::setPermissions(at(kName), QFile::Permissions(0x4444)));
    ASSERT_TRUE(QFile::setPermissions(folder(), QFile::Permissions(0x7755)));
    const QByteArray before = bytesOf(at(kName));
    {
        const AsOrdinaryUser user;
        const auto file = open(kName);
        ASSERT_TRUE(file);
        ASSERT_EQ(file->notices().size(), 1U);
        EXPECT_EQ(file->notices()[0].code, "file_read_only");
        EXPECT_EQ(file->notices()[0].severity, Severity::Warning);
        expectLooksOnly(*file);
    }
    EXPECT_EQ(bytesOf(at(kName)), before);
    EXPECT_EQ(QDir(folder()).entryList(QDir::Files), QStringList{kName}) << "no side files";
}

TEST_F(FarmFileTest, AnyFileCanBeOpenedForLookingEvenWhileOthersWrite) {
    const auto writer = create(kName);
    ASSERT_TRUE(writer->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
    FarmFileOptions looking = options();
    looking.readOnly = true;
    auto file = FarmFile::open(at(kName), looking);
    ASSERT_TRUE(file.isOk()) << codeOf(file);
    expectLooksOnly(*file.value());
    EXPECT_TRUE(writer->apply({added(StoredNozzle{2, fullNozzle()})}).isOk());
}

TEST_F(FarmFileTest, AnOldFileThatMayNotBeWrittenSaysWhatToDo) {
    makeDatabase(kName, {asOurs(), u"CREATE TABLE x (y)"_s});
    FarmFileOptions looking = options();
    looking.readOnly = true;
    EXPECT_EQ(codeOf(FarmFile::open(at(kName), looking)), "file_old_read_only");
}

TEST_F(FarmFileTest, APathWithOddLettersWorks) {
    const QString name = u"a b%20#1?'\u00E4.boomwright"_s;
    ASSERT_TRUE(create(name)->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
    EXPECT_EQ(open(name)->read()->season.nozzles.size(), 1U);
    FarmFileOptions looking = options();
    looking.readOnly = true;
    auto file = FarmFile::open(at(name), looking);
    ASSERT_TRUE(file.isOk()) << codeOf(file);
    EXPECT_EQ(file.value()->read()->season.nozzles.size(), 1U);
}

TEST(FileIdentity, SharesAreNotLocal) {
    EXPECT_FALSE(isOnLocalDisk(u"//server/share/farm.boomwright"_s));
    EXPECT_FALSE(isOnLocalDisk(uR"(\\server\share\farm.boomwright)"_s));
    EXPECT_TRUE(isOnLocalDisk(QDir::tempPath() + u"/farm.boomwright"_s));
}

}  // namespace
}  // namespace bw::test
