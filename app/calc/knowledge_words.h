// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/knowledge.h"
#include "core/exchange/json_document.h"

namespace bw::calc {

/// The texts of cautions by their ids. They come before the work they belong to.
OrderedJson cautionTexts(const Knowledge& knowledge, const std::vector<std::string>& ids);

}  // namespace bw::calc
