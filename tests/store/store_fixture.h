// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QByteArray>
#include <QDateTime>
#include <QString>
#include <QTemporaryDir>
#include <memory>
#include <string>
#include <vector>

#include "core/store/farm_file.h"

/// What the store's tests share. Every record here is invented.
namespace bw::test {

/// A folder that is gone after the test, and farm files in it.
class StoreTest : public testing::Test {
  protected:
    QString at(const QString& name) const { return m_folder.filePath(name); }
    QString folder() const { return m_folder.path(); }
    /// Options with a clock that stands at noon of 1 May 2026.
    FarmFileOptions options() const;
    std::unique_ptr<FarmFile> create(const QString& name);
    std::unique_ptr<FarmFile> open(const QString& name);
    void SetUp() override { ASSERT_TRUE(m_folder.isValid()); }
    QDateTime m_now{QDate(2026, 5, 1), QTime(12, 0)};

  private:
    QTemporaryDir m_folder;
};

/// Every field known, each with origin, date, typed text and range of its own.
Machine fullMachine();
Nozzle fullNozzle();
Job fullJob();
CaseRecord fullCase();
YardRecord fullYardRecord();
Customer fullCustomer();

/// All rows of all tables, to compare contents of files.
std::string dump(FarmFile& file);

QByteArray bytesOf(const QString& path);
void writeBytes(const QString& path, const QByteArray& bytes);

/// The code of a result's problem, "" if there is none.
template <class T>
std::string codeOf(const Result<T>& result) {
    return result ? std::string() : result.problem().code;
}
/// The text of one argument of a problem, "" if it has none of that name.
std::string argumentOf(const Problem& problem, const std::string& name);

/// Rights of an ordinary user while it lives, where the tests run as the administrator, whom no
/// file refuses.
class AsOrdinaryUser {
  public:
    AsOrdinaryUser();
    ~AsOrdinaryUser();
    AsOrdinaryUser(const AsOrdinaryUser&) = delete;
    AsOrdinaryUser& operator=(const AsOrdinaryUser&) = delete;

  private:
    bool m_changed = false;
};

}  // namespace bw::test
