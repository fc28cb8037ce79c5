// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <QWidget>

/// Keys as a person types them: to whatever has the focus, then all that follows from them.
namespace bw::test {

inline void settle() {
    for (int i = 0; i < 6; ++i) {
        QApplication::sendPostedEvents();
        QApplication::processEvents();
    }
}
/// `window` takes the key where nothing has the focus.
inline void keyTo(QWidget* window, Qt::Key which, Qt::KeyboardModifiers with) {
    QWidget* focus = QApplication::focusWidget();
    QTest::keyClick(focus ? focus : window, which, with);
    settle();
}
inline void typeText(const char* text) {
    ASSERT_TRUE(QApplication::focusWidget());
    QTest::keyClicks(QApplication::focusWidget(), QString::fromUtf8(text));
    settle();
}

}  // namespace bw::test
