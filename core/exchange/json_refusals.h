// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/exchange/json.h"
#include "core/exchange/json_document.h"

/// What a request is refused for although it could be read: parts that a group lacks, and values
/// that cannot be reckoned with or do not fit together.
namespace bw {

/// Keys that a given group must hold ("agitation.at"), from the JSON itself; with `whole` also
/// those that the request needs at all ("spacing").
void requireMachineKeys(const Json& json, const Machine& machine, const std::string& where,
                        JsonIssues& issues);
void requireNozzleKeys(const Json& json, const std::string& where, JsonIssues& issues);
void requireJobKeys(const Json& json, const std::string& where, JsonIssues& issues);

/// Values out of every sane range, and values that contradict each other.
void refuseMachine(const Machine& machine, const std::string& where, JsonIssues& issues);
void refuseNozzle(const Nozzle& nozzle, const std::string& where, JsonIssues& issues);
void refuseJob(const Job& job, const std::string& where, JsonIssues& issues);

}  // namespace bw
