// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet of a catch test.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/report/yard_sheets.h"
#include "core/yard/catch_picture.h"
#include "core/yard/catch_record.h"

namespace bw {
namespace {

/// % beyond which a bar runs out of the picture.
constexpr double kMost = 40.0;

/// A catch test with what it says so far.
struct Found {
    const CatchTest& test;
    CatchSummary summary;
    CatchPicture picture;
};

double off(double part) {
    return std::clamp((part - 1) * 100, -kMost, kMost);
}

std::string offText(double part, const ReportContext& context) {
    const double percent = (part - 1) * 100;
    return (percent < 0 ? "\u2212" : "+") +
           formatFixed(std::abs(percent), 1, context.style.decimalMark) + " %";
}

std::string percentText(double part, const ReportContext& context) {
    return formatFixed(part * 100, 1, context.style.decimalMark);
}

Unit jug(const ReportContext& context) {
    return context.style.units == UnitSystem::Us ? Unit::FluidOunceUs : Unit::Millilitre;
}

std::string deed(CatchVerdict verdict, const ReportContext& context) {
    switch (verdict) {
        case CatchVerdict::Good:
            return context.say("report.catch_good");
        case CatchVerdict::CleanAndCatchAgain:
            return context.say("report.catch_clean");
        case CatchVerdict::Replace:
            return context.say("report.catch_replace");
    }
    return {};
}

std::string headline(const CatchSummary& summary, const ReportContext& context) {
    if (summary.replaceSet) return context.say("report.catch_set");
    const auto count = [&](CatchVerdict verdict) {
        return static_cast<double>(
            std::count_if(summary.nozzles.begin(), summary.nozzles.end(),
                          [&](const CaughtNozzle& n) { return n.verdict == verdict; }));
    };
    const double high = count(CatchVerdict::Replace);
    const double low = count(CatchVerdict::CleanAndCatchAgain);
    if (high + low == 0) return context.say("report.catch_all_good");
    return context.say("report.catch_off",
                       {{"high", anyQuantity(high)}, {"low", anyQuantity(low)}});
}

SheetFacts setUpFacts(const CatchTest& test, const ReportContext& context) {
    SheetFacts out;
    if (!test.set.empty()) out.facts.push_back({context.say("report.catch_of"), test.set, {}, {}});
    if (test.pressure)
        out.facts.push_back(
            {context.say("report.catch_pressure"), context.shown(test.pressure->value), {}, {}});
    if (test.newFlow)
        out.facts.push_back({context.say("report.catch_new"),
                             context.shown(test.newFlow->value),
                             format(anyQuantity(test.newFlow->value * test.time), jug(context),
                                    context.style.decimalMark),
                             {}});
    if (test.time.si() > 0)
        out.facts.push_back({context.say("report.catch_time"), context.shown(test.time), {}, {}});
    return out;
}

SheetFacts foundFacts(const Found& found, const ReportContext& context) {
    SheetFacts out;
    const CatchSummary& s = found.summary;
    out.facts.push_back({context.say("report.catch_mean"),
                         context.shown(s.mean.value),
                         s.meanOfNew ? context.say("report.catch_against_new",
                                                   {{"off", offText(*s.meanOfNew, context)}})
                                     : std::string(),
                         {}});
    if (s.cv)
        out.facts.push_back(
            {context.say("report.catch_cv"), percentText(*s.cv, context) + " %", {}, {}});
    out.isLarge = true;
    return out;
}

SheetBarChart barsOf(const Found& found, const ReportContext& context) {
    SheetBarChart out;
    out.axis =
        context.say(found.picture.isOfNew ? "report.catch_axis_new" : "report.catch_axis_mean");
    double low = std::min(-10.0, off(found.picture.low) - 2);
    double high = std::max(10.0, off(found.picture.high) + 2);
    const int count = std::accumulate(found.test.sections.begin(), found.test.sections.end(), 0);
    out.bars.resize(static_cast<std::size_t>(std::max(0, count)));
    for (std::size_t i = 0; i < found.summary.nozzles.size(); ++i) {
        const CaughtNozzle& n = found.summary.nozzles[i];
        const double value = off(found.picture.nozzles[i]);
        low = std::min(low, value - 2);
        high = std::max(high, value + 2);
        if (n.nozzle < 1 || n.nozzle > count) continue;
        SheetBar& bar = out.bars[static_cast<std::size_t>(n.nozzle - 1)];
        bar.value = value;
        bar.isOff = n.verdict != CatchVerdict::Good;
        if (bar.isOff) bar.letter = n.verdict == CatchVerdict::Replace ? "R" : "C";
    }
    for (std::size_t i = 0; i < out.bars.size(); ++i) {
        const bool isNamed = i == 0 || (i + 1) % 10 == 0 || out.bars[i].isOff;
        if (isNamed) out.bars[i].label = std::to_string(i + 1);
    }
    out.from = std::floor(low / 5) * 5;
    out.to = std::ceil(high / 5) * 5;
    for (double tick = out.from; tick <= out.to; tick += 5) {
        out.ticks.push_back(tick);
        out.tickTexts.push_back(formatFixed(tick, 0, context.style.decimalMark));
    }
    out.limits = {{off(found.picture.high), context.say("report.catch_replace")},
                  {off(found.picture.low), context.say("report.catch_clean_short")}};
    int number = 0;
    for (const int nozzles : found.test.sections)
        out.groups.push_back({std::to_string(++number), nozzles});
    return out;
}

SheetTable tableHead(const ReportContext& context) {
    SheetTable out;
    const std::string jugSymbol(info(jug(context)).symbol);
    out.columns = {{context.say("report.catch_nozzle"), true},
                   {context.say("report.catch_caught") + ", " + jugSymbol, true},
                   {context.say("report.catch_flow") + ", " + context.unit<Flow>(), true},
                   {context.say("report.catch_of_new") + ", %", true},
                   {context.say("report.catch_of_mean") + ", %", true},
                   {context.say("report.catch_deed"), false}};
    return out;
}

std::string caughtText(const CatchTest& test, int nozzle, const ReportContext& context) {
    std::string first, again;
    for (const auto& one : test.catches) {
        if (one.nozzle != nozzle) continue;
        (one.isAgain ? again : first) =
            formatNumber(in(one.volume, jug(context)), jug(context), context.style.decimalMark);
    }
    if (first.empty() || again.empty()) return first + again;
    return first + " / " + again;
}

/// The nozzles off the limits, with what to do.
SheetTable offTable(const Found& found, const ReportContext& context) {
    SheetTable out = tableHead(context);
    for (const auto& n : found.summary.nozzles) {
        if (n.verdict == CatchVerdict::Good) continue;
        out.rows.push_back({{std::to_string(n.nozzle), caughtText(found.test, n.nozzle, context),
                             context.figure(n.flow.value),
                             n.ofNew ? percentText(*n.ofNew, context) : std::string("–"),
                             percentText(n.ofMean, context), deed(n.verdict, context)},
                            true});
    }
    return out;
}

/// Short rows side by side, read down each column, so that a whole boom stands on one page.
SheetTable sideBySide(const std::vector<SheetColumn>& columns,
                      const std::vector<std::vector<std::string>>& rows, std::size_t across) {
    SheetTable out;
    for (std::size_t k = 0; k < across; ++k)
        out.columns.insert(out.columns.end(), columns.begin(), columns.end());
    const std::size_t down = (rows.size() + across - 1) / across;
    for (std::size_t r = 0; r < down; ++r) {
        SheetRow row;
        for (std::size_t k = 0; k < across; ++k) {
            const std::size_t at = k * down + r;
            const std::vector<std::string> none(columns.size());
            const auto& cells = at < rows.size() ? rows[at] : none;
            row.cells.insert(row.cells.end(), cells.begin(), cells.end());
        }
        out.rows.push_back(std::move(row));
    }
    return out;
}

/// Every nozzle caught: number, jug, how far off; R and C as in the picture.
SheetTable everyTable(const Found& found, const ReportContext& context) {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 0; i < found.summary.nozzles.size(); ++i) {
        const CaughtNozzle& n = found.summary.nozzles[i];
        std::string off = offText(found.picture.nozzles[i], context);
        if (n.verdict != CatchVerdict::Good)
            off += n.verdict == CatchVerdict::Replace ? " R" : " C";
        rows.push_back(
            {std::to_string(n.nozzle), caughtText(found.test, n.nozzle, context), std::move(off)});
    }
    const auto head = tableHead(context).columns;
    return sideBySide(
        {head[0],
         head[1],
         {context.say(found.picture.isOfNew ? "report.catch_off_new" : "report.catch_off_mean"),
          true}},
        rows, 4);
}

/// To fill in by hand: what was caught, and after cleaning.
SheetTable blankTable(const CatchTest& test, const ReportContext& context) {
    std::vector<std::vector<std::string>> rows;
    for (const int nozzle : nozzlesToCatch(test)) rows.push_back({std::to_string(nozzle), {}, {}});
    const auto head = tableHead(context).columns;
    return sideBySide({head[0], head[1], {context.say("report.catch_again"), true}}, rows, 3);
}

std::string ruleText(const CatchTest& test, const ReportContext& context) {
    return context.say("report.catch_rule", {{"mean", anyQuantity(test.limitOfMean * 100)},
                                             {"new", anyQuantity(test.limitOfNew * 100)}});
}

}  // namespace

Sheet catchSheet(const YardRecord& record, const Machine& machine, const ReportContext& context) {
    const CatchTest& test = record.catchTest;
    Sheet sheet =
        sheetWithHead("report.catch_title", machine, machine.isDemo || record.isDemo, context);
    sheet.fileName = sheet.title + ", " + machine.name;
    sheet.fillsPages = true;
    const auto summary = summaryOf(test);
    const std::string day =
        (record.finished.empty() ? record.started : record.finished).substr(0, 10);
    sheet.add(
        SheetBanner{summary ? headline(*summary, context) : sheet.title, machine.name, {}, day});
    sheet.add(cautionsOnPaper(yardCheck("Y7")->cautions));
    sheet.add(setUpFacts(test, context));
    if (!summary) {
        sheet.add(SheetParagraph{ruleText(test, context)});
        sheet.add(blankTable(test, context));
        return sheet;
    }
    const std::optional<Flow> fresh =
        test.newFlow ? std::optional(test.newFlow->value) : std::nullopt;
    const Found found{test, *summary,
                      catchPicture(*summary, fresh, {test.limitOfMean, test.limitOfNew})};
    sheet.add(foundFacts(found, context));
    sheet.add(barsOf(found, context));
    sheet.add(SheetParagraph{ruleText(test, context)});
    for (const auto& problem : summary->warnings)
        sheet.add(SheetParagraph{context.sentences.of(problem, context.style)});
    const SheetTable offOnes = offTable(found, context);
    if (!offOnes.rows.empty()) sheet.add(offOnes);
    sheet.add(SheetHeading{context.say("report.catch_every")});
    sheet.add(everyTable(found, context));
    return sheet;
}

}  // namespace bw
