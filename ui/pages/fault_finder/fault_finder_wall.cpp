// SPDX-License-Identifier: GPL-3.0-or-later
// The call on a wall.
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/end_card.h"
#include "ui/pages/fault_finder/fault_finder_page.h"
#include "ui/pages/fault_finder/finder_wall.h"
#include "ui/pages/fault_finder/numbers_form.h"
#include "ui/pages/fault_finder/question_card.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

QWidget* FaultFinderPage::makeWallView() {
    auto* wall = new FinderWall;
    QuestionCard& card = wall->card();
    connect(&card, &QuestionCard::answered, this, &FaultFinderPage::answer);
    connect(&card, &QuestionCard::figureGiven, this,
            [this](AnyQuantity value, const QString& typed) {
                observeNow({m_card->content().id.toStdString(), {}, value, typed.toStdString()});
            });
    connect(&card, &QuestionCard::otherTyped, this, &FaultFinderPage::otherTyped);
    connect(&card, &QuestionCard::returned, this, [this] { goOn(); });
    connectNumbers(&wall->numbers());
    connect(&wall->end(), &EndCard::stateChosen, this, &FaultFinderPage::setState);
    connect(&wall->end(), &EndCard::backWanted, this, &FaultFinderPage::askOn);
    connect(wall, &FinderWall::backWanted, this, &FaultFinderPage::takeBack);
    return wall;
}

void FaultFinderPage::connectNumbers(NumbersForm* form) {
    connect(form, &NumbersForm::finished, this, [this] { answerStart(u"numbers"_s); });
    connect(form, &NumbersForm::unitsChosen, this, [this, form](UnitSystem units) {
        CaseRecord record = m_view->record();
        form->writeInto(record);
        record.machine.units = units;
        changed(std::move(record), Step::Numbers);
    });
}

/// The form that is filled in: on the wall it is the wall's.
NumbersForm& FaultFinderPage::numbersInHand() {
    auto* onWall = static_cast<FinderWall*>(wall());
    return onWall ? onWall->numbers() : *m_numbers;
}

/// Machines and jobs by their numbers: what somebody called them has no place on a wall.
CardContent FaultFinderPage::withoutNames(CardContent card) const {
    const bool isMachine = card.id == u"start.machine"_s, isJob = card.id == u"start.job"_s;
    int number = 0;
    for (CardAnswer& answer : card.answers) {
        const bool isRecord = answer.id.toLongLong() != 0;
        if (!isRecord || (!isMachine && !isJob)) continue;
        ++number;
        answer.text = isMachine ? tr("Machine %1").arg(number) : tr("Job %1").arg(number);
        if (!answer.meaning.isEmpty()) answer.text += u": "_s + answer.meaning;
        answer.meaning.clear();
    }
    return card;
}

void FaultFinderPage::tellWall() {
    auto* onWall = static_cast<FinderWall*>(wall());
    if (!onWall) return;
    if (!m_hasCase || !m_view) return onWall->showNoCall();
    if (m_cards->currentWidget() == m_numbers) return onWall->showNumbers(*m_view);
    if (m_cards->currentWidget() == m_end)
        return onWall->showEnd(*m_view,
                               std::max(m_view->record().minutes, isTiming() ? minutesNow() : 0));
    onWall->showCard(*m_view, withoutNames(m_card->content()));
}

}  // namespace bw
