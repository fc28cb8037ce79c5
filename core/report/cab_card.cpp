// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "core/report/boom_height.h"
#include "core/report/cab_parts.h"
#include "core/report/plan_sheets.h"
#include "core/report/sheet_head.h"
#include "core/window/advice.h"

namespace bw {
namespace {

/// Of the values that the answer rests on: those that matter most.
constexpr std::size_t kMostRests = 3;
/// How far display and gauge may be off before the driver rings: judgement, no source.
constexpr double kRingOff = 0.1;

/// Builds the blocks of one card.
class Card {
  public:
    Card(const WindowModel& model, const ReportContext& context, Sheet& sheet)
        : m_model(model),
          m_context(context),
          m_sheet(sheet),
          m_window(model.window(context.style.units)),
          m_scale(windowScale(m_model, m_window, context)) {}

    void write() {
        addBanner();
        addFacts();
        addVerdict();
        m_sheet.add(m_scale);
        addByHand();
        m_sheet.add(SheetRule{});
        SheetSideBySide rest{{stopAndRing(), chart(), restsOnAndOpen()}};
        addTexts(rest, "report.height_title", boomHeightWords(machine(), nozzle(), m_context));
        addTexts(rest, "report.sections_title", {m_context.say(sectionFacts(m_model, m_window))});
        m_sheet.add(std::move(rest));
        m_sheet.add(windowCautionsOnPaper(m_model, m_context));
    }

  private:
    const Machine& machine() const { return m_model.machine(); }
    const Job& job() const { return m_model.job(); }
    const Nozzle& nozzle() const { return m_model.nozzle(); }
    std::string say(std::string_view code, std::vector<Argument> arguments = {}) const {
        return m_context.say(code, std::move(arguments));
    }

    void addBanner() {
        SheetBanner banner;
        banner.title = job().name;
        banner.subtitle = say(job().area ? "report.machine_line_area" : "report.machine_line",
                              {{"machine", machine().name},
                               {"nozzles", std::to_string(m_model.nozzles())},
                               {"area", anyQuantity(valueOr(job().area, Area{}))}});
        const auto& d = m_model.demand();
        banner.value = m_context.shown(d.rate);
        const std::string weight = formatFixed(d.specificGravity, 2, m_context.style.decimalMark);
        if (d.rateLeast < d.rateMost)
            banner.note = say("report.rate_note_range", {{"least", anyQuantity(d.rateLeast)},
                                                         {"most", anyQuantity(d.rateMost)},
                                                         {"weight", weight}});
        else
            banner.note = say("report.rate_note", {{"weight", weight}});
        m_sheet.add(std::move(banner));
    }

    SheetFact nozzleFact() const {
        SheetFact fact{say("report.nozzle_set"), nozzle().name, {}, {}};
        std::string where = say("report.not_aboard");
        for (const auto& set : machine().setsAboard) {
            if (set.nozzle == nozzle().name)
                where = say("report.position", {{"position", std::to_string(set.position)}});
        }
        if (!nozzle().sizeCode.empty()) fact.mark = SheetMark::nozzleSize(nozzle().sizeCode);
        const auto size = nozzleSize(nozzle().sizeCode);
        if (size)
            fact.note = say("report.size_colour",
                            {{"code", size->code}, {"colour", size->colour}, {"where", where}});
        else
            fact.note = where;
        return fact;
    }

    SheetFact dropsFact() const {
        SheetFact fact{say("report.drops_asked"), {}, say("report.as_entered"), {}};
        if (job().droplets.empty()) {
            fact.value = say("report.none_asked");
            fact.note.clear();
        } else {
            fact.mark = SheetMark::droplets(job().droplets);
        }
        if (job().driftPercent)
            fact.value =
                say("report.drift_asked", {{"percent", formatFixed(job().driftPercent->value, 0)}});
        return fact;
    }

    SheetFact controllerFact() const {
        SheetFact fact{say("report.controller"), {}, {}, {}};
        const auto floor = bare(machine().limits.pressureFloor);
        const auto ceiling = bare(machine().limits.pressureCeiling);
        const auto text = [&](const std::optional<Pressure>& p) {
            return p ? m_context.shown(*p) : say("report.not_given");
        };
        if (const auto set = bare(machine().pulsed.pressure)) {
            fact.value = say("report.set_pressure", {{"pressure", anyQuantity(*set)}});
        } else {
            fact.value = say("report.floor", {{"floor", text(floor)}});
            fact.note = say("report.ceiling", {{"ceiling", text(ceiling)}});
        }
        const auto advice = floorAdvice(m_model, m_window);
        if (advice && advice->asksForWork)
            fact.note += (fact.note.empty() ? "" : ". ") + m_context.say(advice->title);
        return fact;
    }

    std::optional<SheetFact> restrictorFact() const {
        const auto fitted = bare(machine().restrictor.fitted);
        if (fitted == false) return std::nullopt;
        SheetFact fact{say("report.restrictor"), say("report.not_known"), {}, {}};
        if (!fitted) return fact;
        const bool narrowed = m_model.position() == RestrictorPosition::Narrowed;
        fact.value = say(narrowed ? "report.narrowed" : "report.full_bore");
        const auto advice = restrictorAdvice(m_model, m_window);
        if (advice && advice->asksForWork) fact.note = m_context.say(advice->title);
        return fact;
    }

    void addFacts() {
        SheetFacts facts;
        facts.isLarge = true;
        facts.facts = {nozzleFact(), dropsFact(), controllerFact()};
        if (auto restrictor = restrictorFact()) facts.facts.push_back(std::move(*restrictor));
        m_sheet.add(std::move(facts));
        m_sheet.add(SheetRule{});
    }

    /// The scale says what holds; whatever does not is said first, in words.
    void addVerdict() {
        const Verdict verdict = verdictOf(m_model, m_window);
        if (verdict.standing == Standing::Covers) return;
        std::string title = m_context.say(verdict.title);
        const bool isPartly =
            verdict.standing == Standing::UsualOnly || verdict.standing == Standing::Neither;
        if (isPartly) title = say("report.not_all", {{"title", title}});
        m_sheet.add(SheetParagraph{std::move(title), SheetText::Lead});
        m_sheet.add(SheetParagraph{m_context.say(verdict.details), SheetText::Small});
    }

    bool hasBrackets() const {
        return std::any_of(m_scale.columns.begin(), m_scale.columns.end(), [](const auto& column) {
            return column.figures.size() > 1 && column.figures[1].starts_with("(");
        });
    }

    void addByHand() {
        const bool isPulsed = machine().pulsed.pressure.has_value();
        const bool senses = valueOr(machine().senses, Senses::Flow) != Senses::Nothing;
        if (isPulsed) {
            std::string text = say("report.pulsed_row");
            if (hasBrackets()) text += " " + say("report.brackets");
            return m_sheet.add(SheetParagraph{std::move(text), SheetText::Body});
        }
        const bool isUs = m_context.style.units == UnitSystem::Us;
        std::string text = say(senses ? "report.by_hand" : "report.by_hand_always") + " " +
                           say(isUs ? "report.by_hand_dose_acre" : "report.by_hand_dose_hectare");
        if (hasBrackets()) text += " " + say("report.brackets");
        m_sheet.add(SheetParagraph{std::move(text), SheetText::Body});
    }

    std::vector<SheetBlock> stopAndRing() const {
        SheetTicks ticks;
        const auto& d = m_model.demand();
        if (valueOr(machine().senses, Senses::Flow) != Senses::Nothing)
            ticks.items.push_back(
                {say("report.stop_rate", {{"low", anyQuantity(d.rateLeast * (1 - kRingOff))},
                                          {"high", anyQuantity(d.rateMost * (1 + kRingOff))}}),
                 {},
                 {},
                 false});
        const Pressure usual = m_model.at(d.usual).sensorPressure;
        const std::string difference =
            m_context.gauge(usual * kRingOff) + " " + m_context.unit<Pressure>();
        ticks.items.push_back(
            {say("report.stop_gauge", {{"difference", difference}}), {}, {}, false});
        const bool isStream = nozzle().kind && nozzle().kind->value == NozzleKind::Stream;
        ticks.items.push_back(
            {say(isStream ? "report.stop_stream" : "report.stop_fan"), {}, {}, false});
        return {{SheetHeading{say("report.stop_title")}}, {std::move(ticks)}};
    }

    /// A part of small texts under a heading; none if there are no words.
    void addTexts(SheetSideBySide& block, std::string_view title,
                  const std::vector<std::string>& texts) const {
        if (texts.empty() || texts.front().empty()) return;
        std::vector<SheetBlock> part{{SheetHeading{say(title)}}};
        for (const auto& text : texts) part.push_back({SheetParagraph{text, SheetText::Small}});
        block.parts.push_back(std::move(part));
    }

    std::vector<SheetBlock> chart() const {
        return {{SheetHeading{say("report.chart_title")}},
                {pressureChart(m_model, m_window, m_context)}};
    }

    std::vector<SheetBlock> restsOnAndOpen() const {
        return {{SheetHeading{say("report.rests_title")}},
                {restsOnList(m_model, m_context, kMostRests)},
                {SheetHeading{say("report.open_title")}},
                {uncheckedList(m_model, m_window, m_context)}};
    }

    const WindowModel& m_model;
    const ReportContext& m_context;
    Sheet& m_sheet;
    SpeedWindow m_window;
    SheetScale m_scale;
};

void writeRefusal(Sheet& sheet, const Machine& machine, const PlannedJob& planned,
                  const ReportContext& context) {
    sheet.add(SheetBanner{planned.job.name, machine.name, {}, {}});
    sheet.add(SheetParagraph{context.say("report.no_card"), SheetText::Lead});
    if (planned.problem)
        sheet.add(
            SheetParagraph{context.sentences.of(*planned.problem, context.style), SheetText::Body});
}

}  // namespace

Sheet cabCard(const WindowModel& model, const ReportContext& context) {
    const bool isDemo = model.machine().isDemo || model.job().isDemo || model.nozzle().isDemo;
    Sheet sheet = sheetWithHead("report.cab_card", model.machine(), isDemo, context);
    sheet.prefersLandscape = true;
    sheet.fileName = context.say("report.cab_card_file", {{"job", model.job().name}});
    sheet.fillsPages = true;
    Card(model, context, sheet).write();
    return sheet;
}

Sheet cabCards(const Machine& machine, const std::vector<PlannedJob>& jobs,
               const ReportContext& context) {
    Sheet sheet = sheetWithHead("report.cab_card", machine, machine.isDemo, context);
    sheet.prefersLandscape = true;
    sheet.fileName = context.say("report.cab_cards_file", {{"machine", machine.name}});
    sheet.fillsPages = true;
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        if (i > 0) sheet.add(SheetPageBreak{});
        if (jobs[i].model)
            Card(*jobs[i].model, context, sheet).write();
        else
            writeRefusal(sheet, machine, jobs[i], context);
    }
    if (jobs.empty()) sheet.add(SheetParagraph{context.say("report.no_jobs"), SheetText::Lead});
    return sheet;
}

}  // namespace bw
