// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/records/record_line.h"

namespace bw {

class Button;
class CatchBars;
class EvidenceList;
class FarmSession;
class TextLabel;
class VerdictPanel;

/// The record in hand: what it was, what came of it, and all that it holds.
class RecordDetail : public QWidget {
    Q_OBJECT

  public:
    explicit RecordDetail(FarmSession& session, QWidget* parent = nullptr);
    /// Null: none in hand. `opens`: words of the button that leads to its page; empty: no button.
    void setLine(const RecordLine* line, const QString& opens);

  Q_SIGNALS:
    void openWanted();
    void removeWanted();

  private:
    void showCase(const RecordLine& line);
    void showYard(const RecordLine& line);
    void showBars(const RecordLine& line);
    FarmSession& m_session;
    TextLabel* m_title;
    TextLabel* m_about;
    VerdictPanel* m_verdict;
    CatchBars* m_bars;
    EvidenceList* m_list;
    Button* m_open;
    Button* m_remove;
};

}  // namespace bw
