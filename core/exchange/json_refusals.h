// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/exchange/json.h"
#include "core/exchange/json_document.h"

/// What a request is refused for although it could be read: parts that a group lacks, and values
/// that cannot be reckoned with or do not fit together (core/model/checks.h, with the row named).
namespace bw {

/// Keys that a request needs at all ("spacing") and those that a given group must hold
/// ("agitation.at"), looked for in the JSON itself.
void requireMachineKeys(const Json& json, const Machine& machine, const std::string& where,
                        JsonIssues& issues);
void requireNozzleKeys(const Json& json, const std::string& where, JsonIssues& issues);
void requireJobKeys(const Json& json, const std::string& where, JsonIssues& issues);

/// Rows in the order of pressure, empty tables forgotten, points of a pump curve without flow left
/// out: what may stand in a request in any way, and the engines want in one.
void putInOrder(Machine& machine, const std::string& where, JsonIssues& issues);
void putInOrder(Nozzle& nozzle);

void refuseMachine(const Machine& machine, const std::string& where, JsonIssues& issues);
/// The rows of a nozzle's tables, as they stood in the request: before putInOrder.
void refuseNozzleRows(const Nozzle& nozzle, const std::string& where, JsonIssues& issues);
void refuseNozzle(const Nozzle& nozzle, const std::string& where, JsonIssues& issues);
void refuseJob(const Job& job, const std::string& where, JsonIssues& issues);

}  // namespace bw
