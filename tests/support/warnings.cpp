// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/warnings.h"

#include <gtest/gtest.h>

#include <QMutex>
#include <QMutexLocker>
#include <algorithm>
#include <array>
#include <cstdio>
#include <utility>
#include <vector>

namespace bw::test {

using namespace Qt::StringLiterals;

/// Who waits for which warning. Messages may come from any thread.
class WarningGuard {
  public:
    static void add(ExpectWarning* expected) {
        const QMutexLocker lock(&s_mutex);
        s_expected.push_back(expected);
    }
    static void remove(ExpectWarning* expected) {
        const QMutexLocker lock(&s_mutex);
        std::erase(s_expected, expected);
    }
    static bool isExpected(const QString& text) {
        const QMutexLocker lock(&s_mutex);
        const auto found =
            std::find_if(s_expected.begin(), s_expected.end(),
                         [&](const ExpectWarning* e) { return text.contains(e->m_part); });
        if (found == s_expected.end()) return false;
        ++(*found)->m_count;
        return true;
    }
    static inline bool s_outside = false;

  private:
    static inline QMutex s_mutex;
    static inline std::vector<ExpectWarning*> s_expected;
};

namespace {

/// Harmless: the offscreen platform has no window manager to tell sizes or the front window to, and
/// no keyboard to hold for a list that drops down; a container has no session folder.
bool isHarmless(const QString& text) {
    static const std::array parts{u"propagateSizeHints"_s, u"XDG_RUNTIME_DIR"_s,
                                  u"does not support raise()"_s,
                                  u"does not support grabbing the keyboard"_s};
    return std::any_of(parts.begin(), parts.end(),
                       [&](const QString& p) { return text.contains(p); });
}

void handle(QtMsgType type, const QMessageLogContext& context, const QString& text) {
    if (type == QtDebugMsg || type == QtInfoMsg) {
        std::fprintf(stderr, "%s\n", qPrintable(text));
        return;
    }
    if (isHarmless(text) || WarningGuard::isExpected(text)) return;
    std::fprintf(stderr, "Qt warning: %s\n", qPrintable(text));
    if (testing::UnitTest::GetInstance()->current_test_info() == nullptr) {
        WarningGuard::s_outside = true;
        return;
    }
    ADD_FAILURE() << "Qt warning: " << text.toStdString()
                  << (context.function ? std::string("\n  in ") + context.function : std::string());
}

}  // namespace

void failOnQtWarnings() {
    qInstallMessageHandler(handle);
}

bool warnedOutsideTests() {
    return WarningGuard::s_outside;
}

ExpectWarning::ExpectWarning(QString part) : m_part(std::move(part)) {
    WarningGuard::add(this);
}

ExpectWarning::~ExpectWarning() {
    WarningGuard::remove(this);
    EXPECT_GT(m_count, 0) << "expected Qt warning did not come: " << m_part.toStdString();
}

}  // namespace bw::test
