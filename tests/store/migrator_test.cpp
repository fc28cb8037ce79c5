// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/migrator.h"

#include <gtest/gtest.h>

#include <QFileInfo>

#include "core/store/file_identity.h"
#include "tests/store/store_fixture.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

class MigratorTest : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        auto opened = Connection::open(u":memory:"_s, {});
        ASSERT_TRUE(opened.isOk());
        m_connection = std::move(opened).value();
    }
    QString value(const QString& sql) const { return *m_connection->value(sql); }
    std::unique_ptr<Connection> m_connection;
};

const Migration kOne{1, {u"CREATE TABLE a (x INTEGER) STRICT"_s, u"INSERT INTO a VALUES (1)"_s}};
const Migration kTwo{2, {u"ALTER TABLE a ADD COLUMN y TEXT"_s, u"UPDATE a SET y = 'new'"_s}};
const Migration kBroken{3, {u"DELETE FROM a"_s, u"CREATE TABLE b (x"_s}};

TEST_F(MigratorTest, StepsAreNumberedWithoutGaps) {
    int expected = 1;
    for (const auto& step : migrations()) EXPECT_EQ(step.number, expected++);
    EXPECT_EQ(farmFormat(), static_cast<int>(migrations().size()));
}

TEST_F(MigratorTest, TakesOnlyTheStepsThatLack) {
    ASSERT_TRUE(migrate(*m_connection, {kOne}).isOk());
    EXPECT_EQ(*formatOf(*m_connection), 1);
    ASSERT_TRUE(migrate(*m_connection, {kOne, kTwo}).isOk());
    EXPECT_EQ(*formatOf(*m_connection), 2);
    EXPECT_EQ(value(u"SELECT count(*) || y FROM a"_s), u"1new"_s);
    ASSERT_TRUE(migrate(*m_connection, {kOne, kTwo}).isOk()) << "and again: nothing to do";
    EXPECT_EQ(value(u"SELECT count(*) || y FROM a"_s), u"1new"_s);
}

TEST_F(MigratorTest, AStepThatFailsLeavesNothingBehind) {
    EXPECT_EQ(codeOf(migrate(*m_connection, {kOne, kTwo, kBroken})), "store_failed");
    EXPECT_EQ(*formatOf(*m_connection), 2);
    EXPECT_EQ(value(u"SELECT count(*) FROM a"_s), u"1"_s);
    EXPECT_TRUE(m_connection->run(u"BEGIN"_s).isOk()) << "no transaction is left open";
}

TEST_F(MigratorTest, AllTablesAreStrictAndWhole) {
    ASSERT_TRUE(migrate(*m_connection).isOk());
    EXPECT_EQ(value(u"SELECT count(*) FROM pragma_table_list"
                    " WHERE schema = 'main' AND name NOT LIKE 'sqlite_%' AND NOT strict"_s),
              u"0"_s);
    EXPECT_GE(value(u"SELECT count(*) FROM pragma_table_list WHERE strict"_s).toInt(), 11);
    EXPECT_TRUE(m_connection->check().isOk());
}

TEST_F(MigratorTest, AFileOfFormatNoughtIsBackedUpAndBroughtUpToDate) {
    {
        auto old = Connection::open(at(u"old.boomwright"_s), {.writeAhead = false});
        ASSERT_TRUE(old.isOk());
        ASSERT_TRUE(
            old.value()->run(u"PRAGMA application_id = %1"_s.arg(kFarmApplicationId)).isOk());
        ASSERT_TRUE(old.value()->run(u"CREATE TABLE relic (x)"_s).isOk());
    }
    const auto file = open(u"old.boomwright"_s);
    ASSERT_TRUE(file);
    EXPECT_EQ(*formatOf(file->connection()), farmFormat());
    ASSERT_EQ(file->notices().size(), 1U);
    EXPECT_EQ(file->notices()[0].code, "file_updated");
    ASSERT_EQ(file->backups().size(), 1);
    EXPECT_EQ(QFileInfo(file->backups()[0]).fileName(),
              u"old 2026-05-01 before format %1.boomwright"_s.arg(farmFormat()));
    auto backup = Connection::open(file->backups()[0], {.readOnly = true, .immutable = true});
    ASSERT_TRUE(backup.isOk());
    EXPECT_EQ(*formatOf(*backup.value()), 0);
    EXPECT_EQ(*backup.value()->value(u"SELECT count(*) FROM relic"_s), u"0"_s);
    EXPECT_TRUE(file->apply({added(StoredNozzle{1, fullNozzle()})}).isOk());
}

TEST_F(MigratorTest, WhenTheBackupCannotBeMadeTheFileStaysOld) {
    {
        auto old = Connection::open(at(u"old.boomwright"_s), {.writeAhead = false});
        ASSERT_TRUE(old.isOk());
        ASSERT_TRUE(
            old.value()->run(u"PRAGMA application_id = %1"_s.arg(kFarmApplicationId)).isOk());
    }
    writeBytes(at(u"old backups"_s), "a file where the folder should be");
    EXPECT_EQ(codeOf(FarmFile::open(at(u"old.boomwright"_s), options())), "backup_failed");
    EXPECT_EQ(identify(at(u"old.boomwright"_s), farmFormat())->format, 0);
}

}  // namespace
}  // namespace bw::test
