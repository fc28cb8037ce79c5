// SPDX-License-Identifier: GPL-3.0-or-later
// The finder's fixed words; what it finds is worded by the sentences of resources/text.
#include <QCoreApplication>

#include "core/model/choice.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/case_view.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("FaultFinderPage", text);
}

struct SymptomWords {
    Symptom symptom;
    const char* name;
    const char* theirs;
};
constexpr SymptomWords kSymptoms[] = {
    {Symptom::Hunting, QT_TRANSLATE_NOOP("FaultFinderPage", "Hunting"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it jumps about”, it will not settle")},
    {Symptom::StuckHigh, QT_TRANSLATE_NOOP("FaultFinderPage", "Stuck high"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it will not come down”, it puts on too much")},
    {Symptom::StuckLow, QT_TRANSLATE_NOOP("FaultFinderPage", "Stuck low"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it will not come up”, it puts on too little")},
    {Symptom::UnevenBoom, QT_TRANSLATE_NOOP("FaultFinderPage", "Uneven boom"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“one section looks thin”, streaks")},
    {Symptom::TankWrong, QT_TRANSLATE_NOOP("FaultFinderPage", "Reads right, tank wrong"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“the display is right, but the tank comes out wrong”")},
    {Symptom::SlowToSettle, QT_TRANSLATE_NOOP("FaultFinderPage", "Slow to settle"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it takes half the field to get there”")},
    {Symptom::NothingComes, QT_TRANSLATE_NOOP("FaultFinderPage", "Nothing comes"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“the pump turns, the gauge stays at zero”")},
    {Symptom::NoReading, QT_TRANSLATE_NOOP("FaultFinderPage", "Display shows no flow or speed"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it sprays, but the display stays at zero”")},
    {Symptom::NotShuttingOff, QT_TRANSLATE_NOOP("FaultFinderPage", "Does not shut off"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "“it keeps dripping”, sections run on")},
};

struct SafetyWords {
    const char* question;
    const char* id;
    const char* text;
    const char* meaning;
};
constexpr SafetyWords kSafety[] = {
    {"tank", "water", QT_TRANSLATE_NOOP("FaultFinderPage", "clean water"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "checks on foot can be asked")},
    {"tank", "rinsed", QT_TRANSLATE_NOOP("FaultFinderPage", "rinsed, water in it"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "rinse water is not clean water; parts count as wet")},
    {"tank", "product", QT_TRANSLATE_NOOP("FaultFinderPage", "product"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "checks on foot wait until it is rinsed")},
    {"company", "alone", QT_TRANSLATE_NOOP("FaultFinderPage", "alone"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "steps for two people are left out")},
    {"company", "second_person", QT_TRANSLATE_NOOP("FaultFinderPage", "a second person"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "one at the controls who sees the other")},
    {"place", "field", QT_TRANSLATE_NOOP("FaultFinderPage", "in the field"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "displays first; park before reading them out")},
    {"place", "yard", QT_TRANSLATE_NOOP("FaultFinderPage", "in the yard"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "brake on, level ground")},
    {"place", "road", QT_TRANSLATE_NOOP("FaultFinderPage", "on or beside a road"),
     QT_TRANSLATE_NOOP("FaultFinderPage", "nothing on foot and nothing on water there")},
};

const SymptomWords& wordsOf(Symptom symptom) {
    for (const auto& words : kSymptoms) {
        if (words.symptom == symptom) return words;
    }
    return kSymptoms[0];
}

}  // namespace

QString symptomName(Symptom symptom) {
    return tr(wordsOf(symptom).name);
}
QString symptomInTheirWords(Symptom symptom) {
    return tr(wordsOf(symptom).theirs);
}

std::vector<CardAnswer> symptomChoices() {
    std::vector<CardAnswer> choices;
    for (const auto& words : kSymptoms)
        choices.push_back({qs(choiceName(words.symptom)), tr(words.name), tr(words.theirs)});
    return choices;
}

QString wordOf(Likeliness likeliness) {
    switch (likeliness) {
        case Likeliness::Likely:
            return tr("likely");
        case Likeliness::Possible:
            return tr("possible");
        case Likeliness::LessLikely:
            return tr("less likely");
        case Likeliness::NoLonger:
            break;
    }
    return tr("no longer fits");
}

QString stateName(CaseState state) {
    switch (state) {
        case CaseState::Open:
            return tr("open");
        case CaseState::Found:
            return tr("not proved yet");
        case CaseState::Confirmed:
            return tr("proved");
        case CaseState::NotConfirmed:
            break;
    }
    return tr("looked at: it was not that");
}

std::vector<CardAnswer> safetyChoices(const QString& key) {
    std::vector<CardAnswer> choices;
    for (const auto& words : kSafety) {
        if (key == QLatin1StringView(words.question))
            choices.push_back({QString::fromLatin1(words.id), tr(words.text), tr(words.meaning)});
    }
    return choices;
}

QString safetyWords(const QString& key, const std::string& answer) {
    for (const auto& choice : safetyChoices(key)) {
        if (choice.id == qs(answer)) return choice.text;
    }
    return tr("not asked yet");
}

QString placeName(CheckPlace place) {
    switch (place) {
        case CheckPlace::Sum:
            return tr("by the sums");
        case CheckPlace::CabWorking:
            return tr("in the cab, while working");
        case CheckPlace::CabParked:
            return tr("in the cab, parked");
        case CheckPlace::OnFoot:
            return tr("on foot");
        case CheckPlace::OnFootOnWater:
            return tr("on foot, on clean water");
        case CheckPlace::LineOpened:
            break;
    }
    return tr("line opened");
}

std::optional<Dimension> readingDimension(const std::string& check) {
    if (check == kSpeedRead) return Dimension::Speed;
    const Check* known = Knowledge::shipped().check(check);
    const auto reading = choiceFor<Reading>(known ? known->reading : check);
    return reading ? std::optional(dimensionOf(*reading)) : std::nullopt;
}

Unit readingUnit(const std::string& check, UnitSystem units) {
    const auto dimension = readingDimension(check).value_or(Dimension::None);
    const bool isCatch =
        check == choiceName(Reading::CatchGood) || check == choiceName(Reading::CatchWeak);
    if (isCatch && units == UnitSystem::Us) return Unit::FluidOunceUsPerMinute;
    if (check == choiceName(Reading::ControlPosition)) return Unit::Percent;
    return displayUnit(units, dimension);
}

}  // namespace bw
