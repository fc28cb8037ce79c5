// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together; what it does stands in fault_finder_page.cpp and call_steps.cpp.
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"
#include "ui/pages/fault_finder/call_column.h"
#include "ui/pages/fault_finder/case_list.h"
#include "ui/pages/fault_finder/end_card.h"
#include "ui/pages/fault_finder/fault_finder_page.h"
#include "ui/pages/fault_finder/numbers_form.h"
#include "ui/pages/fault_finder/question_card.h"
#include "ui/pages/fault_finder/reading_bar.h"
#include "ui/pages/fault_finder/standing_column.h"
#include "ui/pages/fault_finder/way_pipe.h"

namespace bw {

using namespace Qt::StringLiterals;

void FaultFinderPage::buildHeader() {
    m_tools = new QWidget;
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(12));
    m_caseLabel = new TextLabel({}, TextSize::Body, Role::Quiet);
    m_caseLabel->setObjectName(u"finder.header.case"_s);
    m_caseLabel->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_caseLabel, 1);
    m_clock = new TextLabel({}, TextSize::Lead, Role::Ink, true);
    m_clock->setObjectName(u"finder.header.clock"_s);
    m_clock->setToolTip(tr("Time spent on this case"));
    row->addWidget(m_clock);
    m_backButton = new Button(tr("Take back"), u"back"_s);
    m_backButton->setObjectName(u"finder.header.takeBack"_s);
    m_backButton->setKey(Qt::Key_Backspace, false);
    row->addWidget(m_backButton);
    m_listButton = new Button(tr("Cases"), u"records"_s);
    m_listButton->setObjectName(u"finder.header.cases"_s);
    m_listButton->setKey(Qt::Key_F8, false);
    row->addWidget(m_listButton);
    connect(m_backButton, &QAbstractButton::clicked, this, &FaultFinderPage::takeBack);
    connect(m_listButton, &QAbstractButton::clicked, this, &FaultFinderPage::showList);
}

QWidget* FaultFinderPage::buildCall() {
    auto* call = new QWidget;
    auto* row = new QHBoxLayout(call);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_left = new CallColumn;
    row->addWidget(m_left);
    auto* middle = new QVBoxLayout;
    middle->setSpacing(0);
    m_cards = new QStackedWidget;
    m_card = new QuestionCard;
    m_numbers = new NumbersForm;
    m_end = new EndCard;
    m_cards->addWidget(m_card);
    m_cards->addWidget(m_numbers);
    m_cards->addWidget(m_end);
    middle->addWidget(m_cards, 1);
    m_reading = new ReadingBar;
    middle->addWidget(m_reading);
    middle->addWidget(new HairLine);
    m_way = new WayPipe;
    middle->addWidget(m_way);
    row->addLayout(middle, 1);
    m_right = new StandingColumn;
    row->addWidget(m_right);
    connect(m_card, &QuestionCard::answered, this, &FaultFinderPage::answer);
    connect(m_card, &QuestionCard::figureGiven, this,
            [this](AnyQuantity value, const QString& typed) {
                observeNow({m_card->content().id.toStdString(), {}, value, typed.toStdString()});
            });
    connect(m_card, &QuestionCard::otherTyped, this, &FaultFinderPage::otherTyped);
    connect(m_card, &QuestionCard::returned, this, [this] { goOn(); });
    connectNumbers(m_numbers);
    connect(m_end, &EndCard::stateChosen, this, &FaultFinderPage::setState);
    connect(m_end, &EndCard::backWanted, this, &FaultFinderPage::askOn);
    connect(m_reading, &ReadingBar::given, this, &FaultFinderPage::observeNow);
    connect(m_reading, &ReadingBar::closed, this, &FaultFinderPage::focusStep);
    connect(m_left, &CallColumn::changeWanted, this, [this](Step step) {
        m_isAgain = true;
        showStep(step);
    });
    connect(m_way, &WayPipe::stopChosen, this, &FaultFinderPage::changeAnswer);
    return call;
}

void FaultFinderPage::addActions() {
    addPageAction(this, {u"finder.newCall"_s, tr("&New call"), u"phone"_s, {}, {}},
                  [this] { newCall(); });
    addPageAction(this,
                  {u"finder.takeBack"_s,
                   tr("&Take the last answer back"),
                   u"back"_s,
                   QKeySequence(Qt::Key_Backspace),
                   {}},
                  [this] { takeBack(); });
    addPageAction(this,
                  {u"finder.reading"_s, tr("Any &reading"), u"plus"_s, QKeySequence(Qt::Key_R), {}},
                  [this] { openReading(); });
    addPageAction(
        this,
        {u"finder.howTo"_s, tr("&How to do this check"), u"help"_s, QKeySequence(Qt::Key_H), {}},
        [this] { m_card->toggleHowTo(); });
    addPageAction(
        this, {u"finder.why"_s, tr("&Why this check"), u"finder"_s, QKeySequence(Qt::Key_W), {}},
        [this] { m_card->toggleWhy(); });
    addPageAction(this,
                  {u"finder.cases"_s, tr("&Cases"), u"records"_s, QKeySequence(Qt::Key_F8), {}},
                  [this] { showList(); });
}

}  // namespace bw
