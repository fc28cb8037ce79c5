// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/start/start_page.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/pages/start/role_card.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

bool holdsDemo(const Season& season) {
    return std::any_of(season.machines.begin(), season.machines.end(),
                       [](const StoredMachine& m) { return m.machine.isDemo; });
}

qsizetype openCases(const std::vector<StoredCase>& cases) {
    return std::count_if(cases.begin(), cases.end(),
                         [](const StoredCase& c) { return c.record.state == CaseState::Open; });
}

/// What a scroll area holds: at least as tall as its wrapped words ask for at its width.
class TallContent : public QWidget {
  protected:
    void resizeEvent(QResizeEvent* event) override {
        QWidget::resizeEvent(event);
        fit();
    }
    bool event(QEvent* event) override {
        const bool handled = QWidget::event(event);
        if (event->type() == QEvent::LayoutRequest) fit();
        return handled;
    }

  private:
    void fit() { setMinimumHeight(layout()->totalHeightForWidth(width())); }
};

}  // namespace

StartPage::StartPage(FarmSession& session, const QStringList& pages, QWidget* parent)
    : Page(session, parent), m_pageIds(pages) {
    setObjectName(u"start"_s);
    auto* content = new TallContent;
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(px(28), px(24), px(28), px(20));
    column->setSpacing(px(14));
    column->addWidget(new TextLabel(tr("What is to be done?"), TextSize::Verdict, Role::Ink, true));
    m_firstStart = buildFirstStart();
    m_demoNote = buildDemoNote();
    column->addWidget(m_firstStart);
    column->addWidget(m_demoNote);
    auto* row = new QHBoxLayout;
    row->setSpacing(px(16));
    addCards(*row);
    column->addLayout(row);
    column->addStretch(1);
    const QString defer =
        tr("Boomwright calculates and permits nothing. Label, machine handbook, local law and "
           "trained or licensed people decide.");
    column->addWidget((new TextLabel(defer, TextSize::Small, Role::Quiet))->wrapped());
    scroll->setWidget(content);
}

QWidget* StartPage::buildFirstStart() {
    auto* panel = new RolePanel(Role::AccentTint);
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(px(18), px(14), px(18), px(16));
    column->setSpacing(px(10));
    column->addWidget((new TextLabel(tr("This file is empty: it begins with a machine."),
                                     TextSize::Lead, Role::Ink, true))
                          ->wrapped());
    column->addWidget(
        (new TextLabel(tr("A class and ten questions are enough; what you do not know is assumed "
                          "and says so. Or look around first: the demo season is invented, marked "
                          "so, and opens as a copy that is thrown away.")))
            ->wrapped());
    auto* row = new QHBoxLayout;
    row->setSpacing(px(10));
    auto* begin = new Button(tr("Begin with my machine"), u"machine"_s, Button::Kind::Primary);
    auto* demo = new Button(tr("Look at the demo season"), u"season"_s);
    begin->setObjectName(u"start.first.machine"_s);
    demo->setObjectName(u"start.first.demo"_s);
    if (!has(u"machine"_s)) begin->hide();
    row->addWidget(begin);
    row->addWidget(demo);
    row->addStretch(1);
    column->addLayout(row);
    connect(begin, &QAbstractButton::clicked, this, [this] { Q_EMIT goTo(u"machine"_s); });
    connect(demo, &QAbstractButton::clicked, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    return panel;
}

QWidget* StartPage::buildDemoNote() {
    auto* panel = new RolePanel(Role::AccentTint);
    auto* row = new QHBoxLayout(panel);
    row->setContentsMargins(px(18), px(10), px(12), px(10));
    row->setSpacing(px(12));
    row->addWidget(
        (new TextLabel(
             tr("Demo data: farms, machines and nozzles here are invented. Change what you like.")))
            ->wrapped(),
        1);
    auto* own = new Button(tr("Work in my own file"), u"open"_s);
    own->setObjectName(u"start.demo.leave"_s);
    row->addWidget(own);
    connect(own, &QAbstractButton::clicked, this, [this] { Q_EMIT goTo(u"file.leaveDemo"_s); });
    return panel;
}

void StartPage::addCards(QBoxLayout& row) {
    const bool plans = has(u"season"_s) || has(u"speed_window"_s) || has(u"machine"_s);
    if (plans) row.addWidget(m_plan = planCard(), 1);
    if (has(u"fault_finder"_s)) row.addWidget(m_fix = fixCard(), 1);
    if (has(u"speed_window"_s)) row.addWidget(m_teach = teachCard(), 1);
}

RoleCard* StartPage::planCard() {
    auto* card =
        new RoleCard(RolePicture::Kind::Plan, tr("Plan"),
                     tr("Which nozzle set serves which job, and between which speeds it holds the "
                        "rate."));
    way(*card, tr("Season"), u"season"_s, u"season"_s, QKeySequence(u"Ctrl+3"_s), true);
    way(*card, tr("Speed window"), u"window"_s, u"speed_window"_s, QKeySequence(u"Ctrl+4"_s),
        false);
    way(*card, tr("Machine"), u"machine"_s, u"machine"_s, QKeySequence(u"Ctrl+1"_s), false);
    way(*card, tr("Nozzles"), u"nozzle"_s, u"nozzles"_s, QKeySequence(u"Ctrl+2"_s), false);
    return card;
}

RoleCard* StartPage::fixCard() {
    auto* card = new RoleCard(
        RolePicture::Kind::Fix, tr("Fix"),
        tr("The rate hunts, is stuck high or stuck low. Numbers first, then one question at a time "
           "with the figure due on this machine, to the most likely cause."));
    way(*card, tr("New call"), u"phone"_s, u"call.new"_s, QKeySequence(u"F9"_s), true);
    way(*card, tr("Cases so far"), u"finder"_s, u"fault_finder"_s, QKeySequence(u"Ctrl+6"_s),
        false);
    return card;
}

RoleCard* StartPage::teachCard() {
    auto* card =
        new RoleCard(RolePicture::Kind::Teach, tr("Teach"),
                     tr("Drag the speed and see the pressure follow its square, until the floor, "
                        "the nozzle or the pump stops it. The sentence beside it says why."));
    way(*card, tr("Show it on the speed window"), u"window"_s, u"speed_window"_s,
        QKeySequence(u"Ctrl+4"_s), true);
    way(*card, tr("The running loop, with faults"), u"cause"_s, u"cause_effect"_s,
        QKeySequence(u"Ctrl+5"_s), false);
    return card;
}

Button* StartPage::way(RoleCard& card, const QString& text, const QString& icon,
                       const QString& target, const QKeySequence& key, bool isFirst) {
    const bool isCommand = target.contains(u'.');
    if (!isCommand && !has(target)) return nullptr;
    Button* button = card.addDeed(text, icon, key, isFirst);
    button->setObjectName(u"start."_s + target + (isFirst ? u".first"_s : u""_s));
    connect(button, &QAbstractButton::clicked, this, [this, target] { Q_EMIT goTo(target); });
    return button;
}

void StartPage::refresh() {
    const Season& season = session().season();
    const bool isEmpty = season.machines.empty();
    m_firstStart->setVisible(isEmpty);
    m_demoNote->setVisible(!isEmpty && holdsDemo(season));
    if (m_plan) {
        const auto machines = static_cast<int>(season.machines.size()),
                   jobs = static_cast<int>(season.jobs.size());
        m_plan->state()->setText(
            isEmpty ? tr("No machine yet")
                    : tr("In this file: %1, %2")
                          .arg(machines == 1 ? tr("1 machine") : tr("%1 machines").arg(machines),
                               jobs == 1 ? tr("1 job") : tr("%1 jobs").arg(jobs)));
    }
    if (m_fix) {
        const auto all = static_cast<int>(session().cases().size());
        const auto open = static_cast<int>(openCases(session().cases()));
        m_fix->state()->setText(
            all == 0 ? tr("No case yet. A caller whose machine is not in the file is welcome.")
                     : tr("Cases: %1, still open: %2").arg(all).arg(open));
    }
    if (m_teach) m_teach->state()->setText(tr("On the machines and jobs of this file"));
}

}  // namespace bw
