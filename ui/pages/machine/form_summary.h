// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/machine/machine_row.h"

namespace bw {

/// What a group of the form says when it is folded: "60 nozzles in 5 sections".
QString groupSummary(const FormView& view, const QString& group);

}  // namespace bw
