// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/yard_words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/model/curve_text.h"
#include "core/model/machine_fields.h"
#include "ui/kit/cautions.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("YardWords", text);
}

QString textOr(const FarmSession& session, const std::string& code, const QString& other) {
    return session.sentences().has(code) ? qs(session.sentences().text(code)) : other;
}

QString choiceWords(const FarmSession& session, const std::string& key, const std::string& choice) {
    return textOr(session, "machine.choice." + key + '.' + choice, qs(choice));
}

QString choicesWords(const FarmSession& session, const std::string& key,
                     const std::vector<std::string>& choices) {
    QStringList all;
    for (const auto& choice : choices) all.append(choiceWords(session, key, choice));
    return all.join(words(" or "));
}

QString small(const QString& text) {
    return text.left(1).toLower() + text.mid(1);
}

/// A field's value for a reader; "not known" if there is none.
QString valueWords(const FarmSession& session, const Machine& machine, const std::string& key,
                   const NumberStyle& style) {
    const auto view = fieldView(machine, key);
    if (!view || !view->isKnown) return words("not known");
    if (view->kind == FieldKind::Choice) return choiceWords(session, key, view->choice);
    if (view->kind == FieldKind::Curve) {
        QString text = qs(curveText(machine.pump.curve->value, style));
        return text + u" ("_s + unitOf<Flow>(style) + u", "_s + unitOf<Pressure>(style) + u')';
    }
    if (key == "meter.scale") return plainNumber(view->value.si, 3, style);
    return shown(view->value, style);
}

const std::map<std::string, const char*, std::less<>>& cautionLeads() {
    static const std::map<std::string, const char*, std::less<>> leads{
        {"C2", QT_TRANSLATE_NOOP("YardWords", "Parts:")},
        {"C3", QT_TRANSLATE_NOOP("YardWords", "Tank:")},
        {"C4", QT_TRANSLATE_NOOP("YardWords", "Boom:")},
        {"C5", QT_TRANSLATE_NOOP("YardWords", "Above:")},
        {"C6", QT_TRANSLATE_NOOP("YardWords", "People:")},
        {"C7", QT_TRANSLATE_NOOP("YardWords", "Readings:")},
        {"C8", QT_TRANSLATE_NOOP("YardWords", "Pressure:")},
        {"C9", QT_TRANSLATE_NOOP("YardWords", "Pump:")},
        {"C10", QT_TRANSLATE_NOOP("YardWords", "Relief valve:")},
        {"C11", QT_TRANSLATE_NOOP("YardWords", "Lid:")},
        {"C12", QT_TRANSLATE_NOOP("YardWords", "Guards:")},
        {"C13", QT_TRANSLATE_NOOP("YardWords", "Oil:")},
        {"C14", QT_TRANSLATE_NOOP("YardWords", "Wiring:")},
        {"C15", QT_TRANSLATE_NOOP("YardWords", "Cleaning:")},
        {"C22", QT_TRANSLATE_NOOP("YardWords", "Water:")},
        {"C23", QT_TRANSLATE_NOOP("YardWords", "Simulated speed:")},
        {"C24", QT_TRANSLATE_NOOP("YardWords", "Settings:")},
        {"C25", QT_TRANSLATE_NOOP("YardWords", "Heavy liquid:")},
        {"C29", QT_TRANSLATE_NOOP("YardWords", "Agitation:")}};
    return leads;
}

}  // namespace

Unit jugUnit(UnitSystem units) {
    return units == UnitSystem::Us ? Unit::FluidOunceUs : Unit::Millilitre;
}

Unit unitOfReading(const YardReadingText& reading, UnitSystem units) {
    if (reading.id == "caught") return jugUnit(units);
    return displayUnit(units, reading.dimension);
}

QStringList ledCautions(const std::vector<std::string>& ids) {
    QStringList texts;
    for (const auto& id : ids) {
        const auto lead = cautionLeads().find(id);
        const bool hasLead = lead != cautionLeads().end();
        texts.append(cautionText(qs(id), hasLead ? words(lead->second) : QString()));
    }
    return texts;
}

QString firmsUpWords(const FarmSession& session, const std::string& check) {
    return textOr(session, "yard_page.firms." + check, {});
}

QString whyNotHere(const FarmSession& session, const YardCheckText& check, const Machine& machine) {
    for (const auto& condition : check.when) {
        if (condition.holds(machine)) continue;
        const QString label = small(fieldWords(session, condition.key));
        const QString here = valueWords(session, machine, condition.key, session.styleOf(machine));
        if (!condition.is.empty())
            return words("Only where %1 is %2; here: %3.")
                .arg(label, choicesWords(session, condition.key, condition.is), here);
        return words("Not where %1 is %2.").arg(label, here);
    }
    return {};
}

QString placeWords(CheckPlace place) {
    switch (place) {
        case CheckPlace::CabParked:
            return words("from the cab, parked");
        case CheckPlace::CabWorking:
            return words("driving");
        case CheckPlace::OnFootOnWater:
            return words("on foot, on clean water");
        case CheckPlace::LineOpened:
            return words("a line is opened");
        default:
            return words("at the machine");
    }
}

QString headlineOf(const FarmSession& session, const std::vector<Fact>& sum,
                   const NumberStyle& style) {
    // The first of these that the sum holds says what the check is about.
    static constexpr std::array<std::string_view, 11> kOrder{
        "yard.delay",       "yard.pump_left",  "yard.agitation", "yard.loss_constant",
        "yard.steady",      "yard.meter_high", "yard.meter_low", "yard.course",
        "yard.gauge_scale", "yard.settled",    "yard.pump_drop"};
    for (const auto code : kOrder) {
        for (const auto& fact : sum) {
            const std::string headline = "yard_page.headline." + fact.code.substr(5);
            if (fact.code == code && session.sentences().has(headline))
                return qs(session.sentences().fill(headline, fact.arguments, style));
        }
    }
    return {};
}

QString newNumber(const std::vector<Fact>& sum, const NumberStyle& style) {
    constexpr int kFigures = 5;
    for (const auto& fact : sum) {
        if (fact.code.find("number_") == std::string::npos) continue;
        for (const auto& argument : fact.arguments) {
            const auto* value = std::get_if<AnyQuantity>(&argument.value);
            if (argument.name != "value" || !value || !(value->si > 0)) continue;
            const int leading = static_cast<int>(std::floor(std::log10(value->si))) + 1;
            return plainNumber(value->si, std::max(0, kFigures - leading), style);
        }
    }
    return {};
}

QString fieldWords(const FarmSession& session, const std::string& key) {
    const QString own = textOr(session, "yard_page.field." + key, {});
    if (!own.isEmpty()) return own;
    return textOr(session, "machine.label." + key, qs(key));
}

QVector<EvidenceRow> changeRows(const FarmSession& session, const std::vector<std::string>& keys,
                                const Machine& before, const Machine& after,
                                const NumberStyle& style) {
    QVector<EvidenceRow> rows;
    QStringList taken;
    for (const auto& key : keys) {
        const auto old = fieldView(before, key);
        const auto now = fieldView(after, key);
        if (!old || !now || (!old->isKnown && !now->isKnown)) continue;
        const QString was = valueWords(session, before, key, style);
        const QString name = fieldWords(session, key);
        if (!now->isKnown) {
            taken << words("%1 %2").arg(name, was);
            continue;
        }
        EvidenceRow row;
        row.icon = u"origin:measured"_s;
        row.strong = name + u':';
        const QString is = valueWords(session, after, key, style);
        row.text = was == is ? words("%1, now measured").arg(is) : words("%1 → %2").arg(was, is);
        rows.append(row);
    }
    if (!taken.isEmpty()) {
        EvidenceRow row;
        row.icon = u"minus"_s;
        row.strong = words("Taken out, the measured values hold them:");
        row.text = taken.join(u"; "_s) + u'.';
        rows.append(row);
    }
    return rows;
}

QString verdictWords(CatchVerdict verdict) {
    switch (verdict) {
        case CatchVerdict::Good:
            return words("within the limits");
        case CatchVerdict::CleanAndCatchAgain:
            return words("low: clean, catch again");
        case CatchVerdict::Replace:
            return words("replace");
    }
    return {};
}

const StoredYardRecord* newestRecord(const FarmSession& session, RecordId machine, YardKind kind,
                                     const std::string& check, bool isFinished) {
    const StoredYardRecord* newest = nullptr;
    for (const auto& stored : session.yardRecords()) {
        const YardRecord& r = stored.record;
        if (r.machineId != machine || r.kind != kind || r.check != check) continue;
        if (r.finished.empty() == isFinished) continue;
        if (!newest || r.started >= newest->record.started) newest = &stored;
    }
    return newest;
}

}  // namespace bw
