// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/model/case_record.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

/// Machine, nozzle, job and case as JSON text and back: for requests, the exchange of single
/// records and the demo data. Quantities are strings "number unit" with a decimal point, plain
/// numbers where there is no dimension, or {"value", "origin", "from", "to", "typed", "date"}
/// objects; null is the same as absent.
namespace bw {

/// How a text is meant, and so what is asked of it.
enum class JsonUse {
    /// Whatever the model can hold, gaps and contradictions too; nothing required, nothing filled
    /// in.
    Stored,
    /// A request that reckons with the part: the keys it needs, the values that fit together, and
    /// the defaults for what is left out.
    Request,
    /// A request that takes whatever is known (a case): values must fit together, none is required.
    Partial,
};

/// Problems carry `where` as a path that starts with `where` ("machine.spacing",
/// "machine.sections[2]", "nozzle.droplets[1].from"): json_syntax, json_too_deep, json_too_big,
/// json_duplicate_key, json_number_too_big, json_unknown_key (names the nearest known one),
/// json_wrong_type, json_missing, json_not_a_choice, those of parseQuantity, and for Request and
/// Partial those of the values that cannot be reckoned with.
Result<Machine> machineFromJson(std::string_view text, JsonUse use = JsonUse::Stored,
                                const std::string& where = "machine");
Result<Nozzle> nozzleFromJson(std::string_view text, JsonUse use = JsonUse::Stored,
                              const std::string& where = "nozzle");
Result<Job> jobFromJson(std::string_view text, JsonUse use = JsonUse::Stored,
                        const std::string& where = "job");
Result<CaseRecord> caseFromJson(std::string_view text, const std::string& where = "case");

/// The text of a record; reading it as Stored gives an equal record. What was typed is kept as it
/// was; computed values get the shortest number in a unit of `units` that reads back the same.
/// `indent` below 0: one line.
std::string toJson(const Machine& machine, int indent = -1);
std::string toJson(const Nozzle& nozzle, UnitSystem units = UnitSystem::Metric, int indent = -1);
std::string toJson(const Job& job, UnitSystem units = UnitSystem::Metric, int indent = -1);
std::string toJson(const CaseRecord& record, int indent = -1);

}  // namespace bw
