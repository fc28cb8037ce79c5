// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace bw::test {

/// From here on every Qt warning fails the test during which it came, unless it was announced or is
/// on the short list of harmless ones (offscreen window sizes). Call once, before the tests run.
void failOnQtWarnings();

/// True if a Qt warning came while no test ran; such a run must not count as passed.
bool warnedOutsideTests();

/// Announces one Qt warning that a test provokes on purpose. While it lives, warnings that hold
/// `part` are expected; a test that ends without any of them fails.
class ExpectWarning {
  public:
    explicit ExpectWarning(QString part);
    ~ExpectWarning();
    ExpectWarning(const ExpectWarning&) = delete;
    ExpectWarning& operator=(const ExpectWarning&) = delete;
    /// How often it came so far.
    int count() const { return m_count; }

  private:
    friend class WarningGuard;
    QString m_part;
    int m_count = 0;
};

}  // namespace bw::test
