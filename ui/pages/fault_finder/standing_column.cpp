// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/standing_column.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/evidence.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/cause_bars.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr std::size_t kMostBars = 9;
constexpr qsizetype kMostReasons = 3;
constexpr qsizetype kMostGone = 14;

CauseBar barOf(const CaseView& view, const Finding& finding) {
    CauseBar bar;
    bar.name = view.nameOf(finding);
    // Something else can never be ruled out.
    bar.word = finding.isSomethingElse && finding.word() == Likeliness::NoLonger
                   ? wordOf(Likeliness::LessLikely)
                   : wordOf(finding.word());
    bar.share = finding.probability;
    bar.isSomethingElse = finding.isSomethingElse;
    bar.isStrong = finding.word() == Likeliness::Likely;
    QStringList members;
    for (const auto& id : finding.causes) {
        const Cause* cause = Knowledge::shipped().cause(id);
        if (cause && finding.causes.size() > 1) members.append(qs(cause->name));
    }
    constexpr qsizetype kNamed = 3;
    const qsizetype others = members.size() - kNamed;
    members = members.mid(0, kNamed);
    bar.members = members.join(u" · "_s);
    if (others > 0) bar.members += StandingColumn::tr(" and %1 more").arg(others);
    return bar;
}

EvidenceRow rowOf(const QString& icon, const QString& text, const QString& quiet = {},
                  Role role = Role::Ink) {
    EvidenceRow row;
    row.icon = icon;
    row.iconRole = role;
    row.text = text;
    row.quiet = quiet;
    return row;
}

EvidenceSection gone(const CaseView& view) {
    QStringList names;
    for (const auto& finding : view.findings()) {
        if (finding.word() == Likeliness::NoLonger && !finding.isSomethingElse)
            names.append(view.nameOf(finding));
    }
    const qsizetype others = names.size() - kMostGone;
    names = names.mid(0, kMostGone);
    QString text = names.join(u" · "_s);
    if (others > 0) text += StandingColumn::tr(" and %1 more").arg(others);
    return {StandingColumn::tr("Hardly or no longer fit"), {rowOf({}, {}, text)}};
}

EvidenceSection reasons(const CaseView& view) {
    EvidenceSection section;
    const Finding& first = view.findings().front();
    section.title = StandingColumn::tr("What speaks for the first, or against");
    for (const auto& standing : view.state().standing) {
        if (first.causes.empty() || standing.cause != first.causes.front()) continue;
        for (const auto& fact : standing.why) {
            if (section.rows.size() == kMostReasons) break;
            section.rows.append(rowOf(u"finder"_s, view.words(fact)));
        }
    }
    return section;
}

EvidenceSection parts(const CaseView& view, const NextCheck& next) {
    EvidenceSection section{StandingColumn::tr("This check parts"), {}};
    for (const auto& fact : next.why)
        section.rows.append(
            rowOf(fact.code.starts_with("finder.next.parts") ? u"cause"_s : u"clock"_s,
                  view.words(fact)));
    return section;
}

EvidenceSection behind() {
    const QString text = StandingColumn::tr(
        "Start: trade judgement. Readings: this machine's sums, as far as its "
        "numbers are known. Not proved on farms.");
    return {StandingColumn::tr("What stands behind the bars"),
            {rowOf(u"unchecked"_s, {}, text, Role::Unchecked)}};
}

}  // namespace

std::vector<CauseBar> barsOf(const CaseView& view, std::size_t most) {
    std::vector<CauseBar> bars;
    if (!view.record().symptom && !view.state().symptomFromNumbers) return bars;
    for (const auto& finding : view.findings()) {
        const bool fits = finding.word() != Likeliness::NoLonger || finding.isSomethingElse;
        if (fits && bars.size() < most) bars.push_back(barOf(view, finding));
    }
    return bars;
}

StandingColumn::StandingColumn(QWidget* parent)
    : QWidget(parent),
      m_among(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_bars(new CauseBars),
      m_list(new EvidenceList) {
    setFixedWidth(px(300));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(new HairLine(Qt::Vertical));
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    row->addWidget(scroll, 1);
    auto* paper = new RolePanel(Role::Surface);
    scroll->setWidget(paper);
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(0, px(9), 0, px(8));
    column->setSpacing(px(3));
    auto* top = new QVBoxLayout;
    top->setContentsMargins(px(14), 0, px(12), 0);
    top->setSpacing(px(3));
    top->addWidget(new TextLabel(tr("Most likely so far"), TextSize::Lead, Role::Ink, true));
    m_among->setObjectName(u"finder.standing.among"_s);
    top->addWidget(m_among->wrapped());
    top->addSpacing(px(4));
    m_bars->setObjectName(u"finder.standing.bars"_s);
    top->addWidget(m_bars);
    column->addLayout(top);
    m_list->setObjectName(u"finder.standing.list"_s);
    column->addWidget(m_list);
    column->addStretch(1);
}

void StandingColumn::setView(const CaseView& view, const NextCheck* inHand) {
    const auto symptom =
        view.record().symptom ? view.record().symptom : view.state().symptomFromNumbers;
    m_among->setText(
        view.findings().empty() ? tr("not covered yet")
        : symptom ? tr("among causes of “%1” and what fits the numbers").arg(symptomName(*symptom))
                  : tr("The bars begin with the complaint."));
    m_bars->setBars(barsOf(view, kMostBars));
    QVector<EvidenceSection> sections;
    if (symptom && !view.findings().empty()) {
        if (inHand) sections.append(parts(view, *inHand));
        if (auto why = reasons(view); !why.rows.isEmpty()) sections.append(why);
        if (auto left = gone(view); !left.rows.first().quiet.isEmpty()) sections.append(left);
    }
    sections.append(behind());
    m_list->setSections(sections);
}

}  // namespace bw
