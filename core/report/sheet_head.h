// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/model/machine.h"
#include "core/report/report_context.h"
#include "core/report/sheet.h"

namespace bw {

/// A sheet of a machine without blocks yet: title (by its code), machine, and the footer that every
/// sheet has: the day, "Not a spray record", and that the data are invented where they are.
Sheet sheetWithHead(std::string_view titleCode, const Machine& machine, bool isDemo,
                    const ReportContext& context);

}  // namespace bw
