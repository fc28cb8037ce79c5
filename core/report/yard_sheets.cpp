// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/yard_sheets.h"

#include <algorithm>
#include <map>

#include "core/diagnosis/knowledge.h"
#include "core/yard/yard_sum.h"

namespace bw {
namespace {

std::string dayOf(const YardRecord& record) {
    return (record.finished.empty() ? record.started : record.finished).substr(0, 10);
}

YardReadings readingsOf(const YardRecord& record) {
    auto sorted = record.readings;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const auto& a, const auto& b) { return a.run < b.run; });
    YardReadings out;
    for (const auto& reading : sorted) out[reading.id].numbers.push_back(reading.value);
    for (const auto& choice : record.choices) out[choice.id].choice = choice.word;
    return out;
}

/// What was read, "210 L, 205 L"; room to write where nothing was.
std::string readText(const YardReadingText& reading, const YardRecord& record,
                     const ReportContext& context) {
    std::string out;
    for (const auto& one : record.readings) {
        if (one.id != reading.id) continue;
        const auto text = one.typed.empty() ? format(one.value, context.style) : one.typed;
        out += (out.empty() ? "" : ", ") + text;
    }
    for (const auto& one : record.choices) {
        if (one.id != reading.id) continue;
        for (const auto& choice : reading.choices) {
            if (choice.id == one.word) out = choice.text;
        }
    }
    return out;
}

void addSum(Sheet& sheet, const YardCheckText& check, const YardRecord& record,
            const Machine& machine, const ReportContext& context) {
    const auto answer = yardSum(check.id, readingsOf(record), machine);
    if (!answer) return;
    sheet.add(SheetHeading{context.say("report.yard_sum")});
    for (const auto& fact : answer->shown.sum) sheet.add(SheetParagraph{context.say(fact)});
    for (const auto& problem : answer->shown.warnings)
        sheet.add(SheetParagraph{context.sentences.of(problem, context.style)});
}

}  // namespace

SheetCautions cautionsOnPaper(const std::vector<std::string>& ids) {
    SheetCautions out;
    const auto& all = Knowledge::shipped().cautions;
    for (const auto& id : ids) out.items.push_back({id, {}, all.at(id).text});
    return out;
}

Sheet checkSheet(const YardCheckText& check, const YardRecord& record, const Machine& machine,
                 const ReportContext& context) {
    Sheet sheet = sheetWithHead("report.yard_check", machine, machine.isDemo, context);
    sheet.fileName = check.title + ", " + machine.name;
    sheet.add(SheetBanner{check.title, machine.name, {}, dayOf(record)});
    sheet.add(SheetParagraph{check.purpose});
    sheet.add(cautionsOnPaper(check.cautions));
    sheet.add(SheetHeading{context.say("report.yard_do")});
    SheetList steps;
    int number = 0;
    for (const auto& step : check.steps)
        steps.items.push_back({std::to_string(++number) + ". " + step, {}, std::nullopt});
    sheet.add(steps);
    sheet.add(SheetHeading{context.say("report.yard_read")});
    for (const auto& reading : check.readings) {
        const std::string read = readText(reading, record, context);
        if (read.empty())
            sheet.add(
                SheetBlanks{reading.label + " (" + reading.hint + ")", reading.repeats ? 2 : 1});
        else
            sheet.add(SheetParagraph{reading.label + ": " + read});
    }
    addSum(sheet, check, record, machine, context);
    return sheet;
}

Sheet checklistSheet(const ChecklistPart& part, const YardRecord& record, const Machine& machine,
                     const ReportContext& context) {
    Sheet sheet = sheetWithHead("report.yard_checklist", machine, machine.isDemo, context);
    sheet.fileName = part.title + ", " + machine.name;
    sheet.add(SheetBanner{part.title, machine.name, {}, dayOf(record)});
    std::vector<std::string> cautions;
    SheetTicks ticks;
    const auto flush = [&] {
        if (!ticks.items.empty()) sheet.add(ticks);
        ticks.items.clear();
    };
    for (const auto& item : part.items) {
        // Items in a row that need the same cautions stand under one box of them.
        if (item.cautions != cautions) {
            flush();
            cautions = item.cautions;
            if (!cautions.empty()) sheet.add(cautionsOnPaper(cautions));
        }
        SheetTick tick{item.text, item.why, {}, true};
        for (const auto& noted : record.ticks) {
            if (noted.item != item.id) continue;
            tick.done = noted.date;
            if (!noted.note.empty()) tick.note = noted.note;
        }
        ticks.items.push_back(std::move(tick));
    }
    flush();
    sheet.add(SheetParagraph{context.say("report.yard_tick_means"), SheetText::Small});
    return sheet;
}

}  // namespace bw
