// SPDX-License-Identifier: GPL-3.0-or-later
// What the page has to print: the job in hand with the nozzle in hand, and all of the machine.
#include "core/model/nozzle_sizes.h"
#include "core/report/plan_sheets.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/speed_window_page.h"
#include "ui/print/print_dialog.h"
#include "ui/undo/farm_session.h"

namespace bw {

namespace {

std::vector<PlannedJob> plannedJobs(const FarmSession& session, RecordId machineId,
                                    const Machine& machine) {
    std::vector<Nozzle> own;
    for (const auto& stored : session.season().nozzles) own.push_back(stored.nozzle);
    std::vector<PlannedJob> out;
    for (const auto& stored : session.jobsOf(machineId))
        out.push_back(plannedJob(machine, stored.job, own, builtInNozzles()));
    return out;
}

}  // namespace

void SpeedWindowPage::offerPrint() {
    const RecordId id = session().currentMachine();
    const Machine* machine = session().machine(id);
    if (!machine || session().jobsOf(id).empty()) {
        Q_EMIT notice(tr("There is no job to print yet."), false);
        return;
    }
    // The dialog outlives what is in hand: every offer works on copies.
    const ReportContext context = reportContext(session(), *machine);
    std::vector<SheetOffer> offers;
    if (m_study->state == WindowStudy::State::Ready)
        offers.push_back({tr("Cab card of %1").arg(qs(m_study->job.name)),
                          [model = m_study->model(), context] { return cabCard(model, context); }});
    const auto planned =
        std::make_shared<std::vector<PlannedJob>>(plannedJobs(session(), id, *machine));
    offers.push_back({tr("Cab cards of all jobs"), [machine = *machine, planned, context] {
                          return cabCards(machine, *planned, context);
                      }});
    offers.push_back({tr("All jobs in one table"), [machine = *machine, planned, context] {
                          return machineOverview(machine, *planned, context);
                      }});
    PrintDialog::show(session(), context.style.units, std::move(offers), this);
}

}  // namespace bw
