// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "core/diagnosis/knowledge.h"
#include "core/yard/profile_condition.h"

/// Reading of the yard's data files: what is broken is thrown as `BrokenData`, and caught by the
/// loader of each file.
namespace bw::yard_data {

using Json = nlohmann::json;

struct BrokenData {
    std::string where;
};

/// A text that is there and not empty.
std::string textOf(const Json& object, const char* key, const std::string& where);
/// A list of texts, each not empty; empty if the key is missing.
std::vector<std::string> textsOf(const Json& object, const char* key, const std::string& where);
/// One source or more.
std::vector<Source> sourcesOf(const Json& object, const std::string& where);
/// Ids of cautions that exist.
std::vector<std::string> cautionsOf(const Json& object, const std::string& where);
/// `when`: conditions on fields and choices that exist; empty if the key is missing.
std::vector<ProfileCondition> conditionsOf(const Json& object, const std::string& where);

}  // namespace bw::yard_data
