// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/nozzle_sizes.h"

#include <algorithm>
#include <cassert>

#include "core/base/csv_text.h"
#include "core/base/resource.h"
#include "core/units/parse.h"

namespace bw {
namespace {

constexpr std::string_view kMetricColumn = "lmin_at_300kPa";
constexpr std::string_view kUsColumn = "usgpm_at_40psi";

CsvTable table() {
    return parseCsv(resource("data/nozzle_sizes.csv"));
}

Flow flowIn(std::string_view number, Unit unit) {
    const auto read = parse<Flow>(number, unit, DecimalMarks::PointOnly);
    assert(read.isOk());
    return read.isOk() ? read.value() : Flow{};
}

std::vector<NozzleSize> readSizes() {
    const CsvTable csv = table();
    std::vector<NozzleSize> out;
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        out.push_back({std::string(csv.at(row, "code")), std::string(csv.at(row, "colour")),
                       flowIn(csv.at(row, kMetricColumn), Unit::LitrePerMinute),
                       flowIn(csv.at(row, kUsColumn), Unit::GallonUsPerMinute),
                       std::string(csv.at(row, "source"))});
    }
    return out;
}

/// One of the two records; `flowText` and `atText` are the figures as the standard prints them.
Nozzle record(const NozzleSize& size, std::string_view system, Flow flow, std::string flowText,
              Pressure at, std::string atText) {
    Nozzle nozzle;
    nozzle.name = "Size " + size.code + " (" + std::string(system) + " record)";
    nozzle.family = "ISO 10625";
    nozzle.sizeCode = size.code;
    nozzle.flow = Sourced<Flow>(flow, Origin::Handbook);
    nozzle.flow->typed = std::move(flowText);
    nozzle.at = Sourced<Pressure>(at, Origin::Handbook);
    nozzle.at->typed = std::move(atText);
    nozzle.isBuiltIn = true;
    nozzle.notes = size.source;
    return nozzle;
}

std::vector<Nozzle> makeBuiltIn() {
    const CsvTable csv = table();
    std::vector<Nozzle> out;
    for (std::size_t row = 0; row < nozzleSizes().size(); ++row) {
        const NozzleSize& size = nozzleSizes()[row];
        out.push_back(record(size, "metric", size.metric,
                             std::string(csv.at(row, kMetricColumn)) + " L/min", metricRating(),
                             "3 bar"));
        out.push_back(record(size, "US", size.us, std::string(csv.at(row, kUsColumn)) + " gal/min",
                             usRating(), "40 psi"));
    }
    return out;
}

}  // namespace

Pressure metricRating() {
    return make<Pressure>(3.0, Unit::Bar);
}
Pressure usRating() {
    return make<Pressure>(40.0, Unit::Psi);
}

const std::vector<NozzleSize>& nozzleSizes() {
    static const std::vector<NozzleSize> sizes = readSizes();
    return sizes;
}

std::optional<NozzleSize> nozzleSize(std::string_view code) {
    const auto& sizes = nozzleSizes();
    const auto found =
        std::find_if(sizes.begin(), sizes.end(), [&](const auto& s) { return s.code == code; });
    if (found == sizes.end()) return std::nullopt;
    return *found;
}

const std::vector<Nozzle>& builtInNozzles() {
    static const std::vector<Nozzle> nozzles = makeBuiltIn();
    return nozzles;
}

}  // namespace bw
