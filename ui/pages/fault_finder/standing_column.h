// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/fault_finder/case_view.h"
#include "ui/pages/fault_finder/cause_bars.h"

namespace bw {

class EvidenceList;
class TextLabel;

/// The findings that still fit as bars, so many at most; none before the complaint is known.
std::vector<CauseBar> barsOf(const CaseView& view, std::size_t most);

/// Right of the question: most likely so far, what no longer fits, what speaks for the first, what
/// this check parts, and what stands behind the bars.
class StandingColumn : public QWidget {
    Q_OBJECT

  public:
    explicit StandingColumn(QWidget* parent = nullptr);
    /// `inHand`: the check that is being asked, if one is.
    void setView(const CaseView& view, const NextCheck* inHand);

  private:
    TextLabel* m_among;
    CauseBars* m_bars;
    EvidenceList* m_list;
};

}  // namespace bw
