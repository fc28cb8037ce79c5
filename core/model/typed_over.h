// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>

#include "core/model/origin.h"

namespace bw {

/// What a field holds after a person typed over it. A new value is from the handbook until the
/// person marks it otherwise: the measurement, its date or the assumed range belonged to the old
/// one. The same value written another way stays what it was; an assumed one counts as given then.
template <class T>
Sourced<T> typedOver(const Known<T>& before, T value, std::string typed) {
    Sourced<T> after(std::move(value));
    const bool isSame = before && before->value == after.value;
    if (isSame && before->origin != Origin::Assumed) {
        after.origin = before->origin;
        after.date = before->date;
    }
    after.typed = std::move(typed);
    return after;
}

/// What a field holds after its value was set on a chart by hand: nobody read it anywhere.
template <class T>
Sourced<T> movedByHand(T value) {
    return Sourced<T>(std::move(value), Origin::Assumed);
}

}  // namespace bw
