// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/settings.h"

#include <gtest/gtest.h>

#include <QFileInfo>

#include "tests/store/store_fixture.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;

class SettingsTest : public StoreTest {
  protected:
    QString ini() const { return at(u"settings.ini"_s); }
};

TEST_F(SettingsTest, DefaultsWhereNothingIsSet) {
    const Settings settings(ini());
    EXPECT_EQ(settings.theme(), ThemeChoice::System);
    EXPECT_EQ(settings.decimalMark(), std::nullopt);
    EXPECT_TRUE(settings.role().isEmpty());
    EXPECT_TRUE(settings.recentFiles().isEmpty());
    EXPECT_TRUE(settings.backupFolder().isEmpty());
    EXPECT_TRUE(settings.windowState(u"frame"_s).isEmpty());
}

TEST_F(SettingsTest, EverythingIsReadBackByTheNextStart) {
    {
        Settings settings(ini());
        settings.setTheme(ThemeChoice::Dark);
        settings.setDecimalMark(',');
        settings.setRole(u"fix"_s);
        settings.addRecentFile(u"/a/one"_s);
        settings.addRecentFile(u"/a/two"_s);
        settings.setBackupFolder(u"/safe"_s);
        settings.setWindowState(u"frame"_s, QByteArray("\0\1\xff", 3));
        EXPECT_TRUE(settings.save());
    }
    const Settings settings(ini());
    EXPECT_EQ(settings.theme(), ThemeChoice::Dark);
    EXPECT_EQ(settings.decimalMark(), ',');
    EXPECT_EQ(settings.role(), u"fix"_s);
    EXPECT_EQ(settings.recentFiles(), (QStringList{u"/a/two"_s, u"/a/one"_s}));
    EXPECT_EQ(settings.backupFolder(), u"/safe"_s);
    EXPECT_EQ(settings.windowState(u"frame"_s), QByteArray("\0\1\xff", 3));
}

TEST_F(SettingsTest, NonsenseReadsAsTheDefault) {
    writeBytes(ini(), "[General]\ntheme=purple\ndecimal_mark=x\nrole=idle\n");
    const Settings settings(ini());
    EXPECT_EQ(settings.theme(), ThemeChoice::System);
    EXPECT_EQ(settings.decimalMark(), std::nullopt);
    EXPECT_TRUE(settings.role().isEmpty());
}

TEST_F(SettingsTest, RecentFilesAreTenNewestFirstEachOnce) {
    Settings settings(ini());
    for (int i = 0; i < 12; ++i) settings.addRecentFile(u"/a/%1"_s.arg(i));
    settings.addRecentFile(u"/a/5"_s);
    const QStringList files = settings.recentFiles();
    EXPECT_EQ(files.size(), 10);
    EXPECT_EQ(files[0], u"/a/5"_s);
    EXPECT_EQ(files[1], u"/a/11"_s);
    EXPECT_EQ(files.count(u"/a/5"_s), 1);
    settings.removeRecentFile(u"/a/11"_s);
    EXPECT_FALSE(settings.recentFiles().contains(u"/a/11"_s));
}

TEST_F(SettingsTest, TheDecimalMarkCanBeGivenBackToTheDesktop) {
    Settings settings(ini());
    settings.setDecimalMark('.');
    EXPECT_EQ(settings.decimalMark(), '.');
    settings.setDecimalMark(std::nullopt);
    EXPECT_EQ(settings.decimalMark(), std::nullopt);
}

TEST_F(SettingsTest, APlaceThatCannotBeWrittenIsSaid) {
    writeBytes(at(u"blocked"_s), "");
    Settings settings(at(u"blocked/settings.ini"_s));
    settings.setRole(u"plan"_s);
    EXPECT_FALSE(settings.save());
}

}  // namespace
}  // namespace bw::test
