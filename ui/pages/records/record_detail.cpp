// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/record_detail.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "core/yard/catch_record.h"
#include "ui/kit/buttons.h"
#include "ui/kit/evidence.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/catch_bars.h"
#include "ui/pages/records/record_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

RecordDetail::RecordDetail(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_title(new TextLabel({}, TextSize::Title, Role::Ink, true)),
      m_about(new TextLabel({}, TextSize::Body, Role::Quiet)),
      m_verdict(new VerdictPanel),
      m_bars(new CatchBars),
      m_list(new EvidenceList),
      m_open(new Button({}, u"open"_s)),
      m_remove(new Button(tr("Remove"), u"delete"_s)) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(0);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setAccessibleName(tr("Record in hand"));
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(px(14), px(12), px(14), px(12));
    column->setSpacing(px(8));
    m_title->setObjectName(u"records.detail.title"_s);
    m_about->setObjectName(u"records.detail.about"_s);
    column->addWidget(m_title->wrapped());
    column->addWidget(m_about->wrapped());
    m_verdict->setObjectName(u"records.detail.verdict"_s);
    column->addWidget(m_verdict);
    column->addWidget(m_bars);
    m_list->setObjectName(u"records.detail.list"_s);
    column->addWidget(m_list);
    column->addStretch(1);
    scroll->setWidget(box);
    whole->addWidget(scroll, 1);
    whole->addWidget(new HairLine);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(px(14), px(8), px(14), px(8));
    m_open->setObjectName(u"records.detail.open"_s);
    m_remove->setObjectName(u"records.detail.remove"_s);
    m_remove->setKey(QKeySequence(Qt::Key_Delete), false);
    foot->addWidget(m_open);
    foot->addStretch(1);
    foot->addWidget(m_remove);
    whole->addLayout(foot);
    connect(m_open, &QAbstractButton::clicked, this, &RecordDetail::openWanted);
    connect(m_remove, &QAbstractButton::clicked, this, &RecordDetail::removeWanted);
}

void RecordDetail::setLine(const RecordLine* line, const QString& opens) {
    for (QWidget* part : {static_cast<QWidget*>(m_about), static_cast<QWidget*>(m_verdict),
                          static_cast<QWidget*>(m_list), static_cast<QWidget*>(m_remove)})
        part->setVisible(line != nullptr);
    m_bars->setVisible(line && line->kind == LineKind::CatchTest);
    m_open->setVisible(line && !opens.isEmpty());
    m_open->setText(opens);
    if (!line) return m_title->setText(tr("No record fits what is asked for."));
    m_title->setText(line->what);
    QStringList about{dayWords(line->when),
                      line->machine.isEmpty() ? tr("machine not named") : line->machine};
    if (!line->customer.isEmpty()) about << line->customer;
    if (line->isOpen) about << line->state;
    m_about->setText(about.join(u" · "_s));
    if (line->isCase())
        showCase(*line);
    else
        showYard(*line);
}

void RecordDetail::showCase(const RecordLine& line) {
    const StoredCase* stored = m_session.caseRecord(line.id);
    if (!stored) return;
    const CaseRecord& r = stored->record;
    const QString cause = causeWords(r.causeFound);
    const Tone tone = r.state == CaseState::Confirmed ? Tone::Ok : Tone::Plain;
    m_verdict->setVerdict(cause.isEmpty() ? tr("No cause found yet") : cause,
                          cause.isEmpty() ? QString() : tr("This case: %1.").arg(line.state), tone);
    m_list->setSections(sectionsOf(m_session, r));
}

void RecordDetail::showYard(const RecordLine& line) {
    const StoredYardRecord* stored = m_session.yardRecord(line.id);
    if (!stored) return;
    const bool isCatch = line.kind == LineKind::CatchTest;
    if (isCatch) {
        showBars(line);
    } else {
        const bool isGood = !line.isOpen && (line.kind == LineKind::Checklist ||
                                             answerOf(m_session, stored->record).isOk());
        m_verdict->setVerdict(line.outcome,
                              line.kind == LineKind::Checklist
                                  ? tr("A tick says that somebody looked, not that the machine "
                                       "passes an inspection.")
                                  : tr("As read; “give or take” holds 19 times in 20."),
                              isGood ? Tone::Ok : Tone::Plain);
    }
    m_list->setSections(sectionsOf(m_session, stored->record));
}

void RecordDetail::showBars(const RecordLine& line) {
    const YardRecord& record = m_session.yardRecord(line.id)->record;
    const NumberStyle style = styleOf(m_session, record);
    const auto summary = summaryOf(record.catchTest);
    m_bars->setVisible(summary.isOk());
    if (!summary) return m_verdict->setVerdict(tr("Nothing caught yet"), line.outcome, Tone::Plain);
    m_bars->setTest(record.catchTest, *summary, style);
    QString title = meanWords(*summary, style);
    title[0] = title[0].toUpper();
    const Flow spread = summary->mean.uncertainty * 2.0;
    QString text = tr("%1 caught, %2 on average, give or take %3.")
                       .arg(summary->nozzles.size())
                       .arg(shown(summary->mean.value, style), shown(spread, style));
    if (summary->cv)
        text +=
            tr(" Spread between nozzles (CV) %1 %.").arg(plainNumber(*summary->cv * 100, 1, style));
    if (summary->replaceSet) text += tr(" Replace the set.");
    const bool isOff =
        summary->replaceSet || std::any_of(summary->nozzles.begin(), summary->nozzles.end(),
                                           [](const CaughtNozzle& nozzle) {
                                               return nozzle.verdict != CatchVerdict::Good;
                                           });
    text.replace(u'/', u"/\u2060"_s);  // "L/min" stays whole at a line's end
    m_verdict->setVerdict(title, text, isOff ? Tone::Limit : Tone::Ok);
}

}  // namespace bw
