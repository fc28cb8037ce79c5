// SPDX-License-Identifier: GPL-3.0-or-later
#include <QEventLoop>
#include <QSplitter>
#include <QStackedLayout>
#include <algorithm>

#include "core/exchange/json_wishes.h"
#include "core/store/farm_file.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/choice_foot.h"
#include "ui/pages/season/choice_runner.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/matrix_model.h"
#include "ui/pages/season/season_page.h"
#include "ui/pages/season/season_runner.h"
#include "ui/pages/season/wishes_dialog.h"
#include "ui/undo/farm_session.h"

/// The choice of nozzle sets on the season page.
namespace bw {

using namespace Qt::StringLiterals;

void SeasonPage::choose() {
    if (session().season().machines.empty()) return;
    m_wantsChoice = true;
    m_feet->setCurrentWidget(m_choiceFoot);
    const QList<int> now = m_heights->sizes();
    const int whole = now.value(0) + now.value(1);
    const int foot = std::max(now.value(1), std::min(px(230), whole / 2));
    m_heights->setSizes({whole - foot, foot});
    chooseAgain();
}

/// Where nothing has changed since the last choice, that one stands.
void SeasonPage::chooseAgain() {
    if (!m_runner->result() || m_runner->isRunning()) return;
    SetWishes wishes = keptWishes(session());
    const auto aboard = setsAboard(session().season().machines);
    wishes.owned.insert(wishes.owned.end(), aboard.begin(), aboard.end());
    const Machine* inHand = session().machine(session().currentMachine());
    wishes.roundIn = inHand ? inHand->units : UnitSystem::Metric;
    const std::string asked = toJson(wishes);
    const auto before = m_choice->result();
    if (before && asked == m_wishesChosen && before->season.inputs == m_runner->result()->inputs)
        return showChoice();
    m_wishesChosen = asked;
    m_choice->run(m_runner->result()->inputs, std::move(wishes), m_runner->shared());
}

void SeasonPage::showChoice() {
    if (!m_wantsChoice) return;
    const auto choice = m_choice->result();
    if (!choice) return leaveChoice();
    const bool holds = choice->end == SolveEnd::Optimal;
    m_model->setChoice(holds ? choice : nullptr);
    m_matrixModel->setChoice(holds ? choice : nullptr);
    m_choiceFoot->showChoice(*choice, machinesShown());
}

void SeasonPage::leaveChoice() {
    if (!m_wantsChoice) return;
    m_wantsChoice = false;
    m_choice->cancel();
    m_model->setChoice(nullptr);
    m_matrixModel->setChoice(nullptr);
    m_choiceFoot->clear();
    m_feet->setCurrentIndex(0);
}

QStringList SeasonPage::pictureStates() const {
    return {u"choice"_s};
}

void SeasonPage::showState(const QString&) {
    QEventLoop wait;
    connect(m_choice, &ChoiceRunner::finished, &wait, &QEventLoop::quit);
    choose();
    if (m_runner->isRunning() || m_choice->isRunning()) wait.exec();
}

void SeasonPage::askWishes() {
    WishesDialog dialog(session(), keptWishes(session()), this);
    if (dialog.exec() != QDialog::Accepted) return;
    const auto kept = session().file().setSetting(u"season.wishes"_s,
                                                  QString::fromStdString(toJson(dialog.wishes())));
    if (!kept) {
        Q_EMIT notice(qs(session().sentences().of(kept.problem(), session().currentStyle())), true);
        return;
    }
    choose();
}

}  // namespace bw
