// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

#include "core/units/format.h"

namespace bw {

/// "5 Mar 2026" of an ISO date or time; what is none stays as it is.
QString dayWords(const std::string& iso);
/// "+4.3 %", how far a part of one is off one.
QString offWords(double part, const NumberStyle& style);

}  // namespace bw
