// SPDX-License-Identifier: GPL-3.0-or-later
// What the catch test shows: the card, the picture, the words beside it.
#include <QHeaderView>
#include <QStackedWidget>
#include <algorithm>
#include <cmath>

#include "core/yard/catch_record.h"
#include "ui/kit/buttons.h"
#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/catch_entry.h"
#include "ui/pages/yard/catch_pane.h"
#include "ui/pages/yard/catch_setup.h"
#include "ui/pages/yard/catch_table.h"
#include "ui/pages/yard/catch_walk.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

CatchLimits limitsOf(const CatchTest& test) {
    return {test.limitOfMean, test.limitOfNew};
}

QString jug(Volume volume, const NumberStyle& style) {
    return shownIn(anyQuantity(volume), jugUnit(style.units), style);
}

EvidenceRow row(const QString& strong, const QString& text, Role role = Role::Ink) {
    EvidenceRow out;
    out.strong = strong;
    out.text = text;
    out.textRole = role;
    return out;
}

}  // namespace

const CaughtNozzle* CatchPane::caught(int nozzle) const {
    if (!m_view.summary) return nullptr;
    for (const auto& one : m_view.summary->nozzles) {
        if (one.nozzle == nozzle) return &one;
    }
    return nullptr;
}

void CatchPane::show() {
    const bool isTest = isRunning();
    m_stack->setCurrentIndex(isTest ? 1 : 0);
    const CatchWalk walk(m_record);
    m_view = {};
    m_view.test = m_record.catchTest;
    m_view.order = walk.order();
    m_view.style = style();
    m_view.inHand = isTest && m_record.finished.empty() ? m_nozzle : 0;
    if (const auto summary = summaryOf(m_record.catchTest)) {
        m_view.summary = *summary;
        m_view.picture =
            catchPicture(*summary, bare(m_record.catchTest.newFlow), limitsOf(m_record.catchTest));
    } else if (m_record.catchTest.newFlow) {
        m_view.picture.isOfNew = true;
        m_view.picture.base = m_record.catchTest.newFlow->value;
    }
    if (isTest) {
        showCard(walk);
        showPicture(walk);
        showResult(walk);
    } else {
        showSetupResult();
    }
    showFoot(walk);
    Q_EMIT stateChanged();
}

QString CatchPane::lastWords() const {
    if (m_record.catchTest.catches.empty()) return tr("nothing caught yet");
    const NotedCatch& last = m_record.catchTest.catches.back();
    QString text = tr("last: nozzle %1, %2").arg(last.nozzle).arg(jug(last.volume, style()));
    if (const auto* found = caught(last.nozzle)) {
        text +=
            u", "_s + (found->ofNew ? tr("%1 of new").arg(offWords(*found->ofNew, style()))
                                    : tr("%1 of the mean").arg(offWords(found->ofMean, style())));
    }
    return last.isAgain ? text + tr(" (after cleaning)") : text;
}

void CatchPane::showCard(const CatchWalk& walk) {
    m_card->setVisible(m_record.finished.empty());
    CatchEntryCard::Content content;
    content.nozzle = m_nozzle;
    content.counted = isFromRight(m_record)
                          ? tr("Nozzle; numbers count from the left, you began at "
                               "the right end")
                          : tr("Nozzle, counted from the left end");
    content.of = tr("of %1").arg(walk.nozzles());
    if (walk.sectionOf(m_nozzle) >= 0 && m_record.catchTest.sections.size() > 1)
        content.of += tr(" · section %1, no. %2")
                          .arg(walk.sectionOf(m_nozzle) + 1)
                          .arg(walk.placeInSection(m_nozzle));
    content.last = lastWords();
    content.seconds = m_record.catchTest.time.si();
    content.unit = jugUnit(style().units);
    content.decimalMark = style().decimalMark;
    content.isCaught = walk.isCaught(m_nozzle);
    const auto* found = caught(m_nozzle);
    content.isAgain = found && found->verdict == CatchVerdict::CleanAndCatchAgain;
    m_card->show(content);
}

QString CatchPane::headWords() const {
    const CatchTest& test = m_record.catchTest;
    QString text = m_view.picture.isOfNew ? tr("Catch of each nozzle against a new one")
                                          : tr("Catch of each nozzle against the mean");
    if (test.pressure)
        text += tr(", at %1 at the nozzle").arg(shown(test.pressure->value, style()));
    if (!test.set.empty()) text += u" · "_s + qs(test.set);
    return text;
}

void CatchPane::showPicture(const CatchWalk& walk) {
    m_head->setText(headWords());
    m_chart->setView(m_view, verdictTitle() + u". "_s +
                                 tr("%1 of %2 caught.").arg(walk.caughtCount()).arg(walk.count()));
    m_model->setView(m_view);
    const int widths[] = {64, 64, 96, 76, 64, 88, 160};
    for (int i = 0; i < 7; ++i) m_table->setColumnWidth(i, px(widths[i]));
    m_table->horizontalHeader()->setStretchLastSection(true);
    const int at = m_model->rowOf(m_nozzle);
    if (at >= 0) m_table->setCurrentIndex(m_model->index(at, 0));
}

QString CatchPane::verdictTitle() const {
    if (!m_view.summary) return tr("Nothing caught yet");
    int high = 0, low = 0;
    for (const auto& nozzle : m_view.summary->nozzles) {
        high += nozzle.verdict == CatchVerdict::Replace;
        low += nozzle.verdict == CatchVerdict::CleanAndCatchAgain;
    }
    const bool isOver = CatchWalk(m_record).isOver();
    if (m_view.summary->replaceSet) return tr("Replace the set");
    if (high == 0 && low == 0)
        return isOver ? tr("All within the limits") : tr("Within the limits so far");
    QStringList parts;
    if (high > 0) parts << tr("%1 to replace").arg(high);
    if (low > 0) parts << tr("%1 to clean and catch again").arg(low);
    return parts.join(u", "_s);
}

EvidenceSection CatchPane::soFar() const {
    const CatchSummary& s = *m_view.summary;
    const Duration time = m_record.catchTest.time;
    EvidenceSection out{m_record.finished.empty() ? tr("So far") : tr("Found"), {}};
    QString mean = tr("%1, %2 in %3")
                       .arg(shown(s.mean.value, style()), jug(s.mean.value * time, style()),
                            shown(time, style()));
    out.rows.append(row(tr("Mean:"), mean));
    if (s.meanOfNew)
        out.rows.append(row(tr("Mean against a new one:"), offWords(*s.meanOfNew, style())));
    if (s.cv)
        out.rows.append(row(tr("Spread between nozzles (CV):"),
                            plainNumber(*s.cv * 100, 1, style()) + u" %"_s));
    const auto [low, high] = std::minmax_element(
        s.nozzles.begin(), s.nozzles.end(),
        [](const auto& a, const auto& b) { return a.flow.value < b.flow.value; });
    const auto extreme = [&](const QString& word, const CaughtNozzle& n) {
        const QString off = n.ofNew ? tr("%1 of new").arg(offWords(*n.ofNew, style()))
                                    : tr("%1 of the mean").arg(offWords(n.ofMean, style()));
        out.rows.append(row(word.arg(n.nozzle), off,
                            n.verdict == CatchVerdict::Good ? Role::Ink : Role::Limit));
    };
    if (s.nozzles.size() > 1) {
        extreme(tr("Highest, nozzle %1:"), *high);
        extreme(tr("Lowest, nozzle %1:"), *low);
    }
    return out;
}

EvidenceSection CatchPane::rule() const {
    const QString ofMean = percent(m_record.catchTest.limitOfMean, style());
    const QString ofNew = percent(m_record.catchTest.limitOfNew, style());
    EvidenceSection out{tr("The rule"), {}};
    QString high = tr("More than %1 over the mean").arg(ofMean);
    if (m_view.picture.isOfNew) high += tr(", or %1 over a new one").arg(ofNew);
    out.rows.append(
        row(tr("%1 under the mean:").arg(ofMean), tr("clean, catch again; still low: replace.")));
    out.rows.append(row(high + u':', tr("replace.")));
    EvidenceRow set = row(tr("Two or more so high, or the mean over new:"), tr("the set."));
    set.quiet = tr("Limits as set for this test; published advice differs.");
    out.rows.append(set);
    return out;
}

EvidenceSection CatchPane::openSection(const CatchWalk& walk) const {
    EvidenceSection out{tr("Not checked"), {}};
    const int open = walk.count() - walk.caughtCount();
    const int beside = walk.nozzles() - walk.count();
    EvidenceRow one;
    one.icon = u"unchecked"_s;
    one.iconRole = Role::Unchecked;
    one.textRole = Role::Unchecked;
    if (open > 0) {
        one.text = tr("%1 nozzles not caught yet. The mean may still move.").arg(open);
        out.rows.append(one);
    }
    if (beside > 0) {
        one.text = tr("%1 nozzles are left out by this test.").arg(beside);
        out.rows.append(one);
    }
    if (!m_view.picture.isOfNew) {
        one.text =
            tr("Wear of the whole set: the flow of a new nozzle at this pressure is not "
               "known.");
        out.rows.append(one);
    }
    return out;
}

EvidenceSection CatchPane::doubts() const {
    EvidenceSection out{tr("Doubts"), {}};
    if (!m_view.summary) return out;
    for (const auto& problem : m_view.summary->warnings) {
        EvidenceRow one;
        one.icon = u"caution"_s;
        one.iconRole = Role::Caution;
        one.text = qs(m_session.sentences().of(problem, style()));
        if (problem.code == "yard_catch_coarse") {
            Flow largest{};
            for (const auto& n : m_view.summary->nozzles) largest = std::max(largest, n.flow.value);
            const Duration least =
                leastCatchTime(largest, m_view.summary->mean.value, m_record.catchTest.limitOfMean);
            one.text += u' ' + tr("It takes %1 s or more.").arg(std::ceil(least.si()));
        }
        out.rows.append(one);
    }
    return out;
}

void CatchPane::showResult(const CatchWalk& walk) {
    const QString text =
        tr("%1 of %2 caught, on clean water.").arg(walk.caughtCount()).arg(walk.count());
    bool isOff = false;
    QVector<EvidenceSection> sections;
    if (m_view.summary) {
        isOff = m_view.summary->replaceSet ||
                std::any_of(m_view.summary->nozzles.begin(), m_view.summary->nozzles.end(),
                            [](const auto& n) { return n.verdict != CatchVerdict::Good; });
        sections.append(soFar());
    }
    for (auto& section : {doubts(), rule(), openSection(walk)}) {
        if (!section.rows.isEmpty()) sections.append(section);
    }
    const Tone tone = !m_view.summary ? Tone::Plain : isOff ? Tone::Limit : Tone::Ok;
    m_result->setVerdict(verdictTitle(), text, tone);
    m_result->setSections(sections);
}

void CatchPane::showSetupResult() {
    const auto* last = newestRecord(m_session, m_machineId, YardKind::CatchTest, "Y7", true);
    QVector<EvidenceSection> sections;
    if (last) {
        EvidenceSection before{tr("Last time"), {}};
        before.rows.append(
            row(dayWords(last->record.started) + u':', qs(last->record.catchTest.set)));
        if (const auto summary = summaryOf(last->record.catchTest)) {
            QString found = tr("mean %1").arg(shown(summary->mean.value, style()));
            if (summary->meanOfNew)
                found += tr(", %1 of new").arg(offWords(*summary->meanOfNew, style()));
            before.rows.append(row({}, found));
        }
        sections.append(before);
    }
    EvidenceSection limits{tr("The limits"), {}};
    limits.rows.append(row({}, tr("Published advice differs: 5 % of the mean (Alberta agriculture "
                                  "ministry, Agdex 606-1), 10 % of the mean or of a new nozzle "
                                  "(extension sheets of several states). Both are yours to set.")));
    sections.append(limits);
    m_result->setVerdict(tr("Not begun"), tr("Say what is caught, then number, Enter, next."),
                         Tone::Plain);
    m_result->setSections(sections);
}

void CatchPane::showFoot(const CatchWalk& walk) {
    const bool isTest = isRunning();
    const bool isFinished = isTest && !m_record.finished.empty();
    int low = 0;
    if (m_view.summary) {
        for (const auto& n : m_view.summary->nozzles)
            low += n.verdict == CatchVerdict::CleanAndCatchAgain;
    }
    m_setup->startButton()->setVisible(!isTest);
    m_again->setText(tr("Catch the low ones again (%1)").arg(low));
    m_again->setVisible(isTest && low > 0);
    m_back->setVisible(isTest && !isFinished);
    m_back->setEnabled(!m_record.catchTest.catches.empty());
    m_finish->setVisible(isTest && !isFinished);
    m_finish->setText(m_record.catchTest.catches.empty() ? tr("Leave this test")
                      : walk.isOver()                    ? tr("Finish and keep")
                                                         : tr("Stop here and keep"));
    m_new->setVisible(isFinished);
    m_note->setText(isFinished
                        ? tr("Finished %1, kept with the machine.").arg(dayWords(m_record.finished))
                    : isTest ? tr("Each catch is saved; you can leave and go on later.")
                             : QString());
    m_note->setVisible(isTest);
}

}  // namespace bw
