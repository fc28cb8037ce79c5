// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/metrics.h"

namespace bw {

class FarmSession;

/// The line at the foot: file, when it was saved, what the keys do, what undo takes back, units,
/// and what this is not.
class StatusLine : public RolePanel {
    Q_OBJECT

  public:
    explicit StatusLine(QWidget* parent = nullptr);
    void setFile(const QString& path, bool isThrowAway);
    void setSaved(const QString& timeOfDay);
    void setHint(const QString& hint);
    /// Undo name, units and demo mark of the session.
    void follow(FarmSession& session);

  private:
    TextLabel* m_file;
    TextLabel* m_saved;
    TextLabel* m_hint;
    TextLabel* m_undo;
    TextLabel* m_units;
    TextLabel* m_demo;
};

}  // namespace bw
