// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/exchange/json.h"
#include "core/exchange/json_document.h"

/// The records as JSON values, for programs that read whole requests. As json.h, with the first
/// problem left in `issues`; what is returned then is not to be used.
namespace bw {

Machine readMachine(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues);
Nozzle readNozzle(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues);
Job readJob(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues);
/// One observation of a case. A reading may be of any dimension.
Observation readObservation(const Json& json, const std::string& where, JsonIssues& issues);
CaseRecord readCase(const Json& json, const std::string& where, JsonIssues& issues);

OrderedJson writtenMachine(const Machine& machine);
OrderedJson writtenNozzle(const Nozzle& nozzle, UnitSystem units);
OrderedJson writtenJob(const Job& job, UnitSystem units);
OrderedJson writtenCase(const CaseRecord& record);

}  // namespace bw
