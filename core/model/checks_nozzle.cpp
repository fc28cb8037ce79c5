// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <utility>

#include "core/model/checks.h"
#include "core/model/field_checks.h"
#include "core/model/nozzle_sizes.h"

namespace bw {
namespace {

bool isPositive(const FlowPoint& row) {
    return row.pressure.si() > 0 && row.flow.si() > 0 && row.pressure.isFinite() &&
           row.flow.isFinite();
}

/// Rows of one pressure, their flows as a geometric mean: that of the fit.
struct TableStep {
    Pressure pressure;
    double sumOfLogs = 0.0;
    int rows = 0;

    void add(Flow flow) {
        sumOfLogs += std::log(flow.si());
        ++rows;
    }
    Flow mean() const { return Flow::fromSi(std::exp(sumOfLogs / rows)); }
};

void checkTable(ProblemList& list, const Nozzle& n) {
    list.addIf(n.exponent.has_value(), error("nozzle_table_and_exponent", "exponent"));
    for (auto& problem : checkFlowTable(n.table->value)) list.add(std::move(problem));
}

void checkFlow(ProblemList& list, const Nozzle& n) {
    if (n.table) {
        checkTable(list, n);
        return;
    }
    list.addIf(!n.flow, error("nozzle_flow_missing", "flow"));
    list.addIf(!n.at, error("nozzle_at_missing", "at"));
}

/// A size code promises a flow at 3 bar or 40 psi; the usual tolerance of a new set is under 10 %.
void checkSize(ProblemList& list, const Nozzle& n) {
    if (n.sizeCode.empty()) return;
    const auto size = nozzleSize(n.sizeCode);
    if (!size) {
        list.add(warning("nozzle_size_unknown", "size_code", {{"code", n.sizeCode}}));
        return;
    }
    if (!n.flow || !n.at) return;
    const auto isAt = [&](Pressure rating) { return std::abs(n.at->value / rating - 1) < 0.01; };
    const Flow nominal = isAt(metricRating()) ? size->metric : isAt(usRating()) ? size->us : Flow{};
    if (nominal.si() > 0 && std::abs(n.flow->value / nominal - 1) > 0.1) {
        list.add(warning("nozzle_flow_not_of_size", "flow",
                         {{"code", n.sizeCode},
                          {"flow", anyQuantity(n.flow->value)},
                          {"nominal", anyQuantity(nominal)},
                          {"at", anyQuantity(n.at->value)}}));
    }
}

template <class Band>
std::vector<Argument> bandArguments(const std::vector<Band>& bands, std::size_t i) {
    std::vector<Argument> arguments{{"row", std::to_string(i + 1)},
                                    {"from", anyQuantity(bands[i].from)},
                                    {"to", anyQuantity(bands[i].to)}};
    if (i > 0) {
        arguments.push_back({"before_from", anyQuantity(bands[i - 1].from)});
        arguments.push_back({"before_to", anyQuantity(bands[i - 1].to)});
    }
    return arguments;
}

/// Bands run upwards and do not overlap; gaps between them are allowed and count as unlisted.
template <class Band>
void checkBands(ProblemList& list, const char* where, const std::vector<Band>& bands) {
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const auto arguments = bandArguments(bands, i);
        const bool isBand =
            bands[i].from.si() >= 0 && bands[i].from < bands[i].to && bands[i].to.isFinite();
        list.addIf(!isBand, error("band_not_rising", where, arguments));
        if (i == 0 || !isBand) continue;
        if (bands[i].to <= bands[i - 1].from) {
            list.add(error("bands_out_of_order", where, arguments));
        } else {
            list.addIf(bands[i].from < bands[i - 1].to, error("bands_overlap", where, arguments));
        }
    }
}

void checkDroplets(ProblemList& list, const std::vector<DropletBand>& bands) {
    checkBands(list, "droplets", bands);
    for (std::size_t i = 1; i < bands.size(); ++i) {
        if (bands[i].from < bands[i - 1].to || bands[i].category <= bands[i - 1].category) continue;
        auto arguments = bandArguments(bands, i);
        arguments.push_back({"category", std::string(choiceName(bands[i].category))});
        arguments.push_back({"before", std::string(choiceName(bands[i - 1].category))});
        list.add(warning("droplets_coarser_with_pressure", "droplets", std::move(arguments)));
    }
}

void checkDrift(ProblemList& list, const std::vector<DriftBand>& bands) {
    checkBands(list, "drift", bands);
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const double percent = bands[i].percent;
        auto arguments = bandArguments(bands, i);
        arguments.push_back({"percent", anyQuantity(percent)});
        list.addIf(!(percent >= 0 && percent <= 100),
                   error("drift_percent_not_possible", "drift", arguments));
        const bool isRising =
            i > 0 && bands[i].from >= bands[i - 1].to && percent > bands[i - 1].percent;
        list.addIf(isRising, warning("drift_rising_with_pressure", "drift", arguments));
    }
}

void checkRange(ProblemList& list, const Nozzle& n) {
    if (!n.pressureMin || !n.pressureMax || n.pressureMin->value < n.pressureMax->value) return;
    list.add(error("nozzle_range_crossed", "pressure_min",
                   {{"least", anyQuantity(n.pressureMin->value)},
                    {"most", anyQuantity(n.pressureMax->value)}}));
}

}  // namespace

std::vector<Problem> checkFlowTable(const std::vector<FlowPoint>& rows) {
    ProblemList list;
    std::vector<TableStep> steps;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto& row = rows[i];
        bool isRising = isPositive(row);
        if (isRising && (steps.empty() || row.pressure != steps.back().pressure)) {
            if (!steps.empty())
                isRising = row.pressure > steps.back().pressure && row.flow > steps.back().mean();
            if (isRising) steps.push_back({row.pressure});
        } else if (isRising && steps.size() > 1) {
            isRising = row.flow > steps[steps.size() - 2].mean();
        }
        if (isRising)
            steps.back().add(row.flow);
        else
            list.add(error("nozzle_table_not_rising", "table", {{"row", std::to_string(i + 1)}}));
    }
    auto problems = list.take();
    if (problems.empty() && steps.size() < 2)
        problems.push_back(error("nozzle_table_too_short", "table"));
    return problems;
}

std::vector<Problem> checkNozzle(const Nozzle& nozzle) {
    ProblemList list;
    list.addIf(nozzle.name.find_first_not_of(" \t") == std::string::npos,
               warning("name_missing", "name"));
    visitFields(nozzle, [&](std::string_view key, const auto& field) {
        checkField(list, "nozzle", key, field);
    });
    checkFlow(list, nozzle);
    checkSize(list, nozzle);
    checkRange(list, nozzle);
    if (nozzle.droplets) checkDroplets(list, nozzle.droplets->value);
    if (nozzle.drift) checkDrift(list, nozzle.drift->value);
    return list.take();
}

}  // namespace bw
