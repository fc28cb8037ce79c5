// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/shell/frame_services.h"

namespace bw {

/// The pages of the program, in the order of the rail. A page is added here and nowhere else.
std::vector<PageEntry> makePageList();

}  // namespace bw
