// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/actions.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/jobs_table.h"
#include "ui/pages/season/matrix_view.h"
#include "ui/pages/season/season_edits.h"
#include "ui/pages/season/season_header.h"
#include "ui/pages/season/season_page.h"

/// The commands of the page: its menu, its keys, and the menu of the table.
namespace bw {

using namespace Qt::StringLiterals;

void SeasonPage::buildRowActions() {
    const auto add = [this](const ActionInfo& info, std::function<void()> act) {
        m_table->addAction(addPageAction(this, info, std::move(act)));
    };
    const auto cells = [this] { return m_table->selectionModel()->selectedIndexes(); };
    add({u"season.add"_s, tr("New job"), u"plus"_s, QKeySequence(Qt::Key_Insert),
         tr("A new job under the one in hand")},
        [this] { m_edits->add(m_table->currentIndex()); });
    add({u"season.duplicate"_s, tr("Duplicate job"), {}, QKeySequence(u"Ctrl+Shift+D"_s), {}},
        [this] { m_edits->duplicate(m_table->currentIndex(), false); });
    add({u"season.strip"_s,
         tr("Duplicate job as a strip"),
         {},
         QKeySequence(u"Ctrl+Alt+D"_s),
         tr("A second line of the job, with a drift class of its own")},
        [this] { m_edits->duplicate(m_table->currentIndex(), true); });
    add({u"season.remove"_s, tr("Remove jobs"), u"delete"_s, QKeySequence(u"Ctrl+Del"_s), {}},
        [this, cells] { m_edits->remove(cells()); });
    add({u"season.up"_s, tr("Move jobs up"), {}, QKeySequence(u"Alt+Up"_s), {}},
        [this, cells] { m_edits->move(cells(), -1); });
    add({u"season.down"_s, tr("Move jobs down"), {}, QKeySequence(u"Alt+Down"_s), {}},
        [this, cells] { m_edits->move(cells(), 1); });
    add({u"season.fill"_s,
         tr("Fill down"),
         {},
         QKeySequence(u"Ctrl+D"_s),
         tr("The top cells of the selection go into those below")},
        [this, cells] { m_edits->fillDown(cells()); });
    add({u"season.copyHeaded"_s,
         tr("Copy with headings"),
         u"copy"_s,
         QKeySequence(u"Ctrl+Shift+C"_s),
         {}},
        [this] { copy(true); });
    m_table->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void SeasonPage::buildActions() {
    addPageAction(this,
                  {u"season.choose"_s, tr("Choose sets"), u"nozzle"_s, QKeySequence(Qt::Key_F5),
                   tr("The fewest nozzle sets that hold every job")},
                  [this] { choose(); });
    addPageAction(this,
                  {u"season.wishes"_s,
                   tr("Wishes for the choice of sets…"),
                   {},
                   QKeySequence(u"Shift+F5"_s),
                   tr("Nozzles ruled out, sets owned, spares")},
                  [this] { askWishes(); });
    addPageAction(this,
                  {u"season.leaveChoice"_s,
                   tr("Leave the choice of sets"),
                   {},
                   QKeySequence(u"Ctrl+F5"_s),
                   tr("Back to what is best for each job by itself")},
                  [this] { leaveChoice(); });
    addPageAction(
        this,
        {u"season.filter"_s, tr("Find a job"), u"find"_s, QKeySequence(u"Ctrl+Shift+F"_s), {}},
        [this] {
            if (m_header) m_header->focusFilter();
        });
    addPageAction(this,
                  {u"season.matrix"_s,
                   tr("Show or hide the nozzles"),
                   u"nozzle"_s,
                   QKeySequence(u"Ctrl+Shift+M"_s),
                   {}},
                  [this] { setMatrixShown(m_matrix->isHidden()); });
    addPageAction(this,
                  {u"season.rates"_s,
                   tr("Columns for a range of rates"),
                   {},
                   QKeySequence(u"Ctrl+Shift+R"_s),
                   tr("Least and highest rate of a map, two rates or the % key")},
                  [this] {
                      m_wantsRates = !m_wantsRates;
                      showRateColumns();
                  });
    addPageAction(this,
                  {u"season.open"_s,
                   tr("Speed window of the job"),
                   u"window"_s,
                   QKeySequence(u"Ctrl+Return"_s),
                   {}},
                  [this] {
                      const bool ofMatrix = m_matrix->hasFocus();
                      openWindow(ofMatrix ? m_matrix->currentIndex() : m_table->currentIndex(),
                                 ofMatrix);
                  });
}

}  // namespace bw
