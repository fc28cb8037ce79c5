// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/choice_foot.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/season/season_words.h"
#include "core/season/set_words.h"
#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/foot_parts.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr std::size_t kMostChanges = 2;  ///< ways out told for one job
constexpr int kMostLeft = 12;            ///< jobs told one by one

QString money(double sum, const NumberStyle& style) {
    return plainNumber(sum, 2, style);
}

/// How many jobs of a machine there are, and how many of them the plan covers.
std::pair<int, int> countOf(const SetChoice& choice, RecordId machine) {
    int all = 0, held = 0;
    for (const auto& job : choice.season.jobs) all += job.machine == machine ? 1 : 0;
    for (const auto& run : choice.plan.runs) held += run.machine == machine ? 1 : 0;
    return {held, all};
}

int setsOf(const SetPlan& plan, RecordId machine) {
    return static_cast<int>(std::count_if(plan.sets.begin(), plan.sets.end(), [&](const auto& set) {
        return std::any_of(set.machines.begin(), set.machines.end(),
                           [&](const FittedSet& f) { return f.machine == machine; });
    }));
}

}  // namespace

ChoiceFoot::ChoiceFoot(FarmSession& session, QWidget* parent)
    : QScrollArea(parent), m_session(session), m_content(new RolePanel(Role::Raised)) {
    setObjectName(u"season.choice"_s);
    setAccessibleName(tr("The nozzle sets chosen"));
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    m_panels = new QHBoxLayout(m_content);
    m_panels->setContentsMargins(0, 0, 0, 0);
    m_panels->setSpacing(0);
    setWidget(m_content);
    setMinimumHeight(px(64));
}

void ChoiceFoot::clear() {
    while (QLayoutItem* item = m_panels->takeAt(0)) {
        delete item->widget();
        delete item;
    }
}

QVBoxLayout* ChoiceFoot::addPanel(const QString& name, const QString& title, int stretch) {
    if (m_panels->count() > 0) m_panels->addWidget(new HairLine(Qt::Vertical));
    auto* panel = new QWidget;
    panel->setObjectName(u"season.choice."_s + name);
    panel->setMinimumWidth(px(250));
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(px(16), px(8), px(14), px(8));
    column->setSpacing(px(4));
    auto* head = new TextLabel(title, TextSize::Body, Role::Ink, true);
    head->setObjectName(panel->objectName() + u".title"_s);
    column->addWidget(head->wrapped());
    m_panels->addWidget(panel, stretch);
    return column;
}

void ChoiceFoot::showProgress(int percent) {
    clear();
    auto* column = addPanel(u"progress"_s, tr("Choosing the sets: %1 %").arg(percent), 1);
    column->addWidget(footText(tr("Ctrl+F5 gives it up; the table stays as it is."), Role::Quiet));
    column->addStretch(1);
}

void ChoiceFoot::showChoice(const SetChoice& choice, const std::vector<RecordId>& machines) {
    clear();
    if (choice.end != SolveEnd::Optimal) {
        const QString what =
            choice.end == SolveEnd::Infeasible
                ? tr("The nozzle bodies do not carry all the sets that the jobs need at once")
                : tr("No choice could be worked out");
        auto* column = addPanel(u"none"_s, what, 1);
        column->addWidget(footText(
            choice.end == SolveEnd::Infeasible
                ? tr("Let sets be changed between jobs (Wishes), or give the machine more "
                     "positions on its bodies.")
                : tr("The table and its verdicts are right as they stand. Change a job or a "
                     "nozzle and choose again."),
            Role::Quiet));
        column->addStretch(1);
        return;
    }
    for (const RecordId machine : machines) addMachine(choice, machine);
    addRest(choice, machines);
}

void ChoiceFoot::addMachine(const SetChoice& choice, RecordId machine) {
    const Machine* m = m_session.machine(machine);
    if (!m) return;
    const auto [held, all] = countOf(choice, machine);
    const int sets = setsOf(choice.plan, machine);
    const QString words =
        sets == 1 ? tr("%1: 1 set holds %2 of %3 jobs") : tr("%1: %4 sets hold %2 of %3 jobs");
    QString title = words.arg(qs(m->name)).arg(held).arg(all);
    if (sets != 1) title = title.arg(sets);
    auto* column = addPanel(u"machine%1"_s.arg(machine), title, 3);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(px(8));
    grid->setVerticalSpacing(px(3));
    grid->setColumnStretch(1, 1);
    for (const auto& set : choice.plan.sets) {
        for (const auto& fitted : set.machines) {
            if (fitted.machine == machine) addSet(*grid, set, fitted);
        }
    }
    column->addLayout(grid);
    column->addStretch(1);
}

/// Chip, name with its jobs, area, price; below it what would happen without it.
void ChoiceFoot::addSet(QGridLayout& grid, const ChosenSet& set, const FittedSet& fitted) {
    const Machine* machine = m_session.machine(fitted.machine);
    const NumberStyle style = m_session.styleOf(*machine);
    const Nozzle* nozzle = m_session.nozzleNamed(set.nozzle);
    const int row = grid.rowCount();
    if (nozzle && !nozzle->sizeCode.empty())
        grid.addWidget(new NozzleChip(qs(nozzle->sizeCode)), row, 0, Qt::AlignTop);
    auto* words = new QVBoxLayout;
    words->setSpacing(px(1));
    words->addWidget(footText(u"<b>%1</b> · %2"_s.arg(
        qs(set.nozzle).toHtmlEscaped(), jobNames(m_session, fitted.jobs).toHtmlEscaped())));
    const QString lost = without(set, fitted.machine);
    if (!lost.isEmpty()) words->addWidget(footText(lost, Role::Quiet));
    grid.addLayout(words, row, 1);
    Area area;
    for (const RecordId id : fitted.jobs) {
        if (const Job* job = m_session.job(id)) area += valueOr(job->area, Area{});
    }
    if (area.si() > 0)
        grid.addWidget(new TextLabel(shown(area, style), TextSize::Small), row, 2,
                       Qt::AlignTop | Qt::AlignRight);
    const QString price = fitted.isOwned ? tr("owned")
                          : fitted.price ? money(*fitted.price, style)
                          : nozzle       ? tr("price?")
                                         : QString();
    grid.addWidget(new TextLabel(price, TextSize::Small, Role::Ink, true), row, 3,
                   Qt::AlignTop | Qt::AlignRight);
}

/// "Without it: …", the jobs of that machine that would then go otherwise.
QString ChoiceFoot::without(const ChosenSet& set, RecordId machine) const {
    const Machine* m = m_session.machine(machine);
    QStringList words;
    for (const auto& change : set.without) {
        const Job* job = m_session.job(change.before.job);
        if (change.before.machine != machine || !job) continue;
        if (const auto fact = jobChangeFact(change, job->name))
            words << qs(m_session.sentences().of(*fact, m_session.styleOf(*m)));
    }
    return words.isEmpty() ? QString() : tr("Without it: %1").arg(words.join(u' '));
}

void ChoiceFoot::addRest(const SetChoice& choice, const std::vector<RecordId>& machines) {
    int open = 0;
    for (const auto& left : choice.uncovered)
        open += std::count(machines.begin(), machines.end(), left.machine) > 0 ? 1 : 0;
    const QString title = open == 0   ? tr("No job is left over")
                          : open == 1 ? tr("1 job is left over")
                                      : tr("%1 jobs are left over").arg(open);
    auto* column = addPanel(u"rest"_s, title, 4);
    int said = 0;
    for (const auto& left : choice.uncovered) {
        if (std::count(machines.begin(), machines.end(), left.machine) == 0) continue;
        if (said++ < kMostLeft) addLeftOver(*column, left);
    }
    addCost(*column, choice.plan);
    for (const auto& alternative : choice.alternatives) {
        QStringList words;
        for (const auto& fact : alternativeFacts(alternative))
            words << qs(m_session.sentences().of(fact, m_session.currentStyle()));
        column->addLayout(footRow(u"nozzle"_s, Role::Quiet, words.join(u' '), Role::Ink));
    }
    addNotChecked(*column, choice);
    column->addStretch(1);
}

void ChoiceFoot::addLeftOver(QVBoxLayout& column, const UncoveredJob& left) {
    const Job* job = m_session.job(left.job);
    const Machine* machine = m_session.machine(left.machine);
    if (!job || !machine) return;
    const NumberStyle style = m_session.styleOf(*machine);
    QString head = qs(job->name).toHtmlEscaped();
    if (job->area) head += u", "_s + shown(job->area->value, style);
    QStringList words{u"<b>%1.</b>"_s.arg(head),
                      qs(m_session.sentences().of(left.why, style)).toHtmlEscaped()};
    for (std::size_t i = 0; i < std::min(left.changes.size(), kMostChanges); ++i)
        words << qs(m_session.sentences().of(changeFact(left.changes[i]), style)).toHtmlEscaped();
    column.addLayout(footRow(u"outside"_s, Role::Limit, words.join(u' '), Role::Ink));
}

void ChoiceFoot::addCost(QVBoxLayout& column, const SetPlan& plan) {
    const NumberStyle style = m_session.currentStyle();
    int toBuy = 0, spares = 0;
    for (const auto& set : plan.sets) {
        toBuy += set.toBuy;
        spares += set.toBuy > 0 ? set.spares : 0;
    }
    QString text = toBuy == 0 ? tr("Nothing to buy: every set is owned.")
                              : tr("To buy: %1 nozzles").arg(toBuy);
    if (spares > 0) text += tr(", %1 of them spares").arg(spares);
    if (toBuy > 0 && plan.price)
        text += tr(": %1 at the prices entered.").arg(money(*plan.price, style));
    if (toBuy > 0 && !plan.price) {
        QStringList names;
        for (const auto& name : plan.unpriced) names << qs(name);
        text +=
            tr(". No price is entered for %1, so the sum is not known.").arg(names.join(u", "_s));
    }
    if (plan.room) text += u' ' + tr("Least room to spare: %1.").arg(percent(*plan.room, style));
    column.addLayout(footRow(u"season"_s, Role::Quiet, text, Role::Ink));
}

void ChoiceFoot::addNotChecked(QVBoxLayout& column, const SetChoice& choice) {
    const auto say = [&](const std::vector<Limit>& limits, const QString& words) {
        if (limits.empty()) return;
        QStringList names;
        for (const Limit limit : limits)
            names << qs(m_session.sentences().text(limitWord(limit).code));
        column.addLayout(footRow(u"unchecked"_s, Role::Unchecked, words.arg(names.join(u", "_s)),
                                 Role::Unchecked));
    };
    say(choice.takenUnchecked, tr("Taken unchecked, as you accept it: %1."));
    say(choice.machineGaps, tr("Not checked, the machine does not say: %1."));
}

void ChoiceFoot::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    // Wrapped texts need their height anew at the new width.
    m_content->updateGeometry();
}

}  // namespace bw
