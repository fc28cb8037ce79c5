// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/job_cells.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/model/checks.h"
#include "core/model/typed_over.h"
#include "core/units/parse.h"
#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

struct ColumnInfo {
    JobColumn column;
    const char* field;
    const char* heading;
    const char* words;
    const char* help;
};

constexpr const char* kContext = "SeasonTable";

constexpr std::array<ColumnInfo, kJobColumns> kColumns{{
    {JobColumn::Name, "name", QT_TRANSLATE_NOOP("SeasonTable", "Job"),
     QT_TRANSLATE_NOOP("SeasonTable", "name"),
     QT_TRANSLATE_NOOP("SeasonTable", "What is sprayed, and where")},
    {JobColumn::Rate, "rate", QT_TRANSLATE_NOOP("SeasonTable", "Rate"),
     QT_TRANSLATE_NOOP("SeasonTable", "rate"),
     QT_TRANSLATE_NOOP("SeasonTable", "Spray rate, in any unit")},
    {JobColumn::RateLeast, "rate_least", QT_TRANSLATE_NOOP("SeasonTable", "Least"),
     QT_TRANSLATE_NOOP("SeasonTable", "least rate"),
     QT_TRANSLATE_NOOP("SeasonTable", "Least rate of a map, a second rate or the % key")},
    {JobColumn::RateMost, "rate_most", QT_TRANSLATE_NOOP("SeasonTable", "Most"),
     QT_TRANSLATE_NOOP("SeasonTable", "highest rate"),
     QT_TRANSLATE_NOOP("SeasonTable", "Highest rate of a map, a second rate or the % key")},
    {JobColumn::Slow, "slow", QT_TRANSLATE_NOOP("SeasonTable", "Slow"),
     QT_TRANSLATE_NOOP("SeasonTable", "slow speed"),
     QT_TRANSLATE_NOOP("SeasonTable", "Slowest speed driven while spraying; empty: as usual")},
    {JobColumn::Usual, "usual", QT_TRANSLATE_NOOP("SeasonTable", "Usual"),
     QT_TRANSLATE_NOOP("SeasonTable", "usual speed"),
     QT_TRANSLATE_NOOP("SeasonTable", "Speed driven most of the time")},
    {JobColumn::Fast, "fast", QT_TRANSLATE_NOOP("SeasonTable", "Fast"),
     QT_TRANSLATE_NOOP("SeasonTable", "fast speed"),
     QT_TRANSLATE_NOOP("SeasonTable", "Fastest speed driven while spraying; empty: as usual")},
    {JobColumn::Gravity, "specific_gravity", QT_TRANSLATE_NOOP("SeasonTable", "SG"),
     QT_TRANSLATE_NOOP("SeasonTable", "weight against water"),
     QT_TRANSLATE_NOOP("SeasonTable", "Weight against water (SG); empty: as water, 1")},
    {JobColumn::Droplets, "droplets", QT_TRANSLATE_NOOP("SeasonTable", "Drops"),
     QT_TRANSLATE_NOOP("SeasonTable", "droplets"),
     QT_TRANSLATE_NOOP("SeasonTable", "Droplet classes that will do: C, VC; empty: none asked")},
    {JobColumn::Drift, "drift_percent", QT_TRANSLATE_NOOP("SeasonTable", "Drift"),
     QT_TRANSLATE_NOOP("SeasonTable", "drift class"),
     QT_TRANSLATE_NOOP("SeasonTable", "Drift reduction asked for, in percent; empty: none")},
    {JobColumn::Area, "area", QT_TRANSLATE_NOOP("SeasonTable", "Area"),
     QT_TRANSLATE_NOOP("SeasonTable", "area"),
     QT_TRANSLATE_NOOP("SeasonTable", "Area of the job in the season")},
    {JobColumn::Nozzle, "pinned_nozzle", QT_TRANSLATE_NOOP("SeasonTable", "Nozzle"),
     QT_TRANSLATE_NOOP("SeasonTable", "nozzle"),
     QT_TRANSLATE_NOOP("SeasonTable",
                       "The nozzle this job runs with; empty: the best of your own")},
    {JobColumn::Verdict, "verdict", QT_TRANSLATE_NOOP("SeasonTable", "Verdict"),
     QT_TRANSLATE_NOOP("SeasonTable", "verdict"),
     QT_TRANSLATE_NOOP("SeasonTable", "Enter opens the speed window")},
}};

const ColumnInfo& infoOf(JobColumn column) {
    return kColumns[static_cast<std::size_t>(column)];
}
QString words(const char* text) {
    return QCoreApplication::translate(kContext, text);
}

Unit unitOf(JobColumn column, const NumberStyle& style) {
    const Dimension dimension = dimensionOf(column);
    return dimension == Dimension::None ? Unit::None : displayUnit(style.units, dimension);
}

/// A quantity as typed if that still reads as the value, else rounded as its unit has it.
template <class Q>
QString knownText(const Known<Q>& known, Unit unit, const NumberStyle& style) {
    if (!known) return {};
    const AnyQuantity value = anyQuantity(known->value);
    if (!known->typed.empty()) {
        const auto read = parseQuantity(known->typed, value.dimension, unit, marksOf(style));
        if (read && std::abs(read->quantity.si - value.si) <= 1e-9 * std::abs(value.si)) {
            const QString figure = qs(formatExact(read->number, style.decimalMark));
            return read->unit == unit ? figure : figure + u' ' + symbol(read->unit);
        }
    }
    return qs(formatNumber(toUnit(value, unit), unit, style.decimalMark));
}

QString dropletText(const std::vector<DropletCategory>& droplets) {
    QStringList parts;
    for (const auto category : droplets) parts << qs(choiceName(category));
    return parts.join(u", "_s);
}

/// Classes in letters or in words, finest first.
std::optional<DropletCategory> dropletFor(const QString& word) {
    static const std::array<std::pair<const char16_t*, DropletCategory>, 8> spoken{
        {{u"extremely fine", DropletCategory::XF},
         {u"very fine", DropletCategory::VF},
         {u"fine", DropletCategory::F},
         {u"medium", DropletCategory::M},
         {u"coarse", DropletCategory::C},
         {u"very coarse", DropletCategory::VC},
         {u"extremely coarse", DropletCategory::XC},
         {u"ultra coarse", DropletCategory::UC}}};
    for (const auto& [name, category] : spoken) {
        if (word.compare(QStringView(name), Qt::CaseInsensitive) == 0) return category;
    }
    return choiceFor<DropletCategory>(ss(word.toUpper()));
}

std::optional<Problem> readDroplets(Job& job, const QString& text) {
    static const QRegularExpression between(u"[,;/+]|\\bor\\b|\\band\\b"_s);
    static const QRegularExpression blank(u"\\s+"_s);
    std::vector<DropletCategory> found;
    for (const QString& part : text.split(between, Qt::SkipEmptyParts)) {
        const QString whole = part.simplified();
        const bool isSpoken = dropletFor(whole).has_value();
        for (const QString& word : isSpoken ? QStringList{whole} : whole.split(blank)) {
            if (word.isEmpty()) continue;
            const auto category = dropletFor(word);
            if (!category) return error("droplets_unknown", "droplets", {{"typed", ss(word)}});
            found.push_back(*category);
        }
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    job.droplets = std::move(found);
    return std::nullopt;
}

std::optional<Problem> readNozzle(Job& job, const QString& text, const CellReading& reading) {
    if (text.isEmpty()) {
        job.pinnedNozzle.clear();
        return std::nullopt;
    }
    for (const auto& name : reading.nozzleNames) {
        if (qs(name).compare(text, Qt::CaseInsensitive) == 0) {
            job.pinnedNozzle = name;
            return std::nullopt;
        }
    }
    return error("pinned_nozzle_unknown", "pinned_nozzle", {{"nozzle", ss(text)}});
}

template <class Q>
void assign(Known<Q>& field, Q value, std::string typed) {
    field = typedOver(field, value, std::move(typed));
}

template <class Q>
std::optional<Problem> readQuantity(Known<Q>& field, const QString& text, JobColumn column,
                                    const CellReading& reading) {
    if (text.isEmpty()) {
        field.reset();
        return std::nullopt;
    }
    const Unit unit = reading.bareUnit.value_or(unitOf(column, reading.style));
    const auto read = parseQuantity(ss(text), kDimensionOf<Q>, unit, marksOf(reading.style));
    if (!read) return read.problem();
    const QString typed =
        read->unitWasTyped || unit == Unit::None ? text : text + u' ' + symbol(unit);
    if constexpr (std::is_same_v<Q, double>)
        assign(field, read->quantity.si, ss(typed));
    else
        assign(field, Q::fromSi(read->quantity.si), ss(typed));
    return std::nullopt;
}

/// "75" and "75 %" are the same here: the column is in percent.
std::optional<Problem> readPercent(Known<double>& field, QString text, const CellReading& reading) {
    if (text.endsWith(u'%')) text.chop(1);
    text = text.trimmed();
    if (text.isEmpty()) {
        field.reset();
        return std::nullopt;
    }
    const auto read = parseNumber(ss(text), marksOf(reading.style));
    if (!read) return read.problem();
    assign(field, *read, ss(text));
    return std::nullopt;
}

std::optional<Problem> readInto(Job& job, JobColumn column, const QString& text,
                                const CellReading& reading) {
    switch (column) {
        case JobColumn::Name:
            job.name = ss(text);
            return std::nullopt;
        case JobColumn::Rate:
            return readQuantity(job.rate, text, column, reading);
        case JobColumn::RateLeast:
            return readQuantity(job.rateLeast, text, column, reading);
        case JobColumn::RateMost:
            return readQuantity(job.rateMost, text, column, reading);
        case JobColumn::Slow:
            return readQuantity(job.slow, text, column, reading);
        case JobColumn::Usual:
            return readQuantity(job.usual, text, column, reading);
        case JobColumn::Fast:
            return readQuantity(job.fast, text, column, reading);
        case JobColumn::Gravity:
            return readQuantity(job.specificGravity, text, column, reading);
        case JobColumn::Droplets:
            return readDroplets(job, text);
        case JobColumn::Drift:
            return readPercent(job.driftPercent, text, reading);
        case JobColumn::Area:
            return readQuantity(job.area, text, column, reading);
        case JobColumn::Nozzle:
            return readNozzle(job, text, reading);
        case JobColumn::Verdict:
            break;
    }
    return std::nullopt;
}

/// An error that the value has by itself, whatever stands in the other cells.
std::optional<Problem> ownError(const Job& job, JobColumn column) {
    for (auto& problem : checkJob(job)) {
        if (problem.severity == Severity::Error && problem.where == fieldOf(column) &&
            problem.code.starts_with("value_"))
            return std::move(problem);
    }
    return std::nullopt;
}

}  // namespace

QString headingOf(JobColumn column) {
    return words(infoOf(column).heading);
}
QString wordsOf(JobColumn column) {
    return words(infoOf(column).words);
}
QString helpOf(JobColumn column) {
    return words(infoOf(column).help);
}
std::string fieldOf(JobColumn column) {
    return infoOf(column).field;
}

std::optional<JobColumn> columnOfField(const std::string& field) {
    for (const auto& info : kColumns) {
        if (field == info.field) return info.column;
    }
    return std::nullopt;
}

Dimension dimensionOf(JobColumn column) {
    switch (column) {
        case JobColumn::Rate:
        case JobColumn::RateLeast:
        case JobColumn::RateMost:
            return Dimension::AreaRate;
        case JobColumn::Slow:
        case JobColumn::Usual:
        case JobColumn::Fast:
            return Dimension::Speed;
        case JobColumn::Area:
            return Dimension::Area;
        default:
            return Dimension::None;
    }
}

QString cellText(const Job& job, JobColumn column, const NumberStyle& style) {
    const Unit unit = unitOf(column, style);
    switch (column) {
        case JobColumn::Name:
            return qs(job.name);
        case JobColumn::Rate:
            return knownText(job.rate, unit, style);
        case JobColumn::RateLeast:
            return knownText(job.rateLeast, unit, style);
        case JobColumn::RateMost:
            return knownText(job.rateMost, unit, style);
        case JobColumn::Slow:
            return knownText(job.slow, unit, style);
        case JobColumn::Usual:
            return knownText(job.usual, unit, style);
        case JobColumn::Fast:
            return knownText(job.fast, unit, style);
        case JobColumn::Gravity:
            return knownText(job.specificGravity, unit, style);
        case JobColumn::Droplets:
            return dropletText(job.droplets);
        case JobColumn::Drift:
            return knownText(job.driftPercent, Unit::None, style);
        case JobColumn::Area:
            return knownText(job.area, unit, style);
        case JobColumn::Nozzle:
            return qs(job.pinnedNozzle);
        case JobColumn::Verdict:
            break;
    }
    return {};
}

QString cellTextWithUnit(const Job& job, JobColumn column, const NumberStyle& style) {
    const QString text = cellText(job, column, style);
    const Unit unit = unitOf(column, style);
    if (text.isEmpty() || unit == Unit::None || text.contains(u' ')) return text;
    return text + u' ' + symbol(unit);
}

std::optional<Problem> setCell(Job& job, JobColumn column, const QString& text,
                               const CellReading& reading) {
    Job after = job;
    if (auto problem = readInto(after, column, text.trimmed(), reading)) return problem;
    if (auto problem = ownError(after, column)) return problem;
    job = std::move(after);
    return std::nullopt;
}

}  // namespace bw
