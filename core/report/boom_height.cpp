// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/boom_height.h"

#include <cassert>
#include <cmath>

#include "core/base/csv_text.h"
#include "core/base/resource.h"
#include "core/units/parse.h"
#include "core/yard/spray_height.h"

namespace bw {
namespace {

constexpr double kFull = 1.0, kThird = 0.3;
/// An angle this near to a published one (degrees) is taken as the same nominal angle.
constexpr double kSameAngle = 2.5;

Length lengthIn(std::string_view number, std::string_view unit) {
    const auto read =
        parse<Length>(number, unitFor(unit).value_or(Unit::Metre), DecimalMarks::PointOnly);
    assert(read.isOk());
    return read.isOk() ? read.value() : Length{};
}

std::vector<PublishedHeight> readHeights() {
    const CsvTable csv = parseCsv(resource("data/boom_heights.csv"));
    std::vector<PublishedHeight> out;
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        const auto unit = csv.at(row, "unit");
        out.push_back({std::stod(std::string(csv.at(row, "fan_degrees"))),
                       lengthIn(csv.at(row, "from"), unit), lengthIn(csv.at(row, "to"), unit),
                       std::string(csv.at(row, "source"))});
    }
    return out;
}

/// In whole centimetres or inches: no boom is set finer.
Unit heightUnit(const ReportContext& context) {
    return context.style.units == UnitSystem::Us ? Unit::Inch : Unit::Centimetre;
}
std::string heightFigure(Length height, const ReportContext& context) {
    return formatFixed(std::round(in(height, heightUnit(context))), 0);
}
std::string heightText(Length height, const ReportContext& context) {
    return heightFigure(height, context) + " " + std::string(info(heightUnit(context)).symbol);
}

}  // namespace

const std::vector<PublishedHeight>& publishedHeights() {
    static const std::vector<PublishedHeight> heights = readHeights();
    return heights;
}

std::vector<std::string> boomHeightWords(const Machine& machine, const Nozzle& nozzle,
                                         const ReportContext& context) {
    if (nozzle.kind && nozzle.kind->value != NozzleKind::Fan) return {};
    if (!nozzle.sprayAngle || !machine.spacing || !(nozzle.sprayAngle->value > 0) ||
        !(nozzle.sprayAngle->value < 180))
        return {context.say("report.height_unknown")};
    const double angle = nozzle.sprayAngle->value;
    const Argument degrees{"angle", formatFixed(angle, 0)};
    const auto height = [&](double overlap) {
        return heightText(heightForOverlap(angle, machine.spacing->value, overlap), context);
    };
    std::vector<std::string> out{
        context.say("report.height_geometry", {degrees,
                                               {"spacing", anyQuantity(machine.spacing->value)},
                                               {"third", height(kThird)},
                                               {"full", height(kFull)}})};
    for (const auto& published : publishedHeights()) {
        if (std::abs(published.fanDegrees - angle) > kSameAngle) continue;
        const std::string from = heightFigure(published.from, context);
        const std::string to = heightFigure(published.to, context);
        out.push_back(
            context.say(from == to ? "report.height_published_one" : "report.height_published",
                        {{"angle", formatFixed(published.fanDegrees, 0)},
                         {"from", from},
                         {"to", to},
                         {"unit", std::string(info(heightUnit(context)).symbol)},
                         {"source", published.source}}));
    }
    return out;
}

}  // namespace bw
