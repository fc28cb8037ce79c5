// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "core/report/cab_parts.h"
#include "core/report/plan_sheets.h"
#include "core/report/sheet_head.h"

namespace bw {

std::string standingWord(Standing standing, const ReportContext& context) {
    return context.say("report.standing_" + std::string(choiceName(standing)));
}

namespace {

std::string letters(const std::vector<DropletCategory>& droplets, const ReportContext& context) {
    Fact fact{"report.drops_list", {}};
    for (const auto category : droplets)
        fact.arguments.push_back({"drops", std::string(choiceName(category))});
    return droplets.empty() ? "–" : context.say(fact);
}

std::string positionOf(const Machine& machine, const Nozzle& nozzle) {
    for (const auto& set : machine.setsAboard) {
        if (set.nozzle == nozzle.name) return std::to_string(set.position);
    }
    return "–";
}

std::string windowText(const SpeedWindow& w, const ReportContext& context) {
    const bool isEmpty = w.allRates ? w.allRates->empty : w.empty;
    if (isEmpty) return "–";
    const auto& low = w.allRates ? w.allRates->low : w.low;
    const auto& high = w.allRates ? w.allRates->high : w.high;
    const bool hasLow = low.speed && low.speed->si() > 0;
    return (hasLow ? context.figure(*low.speed) : "…") + "–" +
           (high.speed ? context.figure(*high.speed) : "…");
}

SheetRow overviewRow(const Machine& machine, const PlannedJob& planned,
                     const ReportContext& context) {
    if (!planned.model) {
        const std::string why = planned.problem
                                    ? context.sentences.of(*planned.problem, context.style)
                                    : context.say("report.no_card");
        return {{planned.job.name, "–", "–", "–", "–", "–", "–", "–", "–", why}, true};
    }
    const WindowModel& model = *planned.model;
    const SpeedWindow w = model.window(context.style.units);
    const auto& d = model.demand();
    const Standing standing = standingOf(w, model.nozzle());
    const auto pressure = [&](Speed speed) {
        return context.gauge(model.neededSensorPressure(speed));
    };
    std::string name = model.nozzle().name;
    if (const auto size = nozzleSize(model.nozzle().sizeCode))
        name = context.say("report.set_size",
                           {{"nozzle", name}, {"code", size->code}, {"colour", size->colour}});
    std::string valve = "–";
    if (bare(machine.restrictor.fitted) == true)
        valve = context.say(model.position() == RestrictorPosition::Narrowed ? "report.narrowed"
                                                                             : "report.full_bore");
    std::string stands = standingWord(standing, context);
    const auto gaps = nozzleGaps(w);
    if (!gaps.empty()) {
        Fact open{"report.open_short", {}};
        for (const Limit limit : gaps) open.arguments.push_back({"limits", limitWord(limit)});
        stands += "; " + context.say(open);
    }
    return {
        {planned.job.name, context.figure(d.rate), name, positionOf(machine, model.nozzle()),
         letters(planned.job.droplets, context),
         context.figure(d.slow) + " · " + context.figure(d.usual) + " · " + context.figure(d.fast),
         windowText(w, context),
         pressure(d.slow) + " · " + pressure(d.usual) + " · " + pressure(d.fast), valve, stands},
        standing != Standing::Covers};
}

}  // namespace

Sheet machineOverview(const Machine& machine, const std::vector<PlannedJob>& jobs,
                      const ReportContext& context) {
    Sheet sheet = sheetWithHead("report.overview", machine, machine.isDemo, context);
    sheet.prefersLandscape = true;
    sheet.fileName = context.say("report.overview_file", {{"machine", machine.name}});
    const auto limit = [&](const Known<Pressure>& p) {
        return p ? context.shown(p->value) : context.say("report.not_given");
    };
    sheet.add(SheetBanner{
        machine.name, context.say("report.overview_subtitle"),
        context.say("report.job_count", {{"jobs", std::to_string(jobs.size())}}),
        context.say("report.floor_ceiling", {{"floor", limit(machine.limits.pressureFloor)},
                                             {"ceiling", limit(machine.limits.pressureCeiling)}})});
    SheetTable table;
    const auto title = [&](const char* code, std::string unit = {}) {
        return context.say(code, {{"unit", std::move(unit)}});
    };
    const std::string speed = context.unit<Speed>();
    table.columns = {{title("report.col_job"), false, 1.5},
                     {title("report.col_rate", context.unit<AreaRate>()), true, 1},
                     {title("report.col_set"), false, 1.6},
                     {title("report.col_position"), true, 1},
                     {title("report.col_drops"), false, 0.6},
                     {title("report.col_plan", speed), true, 1},
                     {title("report.col_window", speed), true, 1},
                     {title("report.col_pressure", context.unit<Pressure>()), true, 1},
                     {title("report.col_valve"), false, 0.8},
                     {title("report.col_stands"), false, 1.4}};
    for (const auto& job : jobs) table.rows.push_back(overviewRow(machine, job, context));
    if (jobs.empty())
        sheet.add(SheetParagraph{context.say("report.no_jobs"), SheetText::Lead});
    else
        sheet.add(std::move(table));
    sheet.add(SheetParagraph{context.say("report.overview_notes"), SheetText::Small});
    SheetCautions box;
    for (const auto& planned : jobs) {
        if (!planned.model) continue;
        for (auto& item : windowCautionsOnPaper(*planned.model, context).items) {
            const bool isThere =
                std::any_of(box.items.begin(), box.items.end(),
                            [&](const auto& known) { return known.id == item.id; });
            if (!isThere) box.items.push_back(std::move(item));
        }
    }
    if (!box.items.empty()) sheet.add(std::move(box));
    return sheet;
}

}  // namespace bw
