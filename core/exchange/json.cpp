// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json.h"

#include "core/exchange/json_model.h"

namespace bw {
namespace {

template <class T, class Read>
Result<T> fromText(std::string_view text, const std::string& where, Read read) {
    const auto document = parseJson(text);
    if (!document) {
        Problem problem = document.problem();
        problem.where = problem.where.empty() ? where : where + "." + problem.where;
        return problem;
    }
    JsonIssues issues;
    T out = read(*document, issues);
    if (!issues.none()) return issues.first();
    return out;
}

/// Bytes that are no UTF-8 (a foreign file's name or note) become the replacement mark.
std::string dumped(const OrderedJson& json, int indent) {
    return json.dump(indent, ' ', false, OrderedJson::error_handler_t::replace);
}

}  // namespace

Result<Machine> machineFromJson(std::string_view text, JsonUse use, const std::string& where) {
    return fromText<Machine>(text, where, [&](const Json& json, JsonIssues& issues) {
        return readMachine(json, use, where, issues);
    });
}

Result<Nozzle> nozzleFromJson(std::string_view text, JsonUse use, const std::string& where) {
    return fromText<Nozzle>(text, where, [&](const Json& json, JsonIssues& issues) {
        return readNozzle(json, use, where, issues);
    });
}

Result<Job> jobFromJson(std::string_view text, JsonUse use, const std::string& where) {
    return fromText<Job>(text, where, [&](const Json& json, JsonIssues& issues) {
        return readJob(json, use, where, issues);
    });
}

Result<CaseRecord> caseFromJson(std::string_view text, const std::string& where) {
    return fromText<CaseRecord>(text, where, [&](const Json& json, JsonIssues& issues) {
        return readCase(json, where, issues);
    });
}

std::string toJson(const Machine& machine, int indent) {
    return dumped(writtenMachine(machine), indent);
}
std::string toJson(const Nozzle& nozzle, UnitSystem units, int indent) {
    return dumped(writtenNozzle(nozzle, units), indent);
}
std::string toJson(const Job& job, UnitSystem units, int indent) {
    return dumped(writtenJob(job, units), indent);
}
std::string toJson(const CaseRecord& record, int indent) {
    return dumped(writtenCase(record), indent);
}

}  // namespace bw
