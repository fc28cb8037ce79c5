// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/chart_panel.h"
#include "ui/pages/fault_finder/case_view.h"

namespace bw {

/// Boom pressure over flow for the nozzles of a case, with what the job needs and what was read.
class FlowPicture : public ChartPanel {
    Q_OBJECT

  public:
    explicit FlowPicture(QWidget* parent = nullptr);
    /// False, and nothing to see, if the boom's numbers are not known well enough for a curve.
    bool setView(const CaseView& view);
};

}  // namespace bw
