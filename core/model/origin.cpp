// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/origin.h"

namespace bw {

std::string_view name(Origin origin) {
    switch (origin) {
        case Origin::Measured:
            return "measured";
        case Origin::Handbook:
            return "handbook";
        case Origin::Assumed:
            return "assumed";
    }
    return "assumed";
}

std::optional<Origin> originFor(std::string_view text) {
    for (const auto o : {Origin::Measured, Origin::Handbook, Origin::Assumed}) {
        if (name(o) == text) return o;
    }
    return std::nullopt;
}

}  // namespace bw
