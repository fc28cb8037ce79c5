// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/knowledge.h"

#include <nlohmann/json.hpp>
#include "core/base/resource.h"

namespace bw {
namespace {

nlohmann::json shippedJson() {
    auto all = nlohmann::json::object();
    for (const auto* file : {"causes", "checks", "cautions"})
        all.update(nlohmann::json::parse(resource(std::string("knowledge/") + file + ".json")));
    return all;
}

TEST(Knowledge, ShippedDataAreWhole) {
    const auto read = Knowledge::fromJson(shippedJson().dump());
    ASSERT_TRUE(read.isOk()) << read.problem().where;
}

}  // namespace
}  // namespace bw
