// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/exchange/json_document.h"
#include "core/model/yard_record.h"

/// What was done in the yard as JSON and back, in the manner of json.h.
namespace bw {

/// The first problem met is left in `issues`; what is returned then is not to be used.
YardRecord readYardRecord(const Json& json, const std::string& where, JsonIssues& issues);
OrderedJson writtenYardRecord(const YardRecord& record);

/// Problems as machineFromJson.
Result<YardRecord> yardRecordFromJson(std::string_view text, const std::string& where = "yard");
/// Reading it gives an equal record, if every number in it is finite. `indent` below 0: one line.
std::string toJson(const YardRecord& record, int indent = -1);

}  // namespace bw
