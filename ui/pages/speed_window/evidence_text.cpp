// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/evidence_text.h"

#include <algorithm>
#include <map>

#include "core/window/advice.h"
#include "core/window/rests_on.h"
#include "core/window/ways_out.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/icons.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kMostRests = 6;
/// A mix as heavy as this is a liquid fertiliser. Judgement: no plant protection mix weighs as
/// much.

/// Writes the core's facts as rows and sections.
class Writer {
  public:
    Writer(const WindowStudy& study, const Sentences& sentences)
        : m_study(study), m_sentences(sentences) {}

    QVector<EvidenceSection> sections() {
        addStops();
        addWaysOut();
        addByHand();
        addUnchecked();
        addSections();
        addRests();
        addFloor();
        addValve();
        addOutside();
        return std::move(m_out);
    }
    QVector<EvidenceSection> stops() {
        addStops();
        return std::move(m_out);
    }
    QVector<EvidenceSection> grounds() {
        addUnchecked();
        addRests();
        return std::move(m_out);
    }

  private:
    QString words(const Fact& fact) const { return qs(m_sentences.of(fact, m_study.style)); }
    QString words(const std::vector<Fact>& facts) const {
        QStringList all;
        for (const auto& fact : facts) all.append(words(fact));
        return all.join(u' ');
    }
    EvidenceSection& section(const QString& title) {
        m_out.append(EvidenceSection{title, {}});
        return m_out.last();
    }
    static QString capitalised(QString text) {
        if (!text.isEmpty()) text[0] = text[0].toUpper();
        return text;
    }

    void addStops() {
        auto& s = section(QObject::tr("What stops it"));
        if (m_study.window().emptyWhy != Limit::None) {
            EvidenceRow row;
            row.icon = iconOf(m_study.window().emptyWhy);
            row.iconRole = Role::Limit;
            row.strong = QObject::tr("At every speed:");
            row.text = qs(m_sentences.fill(limitWord(m_study.window().emptyWhy).code, {}, {}));
            s.rows.append(row);
        }
        for (const Side side : {Side::Low, Side::High}) {
            const Stop stop = whatStops(m_study.model(), m_study.window(), side);
            EvidenceRow row;
            if (!stop.speed) {
                row.icon = u"unchecked"_s;
                row.iconRole = Role::Unchecked;
                row.textRole = Role::Unchecked;
                row.text = words(stop.what);
                s.rows.append(row);
                continue;
            }
            row.icon = iconOf(stop.limit);
            row.iconRole = Role::Limit;
            row.strong = shown(*stop.speed, m_study.style);
            row.text = words(stop.what);
            row.quiet = words(stop.past);
            if (stop.next) row.quiet += u' ' + words(*stop.next);
            s.rows.append(row);
        }
    }

    void addWaysOut() {
        const auto all = waysOut(m_study.model(), m_study.window(), m_study.style.units);
        const bool isAny =
            std::any_of(all.begin(), all.end(), [](const auto& w) { return !w.facts().empty(); });
        for (const auto& ways : all) {
            auto facts = ways.facts();
            const bool isSaid = isAny || (ways.side == Side::High && all.size() > 1);
            if (facts.empty() && isSaid) continue;
            if (facts.empty()) facts.push_back({"ways.none", {}});
            auto& s = section(words(ways.title()));
            for (const auto& fact : facts) {
                EvidenceRow row;
                row.icon = u"right"_s;
                row.text = words(fact);
                s.rows.append(row);
            }
        }
    }

    void addByHand() {
        if (valueOr(m_study.machine.senses, Senses::Flow) != Senses::Nothing) return;
        auto& s = section(QObject::tr("Set by hand, at the boom sensor"));
        for (const auto& line : m_study.model().byHand()) {
            EvidenceRow row;
            row.strong = shown(line.sensorPressure, m_study.style);
            row.text = QObject::tr("at %1").arg(shown(line.speed, m_study.style));
            const auto point = m_study.model().at(line.speed);
            if (!point.past.empty()) row.quiet = words(pastFact(point));
            s.rows.append(row);
        }
    }

    void addUnchecked() {
        auto& s = section(QObject::tr("Not checked"));
        for (const auto& gap : whatIsUnchecked(m_study.model(), m_study.window())) {
            EvidenceRow row = uncheckedRow(capitalised(words(gap.what)));
            if (gap.part == "nozzle" && !m_study.hand().nozzle.isBuiltIn)
                link(row, u"nozzles"_s, QObject::tr("Fill in"));
            if (gap.part == "machine")
                link(row, u"machine#"_s + qs(gap.field), QObject::tr("Fill in"));
            s.rows.append(row);
        }
        for (std::size_t i = 0; i < m_study.nozzles.size(); ++i) addOtherGaps(s, i);
        if (s.rows.isEmpty()) {
            EvidenceRow row;
            row.text = QObject::tr("Nothing left open.");
            s.rows.append(row);
        }
    }

    void addOtherGaps(EvidenceSection& s, std::size_t place) const {
        const StudiedNozzle& n = m_study.nozzles[place];
        if (place == m_study.inHand) return;
        if (n.problem) {
            EvidenceRow row = uncheckedRow(
                QObject::tr("left out. %1").arg(qs(m_sentences.of(*n.problem, m_study.style))));
            row.strong = qs(n.nozzle.name) + u':';
            s.rows.append(row);
            return;
        }
        const auto gaps = nozzleGaps(*n.window);
        if (gaps.empty()) return;
        Fact list{n.nozzle.acceptUnchecked ? "unchecked.other_accepted" : "unchecked.other", {}};
        for (const Limit limit : gaps) list.arguments.push_back({"limits", limitWord(limit)});
        EvidenceRow row = uncheckedRow(words(list));
        row.strong = qs(n.nozzle.name) + u':';
        s.rows.append(row);
    }

    static EvidenceRow uncheckedRow(const QString& text) {
        EvidenceRow row;
        row.icon = u"unchecked"_s;
        row.iconRole = Role::Unchecked;
        row.textRole = Role::Unchecked;
        row.text = text;
        return row;
    }
    static void link(EvidenceRow& row, const QString& page, const QString& text) {
        row.link = kPageLink + page;
        row.linkText = text;
    }

    void addSections() {
        const auto facts = sectionFacts(m_study.model(), m_study.window());
        if (facts.empty()) return;
        EvidenceRow row;
        row.icon = u"meter"_s;
        row.text = words(facts);
        section(QObject::tr("Sections shut")).rows.append(row);
    }

    void addRests() {
        const auto items = restsOn(m_study.machine, m_study.hand().nozzle, m_study.job);
        if (items.empty()) return;
        auto& s = section(QObject::tr("Rests on"));
        std::map<Origin, int> left;
        for (const auto& item : items) {
            const bool tells =
                item.move || item.binds || item.worn || item.origin == Origin::Assumed;
            if (tells && s.rows.size() < kMostRests)
                s.rows.append(restsRow(item));
            else
                ++left[item.origin];
        }
        QStringList words;
        for (const auto& [origin, count] : left)
            words.append(QObject::tr("%1 %2").arg(count).arg(originWord(origin)));
        if (words.isEmpty()) return;
        EvidenceRow row;
        row.quiet = QObject::tr("And of the rest: %1.").arg(words.join(u", "_s));
        s.rows.append(row);
    }

    EvidenceRow restsRow(const RestsOn& item) const {
        EvidenceRow row;
        row.icon = u"origin:"_s + qs(name(item.origin));
        Fact fact{"rests." + item.where, {}};
        if (item.value) fact.arguments.push_back({"value", *item.value});
        row.text = words(fact);
        row.quiet = originText(item);
        row.quietInline = true;
        // With no window there is none to move.
        const WindowEnds ends = endsOf(m_study.window());
        if (item.move && !ends.empty) row.quiet += u". "_s + words(moveFact(*item.move));
        if (item.worn && !ends.empty) row.quiet += u". "_s + words(wornFact(*item.worn));
        if (item.origin == Origin::Assumed) {
            const QString part = qs(item.where).section(u'.', 0, 0);
            link(row,
                 part == u"nozzle"_s ? u"nozzles"_s
                 : part == u"job"_s  ? u"season"_s
                                     : u"machine#"_s + qs(item.where).section(u'.', 1),
                 QObject::tr("Fill in"));
        }
        return row;
    }

    static QString originText(const RestsOn& item) {
        switch (item.origin) {
            case Origin::Measured:
                return item.date.empty() ? QObject::tr("measured")
                                         : QObject::tr("measured %1").arg(qs(item.date));
            case Origin::Handbook:
                return QObject::tr("from the handbook");
            case Origin::Assumed:
                break;
        }
        return item.isProgram ? QObject::tr("assumed by the program") : QObject::tr("assumed");
    }

    void addAdvice(const Advice& advice, const QString& icon) {
        auto& s = section(words(advice.title));
        if (advice.body.empty()) return;
        EvidenceRow row;
        row.icon = icon;
        if (advice.asksForWork) row.iconRole = Role::Limit;
        row.text = words(advice.body);
        s.rows.append(row);
    }
    void addFloor() {
        if (const auto advice = floorAdvice(m_study.model(), m_study.window()))
            addAdvice(*advice, u"floor"_s);
    }
    void addValve() {
        if (const auto advice = restrictorAdvice(m_study.model(), m_study.window()))
            addAdvice(*advice, u"changeover"_s);
    }

    void addOutside() {
        const UnitSystem units = m_study.style.units;
        const auto examples = outsideExamples(m_study.model(), m_study.window(), units);
        for (const auto& example : examples) {
            auto& s = section(words(example.title));
            EvidenceRow row;
            row.icon = u"outside"_s;
            row.text = words(example.body);
            s.rows.append(row);
        }
        if (valueOr(m_study.machine.senses, Senses::Flow) == Senses::Nothing) {
            auto& s = section(QObject::tr("Outside: the pressure left alone"));
            EvidenceRow row;
            row.icon = u"outside"_s;
            row.text = words(leftAtUsual(m_study.model(), units));
            s.rows.append(row);
        } else if (examples.empty()) {
            auto& s = section(QObject::tr("Outside"));
            s.rows.append(uncheckedRow(words(Fact{"outside.unknown", {}})));
        }
    }

    const WindowStudy& m_study;
    const Sentences& m_sentences;
    QVector<EvidenceSection> m_out;
};

SpanState stateOf(Standing standing) {
    switch (standing) {
        case Standing::Covers:
            return SpanState::All;
        case Standing::UsualOnly:
            return SpanState::UsualOnly;
        case Standing::NotChecked:
            return SpanState::NotChecked;
        case Standing::Neither:
        case Standing::Empty:
            break;
    }
    return SpanState::Neither;
}

/// "to spare: 31 % down, 33 % up" of the usual speed.
QString spareText(const WindowStudy& study, const Span& span) {
    if (span.usual < span.low.value_or(0.0) || span.usual > span.high.value_or(span.usual))
        return QObject::tr("the usual speed lies outside");
    const QString down = percent(1.0 - span.low.value_or(0.0) / span.usual, study.style);
    if (!span.high) return QObject::tr("to spare: %1 down").arg(down);
    const QString up = percent(*span.high / span.usual - 1.0, study.style);
    return QObject::tr("to spare: %1 down, %2 up").arg(down, up);
}

QString holdsText(const WindowStudy& study) {
    const JobDemand& d = study.model().demand();
    QString text = d.rateLeast < d.rateMost
                       ? QObject::tr("holds %1 to %2")
                             .arg(figure(d.rateLeast, study.style), shown(d.rateMost, study.style))
                       : QObject::tr("holds %1").arg(shown(d.rate, study.style));
    QStringList drops;
    for (const auto category : study.job.droplets) drops.append(qs(choiceName(category)));
    const auto gaps = nozzleGaps(study.window());
    if (std::find(gaps.begin(), gaps.end(), Limit::Droplets) != gaps.end())
        return text + u", "_s + QObject::tr("drops not checked");
    return drops.isEmpty() ? text : text + u", "_s + drops.join(QObject::tr(" or "));
}

}  // namespace

QVector<EvidenceSection> evidenceOf(const WindowStudy& study, const Sentences& sentences) {
    return Writer(study, sentences).sections();
}

QVector<EvidenceSection> stopsOf(const WindowStudy& study, const Sentences& sentences) {
    return Writer(study, sentences).stops();
}

QVector<EvidenceSection> groundsOf(const WindowStudy& study, const Sentences& sentences) {
    return Writer(study, sentences).grounds();
}

VerdictText verdictText(const WindowStudy& study, const Sentences& sentences) {
    const Verdict verdict = verdictOf(study.model(), study.window());
    VerdictText out;
    out.title = qs(sentences.of(verdict.title, study.style));
    QStringList details;
    for (const auto& fact : verdict.details) details.append(qs(sentences.of(fact, study.style)));
    out.text = details.join(u' ');
    out.tone = verdict.standing == Standing::Covers       ? Tone::Ok
               : verdict.standing == Standing::NotChecked ? Tone::Plain
                                                          : Tone::Limit;
    return out;
}

Span spanOf(const WindowStudy& study, const Sentences& sentences) {
    const SpeedWindow& w = study.window();
    const WindowEnd& low = w.allRates ? w.allRates->low : w.low;
    const WindowEnd& high = w.allRates ? w.allRates->high : w.high;
    const JobDemand& d = study.model().demand();
    Span span;
    span.from = study.xFrom;
    span.to = study.xTo;
    span.slow = study.x(d.slow);
    span.usual = study.x(d.usual);
    span.fast = study.x(d.fast);
    const Standing standing = standingOf(w, study.hand().nozzle);
    span.state = stateOf(standing);
    if (standing == Standing::Empty) {
        span.holds = QObject::tr("no speed holds");
        return span;
    }
    const Stop lowStop = whatStops(study.model(), w, Side::Low);
    const Stop highStop = whatStops(study.model(), w, Side::High);
    span.low = study.x(low.speed.value_or(Speed{}));
    span.lowLimit = low.limit;
    span.lowReason = qs(sentences.of(lowStop.shortly, study.style));
    if (lowStop.speed) span.lowFigure = figure(*low.speed, study.style);
    if (high.speed) {
        span.high = study.x(*high.speed);
        span.highFigure = figure(*high.speed, study.style);
    }
    span.highLimit = high.limit;
    span.highReason = qs(sentences.of(highStop.shortly, study.style));
    span.holds = holdsText(study);
    span.spare = spareText(study, span);
    return span;
}

QString pageForProblem(const Problem& problem) {
    if (problem.where.starts_with("nozzle")) return u"nozzles"_s;
    if (problem.where.starts_with("job")) return u"season"_s;
    return u"machine"_s;
}

}  // namespace bw
