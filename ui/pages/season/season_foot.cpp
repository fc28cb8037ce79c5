// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_foot.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/season/season_words.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/foot_parts.h"
#include "ui/pages/season/job_sentences.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kMostSaid = 12;  ///< jobs told one by one

}  // namespace

SeasonFoot::SeasonFoot(FarmSession& session, QWidget* parent)
    : QScrollArea(parent), m_session(session), m_content(new RolePanel(Role::Raised)) {
    setObjectName(u"season.foot"_s);
    setAccessibleName(tr("What holds, machine by machine"));
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    m_panels = new QHBoxLayout(m_content);
    m_panels->setContentsMargins(0, 0, 0, 0);
    m_panels->setSpacing(0);
    setWidget(m_content);
    setMinimumHeight(px(64));
}

void SeasonFoot::clear() {
    while (QLayoutItem* item = m_panels->takeAt(0)) {
        delete item->widget();
        delete item;
    }
}

void SeasonFoot::showSeason(const SeasonReckoning& season, const std::vector<RecordId>& machines) {
    const int scrolled = verticalScrollBar()->value();
    clear();
    for (const RecordId machine : machines) {
        if (m_panels->count() > 0) m_panels->addWidget(new HairLine(Qt::Vertical));
        m_panels->addWidget(panel(season, machine), 1);
    }
    verticalScrollBar()->setValue(scrolled);
}

QWidget* SeasonFoot::panel(const SeasonReckoning& season, RecordId machine) {
    auto* panel = new QWidget;
    panel->setObjectName(u"season.foot.machine%1"_s.arg(machine));
    panel->setMinimumWidth(px(300));
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(px(16), px(8), px(14), px(8));
    column->setSpacing(px(4));
    const Machine* m = m_session.machine(machine);
    const MachineTally tally = tallyOf(season, machine);
    const NumberStyle style = m ? m_session.styleOf(*m) : m_session.currentStyle();
    const Fact title = tallyFact(tally, m ? m->name : std::string());
    auto* head =
        new TextLabel(qs(m_session.sentences().of(title, style)), TextSize::Body, Role::Ink, true);
    head->setObjectName(u"season.foot.machine%1.tally"_s.arg(machine));
    column->addWidget(head->wrapped());
    addShares(*column, tally);
    addOthers(*column, season, machine);
    for (const auto& gaps : {takenUncheckedFact(tally), machineGapsFact(tally)}) {
        if (gaps)
            column->addLayout(footRow(u"unchecked"_s, Role::Unchecked,
                                      qs(m_session.sentences().of(*gaps, style)), Role::Unchecked));
    }
    column->addStretch(1);
    return panel;
}

/// Nozzle, the jobs it is best for so far, their area.
void SeasonFoot::addShares(QVBoxLayout& column, const MachineTally& tally) {
    if (tally.shares.empty()) return;
    const Machine* machine = m_session.machine(tally.machine);
    const NumberStyle style = m_session.styleOf(*machine);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(px(8));
    grid->setVerticalSpacing(px(3));
    grid->setColumnStretch(2, 1);
    int row = 0;
    for (const auto& share : tally.shares) {
        const Nozzle* nozzle = m_session.nozzleNamed(share.nozzle);
        if (nozzle && !nozzle->sizeCode.empty())
            grid->addWidget(new NozzleChip(qs(nozzle->sizeCode)), row, 0, Qt::AlignVCenter);
        grid->addWidget(new TextLabel(qs(share.nozzle), TextSize::Small), row, 1, Qt::AlignVCenter);
        grid->addWidget(
            footText(tr("best so far for: %1").arg(jobNames(m_session, share.jobs)), Role::Quiet),
            row, 2);
        if (share.area.si() > 0)
            grid->addWidget(
                new TextLabel(shown(share.area, style), TextSize::Small, Role::Ink, true), row, 3,
                Qt::AlignVCenter | Qt::AlignRight);
        ++row;
    }
    column.addLayout(grid);
}

void SeasonFoot::addOthers(QVBoxLayout& column, const SeasonReckoning& season, RecordId machine) {
    const Machine* m = m_session.machine(machine);
    if (!m) return;
    int said = 0, left = 0;
    for (const auto& reckoning : season.jobs) {
        const Job* job = m_session.job(reckoning.job);
        const bool holds = reckoning.verdict.standing == JobStanding::Holds;
        if (!job || reckoning.machine != machine || holds) continue;
        if (said++ < kMostSaid)
            addOther(column, reckoning, *job, m_session.styleOf(*m));
        else
            ++left;
    }
    if (left > 0)
        column.addWidget(footText(
            tr("And %1 more: each says why in the line under the table.").arg(left), Role::Quiet));
}

void SeasonFoot::addOther(QVBoxLayout& column, const JobReckoning& reckoning, const Job& job,
                          const NumberStyle& style) {
    const Sentences& sentences = m_session.sentences();
    const JobVerdict& verdict = reckoning.verdict;
    const bool isOpen = verdict.standing == JobStanding::NotChecked;
    QString text;
    if (const auto fact = jobFact(reckoning, job))
        text = qs(sentences.of(*fact, style));
    else if (verdict.problem)
        text = tr("%1: %2").arg(qs(job.name), qs(sentences.of(*verdict.problem, style)));
    else
        return;
    if (const PairVerdict* pair = verdict.bestPair(); pair && !isOpen) {
        const QString off = offSentence(*pair, sentences, style);
        if (!off.isEmpty()) text += u' ' + off;
    }
    column.addLayout(footRow(isOpen ? u"unchecked"_s : u"outside"_s,
                             isOpen ? Role::Unchecked : Role::Limit, text,
                             isOpen ? Role::Unchecked : Role::Ink));
}

void SeasonFoot::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    // Wrapped texts need their height anew at the new width.
    m_content->updateGeometry();
}

}  // namespace bw
