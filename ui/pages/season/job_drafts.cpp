// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/job_drafts.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/kit/quantity_format.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/undo/farm_session.h"

namespace bw {

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("JobDrafts", text);
}

}  // namespace

JobDrafts::JobDrafts(FarmSession& session, JobsModel& model) : m_session(session), m_model(model) {}

std::size_t JobDrafts::of(const StoredJob& stored) {
    for (std::size_t i = 0; i < m_drafts.size(); ++i) {
        if (m_drafts[i].before.id == stored.id && stored.id != 0) return i;
    }
    m_drafts.push_back({stored, stored, false, 0});
    return m_drafts.size() - 1;
}

std::size_t JobDrafts::ofNew(RecordId machine) {
    StoredJob stored;
    stored.machine = machine;
    stored.position = -1;  // at the end
    return of(stored);
}

void JobDrafts::put(std::size_t index, JobColumn column, const QString& text,
                    std::optional<Unit> bareUnit) {
    Draft& draft = m_drafts[index];
    const bool isNew = draft.before.id == 0;
    if (isNew && text.trimmed().isEmpty()) return;
    draft.isUsed = true;
    CellReading reading = m_model.readingOf(draft.after.machine);
    reading.bareUnit = bareUnit;
    if (const auto problem = setCell(draft.after.job, column, text, reading))
        m_refused.push_back({index, column, text, *problem});
    else
        ++m_taken;
}

bool JobDrafts::store(const QString& undoText) {
    std::vector<StoredJob> jobs;
    for (auto& draft : m_drafts) {
        if (!draft.isUsed) continue;
        auto& name = draft.after.job.name;
        if (draft.before.id == 0 && name.empty()) name = ss(words("New job"));
        if (!(draft.after == draft.before)) jobs.push_back(draft.after);
    }
    if (!jobs.empty()) {
        const auto done = m_session.editJobs(std::move(jobs), undoText);
        if (!done) {
            Q_EMIT m_model.notStored(done.problem());
            return false;
        }
    }
    listRefused();
    return true;
}

/// Key of a draft once it is stored: the new ones are the machine's last jobs, in their order.
RecordId JobDrafts::storedId(const Draft& draft) const {
    if (draft.before.id != 0) return draft.before.id;
    const RecordId machine = draft.after.machine;
    std::size_t behind = 0;
    for (const Draft* other = &draft; other != m_drafts.data() + m_drafts.size(); ++other) {
        if (other->isUsed && other->before.id == 0 && other->after.machine == machine) ++behind;
    }
    const auto jobs = m_session.jobsOf(machine);
    return behind <= jobs.size() ? jobs[jobs.size() - behind].id : 0;
}

QString JobDrafts::labelOf(const Draft& draft) const {
    const QString name = words("“%1”").arg(qs(draft.after.job.name));
    return draft.line > 0 ? words("Line %1, %2").arg(draft.line).arg(name) : name;
}

void JobDrafts::listRefused() {
    for (const auto& refused : m_refused) {
        const Draft& draft = m_drafts[refused.draft];
        const NumberStyle style = m_model.styleOf(draft.after.machine);
        m_refusedLines << words("%1, %2: %3")
                              .arg(labelOf(draft), wordsOf(refused.column),
                                   qs(m_session.sentences().of(refused.problem, style)));
        if (const RecordId id = storedId(draft); id != 0)
            m_model.refuse(draft.after.machine, id, refused.column, refused.typed, refused.problem);
    }
}

int JobDrafts::newJobs() const {
    return static_cast<int>(std::count_if(m_drafts.begin(), m_drafts.end(), [](const Draft& d) {
        return d.isUsed && d.before.id == 0;
    }));
}

}  // namespace bw
