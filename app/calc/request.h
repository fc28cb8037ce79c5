// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/exchange/json_document.h"
#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"
#include "core/hydraulics/nozzle_law.h"
#include "core/text/sentences.h"

namespace bw::calc {

/// The shipped English sentences, read once.
const Sentences& sentences();

/// One request while it is read and answered: its JSON, the units of the answer, and the first
/// problem. Readers return what is there; look at `ok()` before reckoning.
class Request {
  public:
    explicit Request(const Json& json) : m_json(json) {}

    const Json& json() const { return m_json; }
    JsonIssues& issues() { return m_issues; }
    bool ok() const { return m_issues.none(); }
    void fail(Problem problem) { m_issues.add(std::move(problem)); }

    /// Refuses keys other than "do", "units" and these; then settles the request's own units.
    void allowKeys(std::vector<std::string> keys);
    /// The part under a key; an issue and nothing if it is missing.
    const Json* need(std::string_view key);
    /// Reads the parts that a window needs, as parts of a request; the machine also settles units.
    Machine machine(JsonUse use = JsonUse::Request);
    Nozzle nozzle(JsonUse use = JsonUse::Request);
    Job job(JsonUse use = JsonUse::Request);
    /// A quantity or plain number of the request itself, bare or as an object.
    template <class T>
    std::optional<T> value(std::string_view key) {
        Known<T> field;
        if (const Json* json = member(m_json, key))
            readKnown(*json, std::string(key), field, m_issues);
        return bare(field);
    }

    /// Units of the answer: the request's, else its machine's, else metric.
    UnitSystem units() const { return m_units ? *m_units : m_machineUnits; }
    NumberStyle style() const { return {units(), '.'}; }
    /// {"value", "unit"} in the answer's units, a plain number where there is no dimension; null
    /// for nothing.
    OrderedJson number(AnyQuantity quantity) const;
    template <class Q>
    OrderedJson number(Q quantity) const {
        return number(anyQuantity(quantity));
    }
    template <class Q>
    OrderedJson number(const std::optional<Q>& quantity) const {
        return quantity ? number(*quantity) : OrderedJson(nullptr);
    }
    /// A fact in words; several as one text.
    std::string words(const Fact& fact) const { return sentences().of(fact, style()); }
    std::string words(const std::vector<Fact>& facts) const;

  private:
    const Json& m_json;
    JsonIssues m_issues;
    std::optional<UnitSystem> m_units;
    UnitSystem m_machineUnits = UnitSystem::Metric;
};

/// The law of a nozzle of the request; its problem is left in the request's issues.
std::optional<NozzleLaw> lawOf(Request& request, const Nozzle& nozzle);

/// One function for each "do"; a problem is left in the request's issues.
OrderedJson convert(Request& request);
OrderedJson nozzleFlow(Request& request);
OrderedJson nozzlePressure(Request& request);
OrderedJson speedWindow(Request& request);
OrderedJson boomEvenness(Request& request);
OrderedJson lineLoss(Request& request);
OrderedJson turn(Request& request);
OrderedJson simulate(Request& request);
OrderedJson diagnose(Request& request);
OrderedJson knowledge(Request& request);
OrderedJson courseSpeedAnswer(Request& request);
OrderedJson catchTest(Request& request);
OrderedJson meterCheckAnswer(Request& request);
OrderedJson pumpLineAnswer(Request& request);
OrderedJson chooseSetsAnswer(Request& request);
OrderedJson loadsAnswer(Request& request);
OrderedJson workRateAnswer(Request& request);

}  // namespace bw::calc
