// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/finder_wall.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QStackedWidget>

#include "ui/kit/actions.h"
#include "ui/kit/metrics.h"
#include "ui/pages/fault_finder/end_card.h"
#include "ui/pages/fault_finder/numbers_form.h"
#include "ui/pages/fault_finder/question_card.h"
#include "ui/pages/fault_finder/standing_column.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Narrower than this (at a body of 12) question and bars take turns.
constexpr double kBesideFrom = 620, kSide = 172;
constexpr std::size_t kMostBars = 6;
/// With more answers than these their meanings are left out, so that they stay in one picture.
constexpr std::size_t kMostWithMeaning = 2;

QWidget* noCall() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->addStretch(1);
    auto* words = new TextLabel(
        FinderWall::tr("The rate hunts, is stuck high or stuck low. F9 begins with the complaint."),
        TextSize::Verdict, Role::Ink, true);
    words->setObjectName(u"finder.wall.noCall"_s);
    column->addWidget(words->wrapped());
    column->addStretch(2);
    return box;
}

}  // namespace

FinderWall::FinderWall(QWidget* parent)
    : QWidget(parent),
      m_steps(new QStackedWidget),
      m_noCall(noCall()),
      m_card(new QuestionCard),
      m_numbers(new NumbersForm),
      m_end(new EndCard),
      m_side(new QWidget),
      m_bars(new CauseBars) {
    setObjectName(u"finder.wall"_s);
    setFocusPolicy(Qt::StrongFocus);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(8));
    for (QWidget* step : std::initializer_list<QWidget*>{m_noCall, m_card, m_numbers, m_end})
        m_steps->addWidget(step);
    // The step in hand has the room there is; the others, out of sight, ask for none.
    m_steps->setMinimumWidth(1);
    row->addWidget(m_steps, 1);
    auto* side = new QVBoxLayout(m_side);
    side->setContentsMargins(0, px(8), 0, 0);
    side->setSpacing(px(6));
    side->addWidget(
        (new TextLabel(tr("Most likely so far"), TextSize::Lead, Role::Ink, true))->wrapped());
    m_bars->setObjectName(u"finder.wall.bars"_s);
    side->addWidget(m_bars);
    side->addStretch(1);
    row->addWidget(m_side);
    addActions();
}

void FinderWall::addActions() {
    const auto add = [&](const char* id, const QString& text, const QString& words,
                         const QKeySequence& key, std::function<void()> act) {
        QAction* action = addPageAction(
            this, {u"finder.wall."_s + QLatin1StringView(id), text, {}, key, {}}, std::move(act));
        action->setIconText(words);
        return action;
    };
    m_barsAction = add("bars", tr("Bars alone, or the question"), tr("bars"), Qt::Key_B,
                       [this] { arrange(); });
    m_barsAction->setCheckable(true);
    add("howTo", tr("How to do this check"), tr("how to"), Qt::Key_H,
        [this] { m_card->toggleHowTo(); });
    add("why", tr("Why this check"), tr("why"), Qt::Key_W, [this] { m_card->toggleWhy(); });
    add("takeBack", tr("Take the last answer back"), tr("take back"), Qt::Key_Backspace,
        [this] { Q_EMIT backWanted(); });
}

void FinderWall::showStep(QWidget* step, const CaseView* view) {
    m_allBars = view ? barsOf(*view, kMostBars) : std::vector<CauseBar>();
    for (CauseBar& bar : m_allBars) bar.members.clear();
    m_steps->setCurrentWidget(step);
    m_barsAction->setChecked(false);
    for (QAction* action : actions()) action->setEnabled(view != nullptr);
    m_barsAction->setEnabled(!m_allBars.empty());
    arrange();
    takeFocus();
}

void FinderWall::showNoCall() {
    showStep(m_noCall, nullptr);
}

void FinderWall::showCard(const CaseView& view, const CardContent& content) {
    CardContent card = content;
    if (card.answers.size() > kMostWithMeaning) {
        for (CardAnswer& answer : card.answers) answer.meaning.clear();
    }
    m_card->setContent(card, view.style());
    showStep(m_card, &view);
}

void FinderWall::showNumbers(const CaseView& view) {
    m_numbers->setRecord(view.record(), view.style());
    showStep(m_numbers, &view);
}

void FinderWall::showEnd(const CaseView& view, int minutes) {
    m_end->setView(view, minutes);
    showStep(m_end, &view);
}

/// Both side by side, or one after the other; without bars the question has all the room.
void FinderWall::arrange() {
    const bool isBeside = width() >= px(kBesideFrom);
    const bool isBars = m_barsAction->isChecked();
    const bool hasBars = !m_allBars.empty();
    m_side->setMaximumWidth(isBars ? QWIDGETSIZE_MAX : px(kSide));
    m_side->setMinimumWidth(px(kSide));
    m_side->setVisible(hasBars && (isBeside || isBars));
    m_steps->setVisible(!isBars || !hasBars);
    fitBars(isBars ? width() : px(kSide));
    if (!m_steps->isVisible()) setFocus(Qt::OtherFocusReason);
}

/// As many as there is room for, the likeliest first.
void FinderWall::fitBars(int width) {
    auto bars = m_allBars;
    m_bars->setBars(bars);
    const int room = height() - px(48);
    while (bars.size() > 1 && m_bars->heightForWidth(width) > room) {
        bars.pop_back();
        m_bars->setBars(bars);
    }
}

void FinderWall::takeFocus() {
    if (!isVisible() || m_steps->isHidden()) return;
    if (m_steps->currentWidget() == m_card) m_card->takeFocus();
    if (m_steps->currentWidget() == m_numbers) m_numbers->takeFocus();
    if (m_steps->currentWidget() == m_end) m_end->takeFocus();
}

void FinderWall::keyPressEvent(QKeyEvent* event) {
    const int digit = event->key() - Qt::Key_0;
    const auto modifiers = event->modifiers() & ~Qt::KeypadModifier;
    if (modifiers == Qt::NoModifier && digit >= 1 && digit <= 9) {
        if (m_steps->currentWidget() == m_card && m_card->press(digit)) return;
        if (m_steps->currentWidget() == m_end && m_end->press(digit)) return;
    }
    QWidget::keyPressEvent(event);
}

void FinderWall::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    takeFocus();
}

void FinderWall::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

}  // namespace bw
