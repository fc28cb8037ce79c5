// SPDX-License-Identifier: GPL-3.0-or-later
// What the page has to print: what is in hand.
#include <QStackedWidget>

#include "core/report/yard_sheets.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/catch_pane.h"
#include "ui/pages/yard/check_pane.h"
#include "ui/pages/yard/checklist_pane.h"
#include "ui/pages/yard/yard_page.h"
#include "ui/print/print_dialog.h"
#include "ui/undo/farm_session.h"

namespace bw {

void YardPage::offerPrint() {
    const Machine* now = machine();
    if (!now) return;
    m_check->commitPending();
    m_catch->commitPending();
    // The dialog outlives what is in hand: every offer works on copies.
    const ReportContext context = reportContext(session(), *now);
    std::vector<SheetOffer> offers;
    if (m_panes->currentWidget() == m_catch) {
        offers.push_back(
            {tr("Catch test"), [record = m_catch->recordToPrint(), machine = *now, context] {
                 return catchSheet(record, machine, context);
             }});
    } else if (m_panes->currentWidget() == m_checklist) {
        const ChecklistPart* part = m_checklist->part();
        if (!part) return;
        offers.push_back({qs(part->title),
                          [part = *part, record = m_checklist->record(), machine = *now, context] {
                              return checklistSheet(part, record, machine, context);
                          }});
    } else if (const YardCheckText* check = m_check->check()) {
        offers.push_back(
            {qs(check->title), [check, record = m_check->record(), machine = *now, context] {
                 return checkSheet(*check, record, machine, context);
             }});
    }
    PrintDialog::show(session(), context.style.units, std::move(offers), this);
}

}  // namespace bw
