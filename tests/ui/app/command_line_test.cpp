// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line.h"

#include <gtest/gtest.h>

namespace bw {
namespace {

using namespace Qt::StringLiterals;

TEST(CommandLine, ReadsEveryOptionInBothForms) {
    const auto line = readCommandLine({u"--demo"_s, u"--data-dir"_s, u"/a b"_s, u"--pictures=/p"_s,
                                       u"--exit-after-startup"_s, u"my.boomwright"_s});
    EXPECT_TRUE(line.error.isEmpty());
    EXPECT_TRUE(line.isDemo && line.exitAfterStartup && line.isUnattended());
    EXPECT_EQ(line.dataDir, u"/a b"_s);
    EXPECT_EQ(line.picturesDir, u"/p"_s);
    EXPECT_EQ(line.file, u"my.boomwright"_s);
}

TEST(CommandLine, PlainStartIsAttended) {
    const auto line = readCommandLine({});
    EXPECT_TRUE(line.error.isEmpty());
    EXPECT_FALSE(line.isUnattended());
    EXPECT_TRUE(readCommandLine({u"--help"_s}).wantsHelp);
    EXPECT_TRUE(readCommandLine({u"--version"_s}).wantsVersion);
}

TEST(CommandLine, RefusesWhatItDoesNotKnow) {
    EXPECT_TRUE(readCommandLine({u"--nonsense"_s}).error.contains(u"--nonsense"_s));
    EXPECT_TRUE(readCommandLine({u"--pictures"_s}).error.contains(u"--pictures"_s));
    EXPECT_TRUE(readCommandLine({u"--pictures="_s}).error.contains(u"--pictures"_s));
    EXPECT_FALSE(readCommandLine({u"one"_s, u"two"_s}).error.isEmpty());
    for (const char* option :
         {"--demo", "--data-dir", "--pictures", "--exit-after-startup", "--version", "--help"}) {
        EXPECT_TRUE(helpText().contains(QLatin1String(option))) << option;
    }
}

}  // namespace
}  // namespace bw
