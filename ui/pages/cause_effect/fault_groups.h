// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>
#include <vector>

namespace bw {

/// Causes under one heading of the list, by the place in the line where they sit.
struct FaultGroup {
    QString title;
    std::vector<std::string> causes;
};

/// Every cause that can be put into the running loop, once.
std::vector<FaultGroup> faultGroups();

}  // namespace bw
