// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "core/model/checks.h"
#include "core/model/field_checks.h"
#include "core/model/nozzle_sizes.h"

namespace bw {
namespace {

void checkTable(ProblemList& list, const Nozzle& n) {
    const auto& rows = n.table->value;
    list.addIf(n.exponent.has_value(), error("nozzle_table_and_exponent", "exponent"));
    if (rows.size() < 2) {
        list.add(error("nozzle_table_too_short", "table"));
        return;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool isPositive = rows[i].pressure.si() > 0 && rows[i].flow.si() > 0 &&
                                rows[i].pressure.isFinite() && rows[i].flow.isFinite();
        const bool isRising =
            i == 0 || (rows[i].pressure > rows[i - 1].pressure && rows[i].flow > rows[i - 1].flow);
        list.addIf(!isPositive || !isRising,
                   error("nozzle_table_not_rising", "table", {{"row", std::to_string(i + 1)}}));
    }
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
