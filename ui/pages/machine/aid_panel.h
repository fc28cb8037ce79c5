// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/kit/metrics.h"

namespace bw {

class Button;
class MachineRow;
class ListLine;

/// What helps with the field in hand, at the foot of the form so that no row moves: where to find
/// the value, that it is not known, where it came from, the date of a measurement.
class AidPanel : public RolePanel {
    Q_OBJECT

  public:
    explicit AidPanel(QWidget* parent = nullptr);
    /// Null: no field in hand.
    void present(const MachineRow* row, const QString& label, const QString& where);
    void setWhereShown(bool shown);
    bool isWhereShown() const { return m_isWhereShown; }
    /// Puts the focus into the date of the measurement, if there is one.
    void editDate();

  Q_SIGNALS:
    void whereWished();
    void unknownWished();
    void originWished();
    void dateEntered(const QString& isoDate);

  private:
    void build();
    void takeDate();
    Button* button(const QString& text, const char* name, const QKeySequence& key,
                   void (AidPanel::*signal)());
    TextLabel* m_title;
    TextLabel* m_usual;
    TextLabel* m_where;
    QWidget* m_dateBox;
    ListLine* m_date;
    TextLabel* m_dateProblem;
    Button* m_unknown = nullptr;
    Button* m_origin = nullptr;
    Button* m_find = nullptr;
    QString m_shownDate;
    bool m_isWhereShown = false;
};

}  // namespace bw
