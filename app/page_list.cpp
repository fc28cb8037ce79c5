// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/page_list.h"

#include <QCoreApplication>

#include "ui/pages/cause_effect/cause_effect_page.h"
#include "ui/pages/fault_finder/fault_finder_page.h"
#include "ui/pages/machine/machine_page.h"
#include "ui/pages/nozzles/nozzles_page.h"
#include "ui/pages/records/records_page.h"
#include "ui/pages/season/season_page.h"
#include "ui/pages/speed_window/speed_window_page.h"
#include "ui/pages/start/start_page.h"
#include "ui/pages/yard/yard_page.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PageList", text);
}

/// An entry whose page needs the session alone.
template <class P>
PageEntry page(const QString& id, const QString& title, const QString& icon, const QString& group,
               int number) {
    const QKeySequence key(u"Ctrl+%1"_s.arg(number));
    return {id,    title, icon,
            group, key,   [](FarmSession& session) -> Page* { return new P(session); }};
}

QStringList idsOf(const std::vector<PageEntry>& pages) {
    QStringList ids;
    for (const auto& entry : pages) ids.append(entry.id);
    return ids;
}

/// A record leads to the page that it was made on, if there is one.
PageEntry recordsPage(const std::vector<PageEntry>& others) {
    return {u"records"_s,
            tr("Records"),
            u"records"_s,
            tr("Keep"),
            QKeySequence(u"Ctrl+8"_s),
            [ids = idsOf(others)](FarmSession& session) -> Page* {
                return new RecordsPage(session, ids);
            }};
}

/// The start page names only what there is: it is told the others' ids.
PageEntry startPage(const std::vector<PageEntry>& others) {
    return {u"start"_s,
            tr("Start"),
            u"start"_s,
            {},
            QKeySequence(u"Ctrl+0"_s),
            [ids = idsOf(others)](FarmSession& session) -> Page* {
                return new StartPage(session, ids);
            }};
}

}  // namespace

std::vector<PageEntry> makePageList() {
    std::vector<PageEntry> pages;
    pages.push_back(page<MachinePage>(u"machine"_s, tr("Machine"), u"machine"_s, tr("Plan"), 1));
    pages.push_back(page<NozzlesPage>(u"nozzles"_s, tr("Nozzles"), u"nozzle"_s, tr("Plan"), 2));
    pages.push_back(page<SeasonPage>(u"season"_s, tr("Season"), u"season"_s, tr("Plan"), 3));
    pages.push_back(
        page<SpeedWindowPage>(u"speed_window"_s, tr("Speed window"), u"window"_s, tr("Plan"), 4));
    pages.push_back(page<CauseEffectPage>(u"cause_effect"_s, tr("Cause and effect"), u"cause"_s,
                                          tr("Teach"), 5));
    pages.push_back(
        page<FaultFinderPage>(u"fault_finder"_s, tr("Fault finder"), u"finder"_s, tr("Fix"), 6));
    pages.push_back(page<YardPage>(u"yard_checks"_s, tr("Yard checks"), u"yard"_s, tr("Fix"), 7));
    pages.push_back(recordsPage(pages));
    pages.insert(pages.begin(), startPage(pages));
    return pages;
}

}  // namespace bw
