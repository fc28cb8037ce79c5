// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <set>

#include "core/store/connection.h"
#include "core/store/migrator.h"
#include "tests/store/store_fixture.h"

/// One file of each format that there ever was is kept; this program must open them all.
namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

QString keptFile(int format) {
    return QString::fromUtf8(BW_SOURCE_DIR "/tests/store/formats/format_%1.boomwright").arg(format);
}

FarmContents fullContents() {
    FarmContents out;
    out.customers = {{1, fullCustomer()}};
    out.season.machines = {{1, 1, fullMachine()}};
    out.season.nozzles = {{1, fullNozzle()}};
    out.season.jobs = {{1, 1, 0, fullJob()}};
    out.cases = {{1, fullCase()}};
    out.yard = {{1, fullYardRecord()}};
    return out;
}

std::vector<RecordChange> asChanges(const FarmContents& all) {
    return {added(all.customers[0]),   added(all.season.machines[0]), added(all.season.nozzles[0]),
            added(all.season.jobs[0]), added(all.cases[0]),           added(all.yard[0])};
}

/// Forgets the fields that came into the program after the file was written.
template <class Record>
void forgetNewer(Record& full, const Record& read) {
    std::set<std::string> known;
    visitFields(read, [&](const char* key, const auto& field) {
        if (field) known.insert(key);
    });
    visitFields(full, [&](const char* key, auto& field) {
        if (!known.count(key)) field.reset();
    });
}

template <class Record>
int knownFields(const Record& record) {
    int count = 0;
    visitFields(record, [&](const char*, const auto& field) { count += field ? 1 : 0; });
    return count;
}

class StoredFormat : public StoreTest {
  protected:
    /// Writes the file of the newest format where it is to be kept, once, when asked to.
    void keepNewest() {
        if (!qEnvironmentVariableIsSet("BW_KEEP_FORMAT") ||
            QFileInfo::exists(keptFile(farmFormat())))
            return;
        auto file = create(u"kept.boomwright"_s);
        ASSERT_TRUE(file->apply(asChanges(fullContents())).isOk());
        ASSERT_TRUE(file->saveCopy(keptFile(farmFormat())).isOk());
    }
    std::unique_ptr<FarmFile> openCopyOf(int format) {
        const QString name = u"format_%1.boomwright"_s.arg(format);
        EXPECT_TRUE(QFile::copy(keptFile(format), at(name))) << keptFile(format).toStdString();
        EXPECT_TRUE(QFile::setPermissions(at(name), QFile::ReadOwner | QFile::WriteOwner));
        return open(name);
    }
};

TEST_F(StoredFormat, EveryOneOpensWithNothingLost) {
    keepNewest();
    for (int format = 1; format <= farmFormat(); ++format) {
        SCOPED_TRACE(format);
        const auto file = openCopyOf(format);
        ASSERT_TRUE(file);
        auto contents = file->read();
        ASSERT_TRUE(contents.isOk());
        EXPECT_TRUE(contents->setAside.empty());
        ASSERT_EQ(contents->season.machines.size(), 1U);
        ASSERT_EQ(contents->cases.size(), 1U);
        FarmContents full = fullContents();
        forgetNewer(full.season.machines[0].machine, contents->season.machines[0].machine);
        forgetNewer(full.season.nozzles[0].nozzle, contents->season.nozzles[0].nozzle);
        forgetNewer(full.season.jobs[0].job, contents->season.jobs[0].job);
        forgetNewer(full.cases[0].record.machine, contents->cases[0].record.machine);
        forgetNewer(full.cases[0].record.nozzle, contents->cases[0].record.nozzle);
        forgetNewer(full.cases[0].record.job, contents->cases[0].record.job);
        EXPECT_EQ(contents->season, full.season);
        EXPECT_EQ(contents->cases, full.cases);
        if (format < 2) full.yard.clear();
        EXPECT_EQ(contents->yard, full.yard);
        EXPECT_EQ(contents->customers, full.customers);
        EXPECT_EQ(*file->connection().value(u"SELECT count(*) FROM machine_value"_s),
                  QString::number(knownFields(contents->season.machines[0].machine)));
    }
}

/// A step that was released is never edited: the tables it makes are those of the file kept then.
TEST_F(StoredFormat, TheStepsStillMakeWhatTheyMade) {
    for (int format = 1; format <= farmFormat(); ++format) {
        SCOPED_TRACE(format);
        auto kept = Connection::open(keptFile(format), {.readOnly = true, .immutable = true});
        auto fresh = Connection::open(u":memory:"_s, {});
        ASSERT_TRUE(kept.isOk() && fresh.isOk());
        const auto& steps = migrations();
        ASSERT_TRUE(migrate(*fresh.value(), {steps.begin(), steps.begin() + format}).isOk());
        const QString schema =
            u"SELECT group_concat(sql, char(10)) FROM"
            " (SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL"
            "  AND name NOT LIKE 'sqlite_%' ORDER BY name)"_s;
        EXPECT_EQ(*fresh.value()->value(schema), *kept.value()->value(schema));
        EXPECT_FALSE(kept.value()->value(schema)->isEmpty());
    }
}

}  // namespace
}  // namespace bw::test
