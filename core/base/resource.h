// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

namespace bw {

/// One embedded file: its path below `resources/` and its bytes.
struct ResourceEntry {
    std::string_view path;
    std::string_view bytes;
};

/// Every embedded data, text, knowledge and demo file.
std::span<const ResourceEntry> resources();

/// The bytes of one embedded file, such as "data/nozzle_sizes.csv"; empty if there is none.
std::string_view resource(std::string_view path);

}  // namespace bw
