// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/units/format.h"
#include "core/yard/wear_history.h"

class QStandardItemModel;

namespace bw {

class DataTable;
class EvidenceList;
class FarmSession;
class TextLabel;
class VerdictPanel;
class WearChart;

/// Each nozzle set with its catch tests, and when it will be worn by the line through them.
class WearView : public QWidget {
    Q_OBJECT

  public:
    explicit WearView(FarmSession& session, QWidget* parent = nullptr);
    void refresh();
    void takeFocus();
    QString tableText() const;

  private:
    QWidget* buildDetail();
    void choose(int row);
    void showNone();
    QString sentence(const WearHistory& history) const;
    NumberStyle styleOf(const WearHistory& history) const;
    QString passes(const WearHistory& history) const;

    FarmSession& m_session;
    std::vector<WearHistory> m_histories;
    DataTable* m_table;
    QStandardItemModel* m_model;
    TextLabel* m_title = nullptr;
    VerdictPanel* m_verdict = nullptr;
    WearChart* m_chart = nullptr;
    EvidenceList* m_list = nullptr;
    bool m_isFilling = false;
};

}  // namespace bw
