// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/warnings.h"

#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>

#include <QDebug>

using namespace Qt::StringLiterals;

TEST(Warnings, AnUnexpectedOneFailsTheTest) {
    EXPECT_NONFATAL_FAILURE(qWarning() << "not announced", "not announced");
}

TEST(Warnings, AnAnnouncedOneDoesNot) {
    const bw::test::ExpectWarning expected(u"odd thing"_s);
    qWarning() << "an odd thing happened";
    EXPECT_EQ(expected.count(), 1);
}

TEST(Warnings, AnnouncedButNotComeFails) {
    EXPECT_NONFATAL_FAILURE(bw::test::ExpectWarning(u"never"_s), "did not come");
}
