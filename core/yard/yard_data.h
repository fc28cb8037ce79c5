// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cassert>
#include <exception>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/knowledge.h"
#include "core/yard/profile_condition.h"

/// Reading of the yard's data files: what is broken is thrown as `BrokenData`, and caught by the
/// loader of each file.
namespace bw::yard_data {

using Json = nlohmann::json;

struct BrokenData {
    std::string where;
};

/// What a loader gives out: the outcome of `read`, or knowledge_broken with the place.
template <class Read>
auto loaded(Read&& read) -> Result<decltype(read())> {
    try {
        return read();
    } catch (const BrokenData& problem) {
        return error("knowledge_broken", problem.where);
    } catch (const std::exception& problem) {
        return error("knowledge_broken", problem.what());
    }
}
/// The shipped data of a loader; a test reads them, so that they are never broken.
template <class T>
T shipped(Result<T> read) {
    assert(read.isOk());
    return read ? std::move(read).value() : T{};
}

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
