// SPDX-License-Identifier: GPL-3.0-or-later
// What the page puts on a wall, and what it tells the trainer.
#include <algorithm>
#include <cmath>

#include "core/store/farm_file.h"
#include "ui/pages/speed_window/evidence_text.h"
#include "ui/pages/speed_window/speed_window_page.h"
#include "ui/pages/speed_window/window_wall.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString htmlOf(const EvidenceRow& row) {
    QStringList parts;
    if (!row.strong.isEmpty()) parts.append(u"<b>"_s + row.strong.toHtmlEscaped() + u"</b>"_s);
    if (!row.text.isEmpty()) parts.append(row.text.toHtmlEscaped());
    if (!row.quiet.isEmpty()) parts.append(u"<i>"_s + row.quiet.toHtmlEscaped() + u"</i>"_s);
    return u"<li>"_s + parts.join(u' ') + u"</li>"_s;
}

}  // namespace

QWidget* SpeedWindowPage::makeWallView() {
    auto* wall = new WindowWall(session().sentences());
    connect(wall, &WindowWall::cursorStepped, this, &SpeedWindowPage::stepCursor);
    connect(wall, &WindowWall::cursorMoved, this,
            [this](double x) { moveCursor(m_study->speedAt(x)); });
    connect(wall, &WindowWall::nextJobWanted, this, &SpeedWindowPage::nextJob);
    connect(wall, &WindowWall::nextNozzleWanted, this, &SpeedWindowPage::nextNozzle);
    return wall;
}

void SpeedWindowPage::tellWall() {
    Q_EMIT truthChanged();
    auto* onWall = static_cast<WindowWall*>(wall());
    if (!onWall) return;
    if (m_study->state == WindowStudy::State::Ready)
        onWall->setStudy(*m_study, verdictText(*m_study, session().sentences()));
    else
        onWall->setEmpty(tr("No speed window yet. It needs a machine, a job and a nozzle."));
}

void SpeedWindowPage::stepCursor(int steps) {
    if (m_study->state != WindowStudy::State::Ready) return;
    const double x = m_study->x(m_cursor) + steps * kCursorStep;
    moveCursor(m_study->speedAt(std::clamp(std::round(x / kCursorStep) * kCursorStep,
                                           std::max(m_study->xFrom, kCursorStep), m_study->xTo)));
}

/// The next job of the machine, and after its last the first.
void SpeedWindowPage::nextJob() {
    const auto jobs = session().jobsOf(session().currentMachine());
    if (jobs.empty()) return;
    auto next = std::find_if(jobs.begin(), jobs.end(), [this](const StoredJob& stored) {
        return stored.id == session().currentJob();
    });
    if (next == jobs.end() || ++next == jobs.end()) next = jobs.begin();
    session().setCurrentJob(next->id);
}

void SpeedWindowPage::nextNozzle() {
    if (m_study->nozzles.size() < 2) return;
    const std::size_t next = (m_study->inHand + 1) % m_study->nozzles.size();
    takeNozzle(QString::fromStdString(m_study->nozzles[next].nozzle.name));
}

/// What is not checked, and what the verdict rests on.
QString SpeedWindowPage::trainerTruth() const {
    if (m_study->state != WindowStudy::State::Ready) return {};
    const VerdictText verdict = verdictText(*m_study, session().sentences());
    QString html = u"<p><b>"_s + verdict.title.toHtmlEscaped() + u"</b> "_s +
                   verdict.text.toHtmlEscaped() + u"</p>"_s;
    for (const auto& section : groundsOf(*m_study, session().sentences())) {
        html += u"<p><b>"_s + section.title.toHtmlEscaped() + u"</b></p><ul>"_s;
        for (const auto& row : section.rows) html += htmlOf(row);
        html += u"</ul>"_s;
    }
    return html;
}

}  // namespace bw
