// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/quantity_format.h"

namespace bw {

const Sentences& shippedSentences() {
    static const Sentences kSentences = Sentences::shipped();
    return kSentences;
}

}  // namespace bw
