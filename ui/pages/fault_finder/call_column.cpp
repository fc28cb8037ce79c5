// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/call_column.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/flow_picture.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

struct NumberRow {
    QString label;
    QString read;
    QString needed;
};

template <class Q>
QString figureOr(const std::optional<Q>& value, const NumberStyle& style) {
    return value ? figure(*value, style) : QString();
}

template <class Q>
QString labelled(const char* label, const NumberStyle& style) {
    return CallColumn::tr(label) + u", "_s + unitOf<Q>(style);
}

bool hasColumn(const std::string& check) {
    return check == choiceName(Reading::ShownRate) || check == choiceName(Reading::ShownFlow) ||
           check == choiceName(Reading::SensorPressure) || check == kSpeedRead;
}

template <class Q>
std::optional<Q> readOf(const CaseNumbers& n, Reading reading) {
    const auto si = n.reading(reading);
    return si ? std::optional<Q>(Q::fromSi(*si)) : std::nullopt;
}

std::vector<NumberRow> numberRows(const CaseView& view) {
    const CaseNumbers& n = view.numbers();
    const NumberStyle& s = view.style();
    std::vector<NumberRow> rows;
    rows.push_back({labelled<AreaRate>("Rate", s),
                    figureOr(readOf<AreaRate>(n, Reading::ShownRate), s), figureOr(n.rate, s)});
    rows.push_back({labelled<Speed>("Speed", s), n.speedWasRead ? figureOr(n.speed, s) : QString(),
                    n.speedWasRead ? QString() : figureOr(n.speed, s)});
    rows.push_back({labelled<Flow>("Flow", s), figureOr(readOf<Flow>(n, Reading::ShownFlow), s),
                    figureOr(n.needFlow, s)});
    rows.push_back({labelled<Pressure>("Boom", s),
                    figureOr(readOf<Pressure>(n, Reading::SensorPressure), s),
                    figureOr(n.needSensor, s)});
    for (const auto& observation : view.record().observations) {
        if (observation.reading && !hasColumn(observation.check))
            rows.push_back({view.shortName(observation.check), view.answerText(observation), {}});
    }
    return rows;
}

/// What the sums wait for.
QString noSums(const CaseView& view) {
    if (view.numbers().needSensor)
        return CallColumn::tr(
            "<b>Sums.</b> What is needed is known; flow and pressure read while it "
            "is wrong would tell more.");
    return CallColumn::tr(
        "<b>Sums.</b> Rate, speed, spacing and nozzle give the pressure that is "
        "needed; too few of them are known yet.");
}

}  // namespace

CallColumn::CallColumn(QWidget* parent)
    : QWidget(parent),
      m_said(new QGridLayout),
      m_numbers(new QGridLayout),
      m_dose(new CautionBox),
      m_sums(new TextLabel),
      m_conflicts(new TextLabel({}, TextSize::Body, Role::Limit)),
      m_picture(new FlowPicture) {
    setFixedWidth(px(250));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    row->addWidget(scroll, 1);
    row->addWidget(new HairLine(Qt::Vertical));
    auto* paper = new RolePanel(Role::Surface);
    scroll->setWidget(paper);
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(16), px(9), px(10), px(8));
    column->setSpacing(px(5));
    column->addWidget(new TextLabel(tr("Before anything else"), TextSize::Body, Role::Ink, true));
    column->addLayout(m_said);
    column->addWidget(new HairLine);
    column->addWidget(new TextLabel(tr("Numbers of the call"), TextSize::Body, Role::Ink, true));
    column->addLayout(m_numbers);
    m_dose->setObjectName(u"finder.call.dose"_s);
    column->addWidget(m_dose);
    column->addWidget(new HairLine);
    m_sums->setObjectName(u"finder.call.sums"_s);
    m_sums->setTextFormat(Qt::RichText);
    column->addWidget(m_sums->wrapped());
    m_conflicts->setObjectName(u"finder.call.conflicts"_s);
    column->addWidget(m_conflicts->wrapped());
    m_picture->setObjectName(u"finder.call.picture"_s);
    column->addWidget(m_picture);
    column->addStretch(1);
    for (QGridLayout* grid : {m_said, m_numbers}) {
        grid->setHorizontalSpacing(px(8));
        grid->setVerticalSpacing(px(3));
    }
    m_said->setColumnStretch(1, 1);
    m_numbers->setColumnStretch(0, 1);
}

void CallColumn::setView(const CaseView& view) {
    showSaid(view);
    showNumbers(view);
    showSums(view);
    m_picture->setView(view);
}

void CallColumn::clear(QGridLayout* grid) {
    while (auto* item = grid->takeAt(0)) {
        if (item->widget()) {
            item->widget()->hide();
            item->widget()->deleteLater();
        }
        delete item;
    }
}

void CallColumn::addSaid(int row, const QString& label, const QString& text, Step step,
                         const QString& name) {
    auto* what = new TextLabel(label, TextSize::Small, Role::Quiet);
    m_said->addWidget(what, row, 0, Qt::AlignTop);
    auto* link = new TextLabel;
    link->setObjectName(u"finder.call."_s + name);
    link->setTextFormat(Qt::RichText);
    link->setText(u"<a style=\"text-decoration:none; color:%1\" href=\"x\">%2</a>"_s.arg(
        color(Role::Ink).name(), text.toHtmlEscaped()));
    link->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
    link->setToolTip(tr("Answer this again"));
    link->setAccessibleName(label + u": "_s + text);
    connect(link, &QLabel::linkActivated, this, [this, step] { Q_EMIT changeWanted(step); });
    m_said->addWidget(link->wrapped(), row, 1);
}

void CallColumn::showSaid(const CaseView& view) {
    clear(m_said);
    const CaseRecord& r = view.record();
    const auto orOpen = [](const std::string& text) {
        return text.empty() ? tr("not asked yet") : qs(text);
    };
    addSaid(0, tr("Complaint"), r.symptom ? symptomName(*r.symptom) : tr("not asked yet"),
            Step::Symptom, u"symptom"_s);
    addSaid(1, tr("In the tank"), safetyWords(u"tank"_s, r.tank), Step::Tank, u"tank"_s);
    addSaid(2, tr("With caller"), safetyWords(u"company"_s, r.company), Step::Company,
            u"company"_s);
    addSaid(3, tr("Where"), safetyWords(u"place"_s, r.place), Step::Place, u"place"_s);
    addSaid(4, tr("Machine"), orOpen(r.machine.name), Step::Machine, u"machine"_s);
    if (r.machineId == 0) return;
    addSaid(5, tr("Job"), orOpen(r.job.name), Step::Job, u"job"_s);
    addSaid(6, tr("Nozzle"), orOpen(r.nozzle.name), Step::Nozzle, u"nozzle"_s);
}

void CallColumn::showNumbers(const CaseView& view) {
    clear(m_numbers);
    const auto head = [&](const QString& text, int column, Role role) {
        m_numbers->addWidget(new TextLabel(text, TextSize::Small, role), 0, column, Qt::AlignRight);
    };
    head(tr("read"), 1, Role::Quiet);
    head(tr("needed"), 2, Role::Target);
    int row = 1;
    for (const auto& number : numberRows(view)) {
        auto* label = new TextLabel(number.label);
        m_numbers->addWidget(label, row, 0);
        m_numbers->addWidget(new TextLabel(number.read, TextSize::Body, Role::Ink, true), row, 1,
                             Qt::AlignRight);
        m_numbers->addWidget(new TextLabel(number.needed, TextSize::Body, Role::Target), row, 2,
                             Qt::AlignRight);
        ++row;
    }
    const auto& n = view.numbers();
    int nozzles = 0;
    for (const int section : n.sections) nozzles += section;
    QStringList about;
    if (nozzles > 0) about.append(tr("%1 nozzles").arg(nozzles));
    if (n.floor) about.append(tr("floor %1").arg(shown(*n.floor, view.style())));
    if (n.ceiling) about.append(tr("ceiling %1").arg(shown(*n.ceiling, view.style())));
    if (n.position && n.restrictorFitted.value_or(false))
        about.append(*n.position == RestrictorPosition::FullBore ? tr("restrictor valve full bore")
                                                                 : tr("restrictor valve narrowed"));
    auto* change = new TextLabel({}, TextSize::Small, Role::Quiet);
    change->setObjectName(u"finder.call.numbers"_s);
    change->setTextFormat(Qt::RichText);
    change->setText(u"%1 <a href=\"x\">%2</a>"_s.arg(about.join(u" · "_s).toHtmlEscaped(),
                                                     tr("change the numbers")));
    change->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
    connect(change, &QLabel::linkActivated, this, [this] { Q_EMIT changeWanted(Step::Numbers); });
    m_numbers->addWidget(change->wrapped(), row, 0, 1, 3);
}

void CallColumn::showSums(const CaseView& view) {
    QStringList sums;
    QStringList doses;
    for (const auto& fact : view.state().sums) {
        if (fact.code.starts_with("finder.dose."))
            doses.append(view.words(fact).toHtmlEscaped());
        else if (!fact.code.starts_with("finder.sum.need"))  // the table above has it
            sums.append(view.words(fact).toHtmlEscaped());
    }
    m_dose->setTexts(doses);
    m_sums->setText(sums.isEmpty() ? noSums(view) : tr("<b>Sums.</b> ") + sums.join(u' '));
    QStringList conflicts;
    for (const auto& problem : view.state().conflicts) conflicts.append(view.words(problem));
    m_conflicts->setText(conflicts.join(u"\n"_s));
    m_conflicts->setVisible(!conflicts.isEmpty());
}

}  // namespace bw
