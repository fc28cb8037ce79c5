// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QLocale>
#include <QStandardPaths>

#include "tests/support/warnings.h"
#include "ui/kit/kit_style.h"

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("LC_ALL", "C.UTF-8");
    qputenv("TZ", "UTC");
    testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QLocale::setDefault(QLocale::c());
    QApplication application(argc, argv);
    bw::dressApplication(true);
    bw::test::failOnQtWarnings();
    const int result = RUN_ALL_TESTS();
    return bw::test::warnedOutsideTests() && result == 0 ? 1 : result;
}
