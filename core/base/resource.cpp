// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/resource.h"

#include <algorithm>

namespace bw {

std::string_view resource(std::string_view path) {
    const auto all = resources();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& e) { return e.path == path; });
    return found == all.end() ? std::string_view{} : found->bytes;
}

}  // namespace bw
