// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/fault_finder/case_view.h"

class QGridLayout;

namespace bw {

class CautionBox;
class FlowPicture;
class TextLabel;

/// Left of the question: what was said before anything else, the numbers of the call, what the sums
/// say with what it does to the dose, and flow against pressure.
class CallColumn : public QWidget {
    Q_OBJECT

  public:
    explicit CallColumn(QWidget* parent = nullptr);
    void setView(const CaseView& view);

  Q_SIGNALS:
    /// The user wants to answer this again.
    void changeWanted(bw::Step step);

  private:
    void clear(QGridLayout* grid);
    void addSaid(int row, const QString& label, const QString& text, Step step,
                 const QString& name);
    void showSaid(const CaseView& view);
    void showNumbers(const CaseView& view);
    void showSums(const CaseView& view);

    QGridLayout* m_said;
    QGridLayout* m_numbers;
    CautionBox* m_dose;
    TextLabel* m_sums;
    TextLabel* m_conflicts;
    FlowPicture* m_picture;
};

}  // namespace bw
