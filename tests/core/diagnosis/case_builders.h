// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/diagnosis/call.h"
#include "tests/support/builders.h"

/// Cases for the tests of the fault finder; machines, nozzles and jobs are invented.
namespace bw::build {

inline Observation said(std::string check, std::string answer) {
    return {std::move(check), std::move(answer), std::nullopt, {}};
}
template <class Q>
Observation read(std::string check, Q value) {
    return {std::move(check), {}, anyQuantity(value), {}};
}

/// On the invented self-propelled machine, clean water aboard, two people in the yard.
inline CaseRecord usCase(AreaRate rate, Speed usual, Nozzle nozzle) {
    CaseRecord record;
    record.machine = selfPropelled100();
    record.nozzle = std::move(nozzle);
    record.job = job(rate, usual, usual, usual);
    record.job.slow.reset();
    record.job.fast.reset();
    record.tank = "water";
    record.company = "second_person";
    record.place = "yard";
    return record;
}
/// 22.6 gal/min, under the changeover flow of 30: the restrictor stands narrowed, as it should.
inline CaseRecord lowFlowCase() {
    return usCase(gpa(8), mph(14), lowDrift04());
}
/// 44.6 gal/min, over the changeover flow: at full bore, as it should.
inline CaseRecord highFlowCase() {
    auto record = usCase(gpa(17), mph(13), nozzle(lpm(3.15)));
    record.machine.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    return record;
}

inline CallState reasoned(const CaseRecord& record) {
    return reason(record, Knowledge::shipped());
}

inline double probability(const CallState& state, std::string_view causeOrGroup) {
    double sum = 0;
    for (const auto& s : state.standing) {
        if (s.cause == causeOrGroup || s.group == causeOrGroup) sum += s.probability;
    }
    return sum;
}

}  // namespace bw::build
