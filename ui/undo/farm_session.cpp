// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/undo/farm_session.h"

#include <QTimer>
#include <algorithm>
#include <utility>

#include "core/model/nozzle_sizes.h"
#include "core/store/farm_file.h"
#include "ui/undo/mirror.h"
#include "ui/undo/session_command.h"

namespace bw {

FarmSession::FarmSession(std::unique_ptr<FarmFile> file, QObject* parent)
    : QObject(parent),
      m_file(std::move(file)),
      m_clock([] { return QDateTime::currentDateTime(); }),
      m_sentences(Sentences::shipped()) {
    load();
    if (!m_season.machines.empty()) m_currentMachine = m_season.machines.front().id;
    if (!m_season.nozzles.empty()) m_currentNozzle = m_season.nozzles.front().id;
    m_currentJob = firstJobOf(m_currentMachine);
}

FarmSession::~FarmSession() = default;

void FarmSession::load() {
    m_problems = m_file->notices();
    m_noticesSeen = m_problems.size();
    auto contents = m_file->read();
    if (!contents) {
        m_problems.push_back(contents.problem());
        return;
    }
    m_season = std::move(contents.value().season);
    m_cases = std::move(contents.value().cases);
    m_customers = std::move(contents.value().customers);
    m_yard = std::move(contents.value().yard);
    tellSetAside(contents.value().setAside);
}

/// The first few by name; a file full of odd records must not fill the window with them.
void FarmSession::tellSetAside(const std::vector<Problem>& setAside) {
    constexpr std::size_t kNamed = 3;
    const std::size_t named = std::min(setAside.size(), kNamed);
    m_problems.insert(m_problems.end(), setAside.begin(),
                      setAside.begin() + static_cast<std::ptrdiff_t>(named));
    if (named == setAside.size()) return;
    const std::string count = std::to_string(setAside.size() - named);
    m_problems.push_back(warning("records_set_aside_more", {}, {{"count", count}}));
}

QString FarmSession::path() const {
    return m_file->path();
}

void FarmSession::setClock(std::function<QDateTime()> clock) {
    m_clock = std::move(clock);
}

// Looking

const Machine* FarmSession::machine(RecordId id) const {
    const auto* stored = recordOf(m_season.machines, id);
    return stored ? &stored->machine : nullptr;
}

const Job* FarmSession::job(RecordId id) const {
    const auto* stored = recordOf(m_season.jobs, id);
    return stored ? &stored->job : nullptr;
}

const Nozzle* FarmSession::nozzle(RecordId id) const {
    const auto* stored = recordOf(m_season.nozzles, id);
    return stored ? &stored->nozzle : nullptr;
}

const StoredCase* FarmSession::caseRecord(RecordId id) const {
    return recordOf(m_cases, id);
}

const StoredYardRecord* FarmSession::yardRecord(RecordId id) const {
    return recordOf(m_yard, id);
}

const Nozzle* FarmSession::nozzleNamed(const std::string& name) const {
    for (const auto& own : m_season.nozzles) {
        if (own.nozzle.name == name) return &own.nozzle;
    }
    for (const auto& builtIn : builtInNozzles()) {
        if (builtIn.name == name) return &builtIn;
    }
    return nullptr;
}

std::vector<StoredJob> FarmSession::jobsOf(RecordId machine) const {
    std::vector<StoredJob> out;
    std::copy_if(m_season.jobs.begin(), m_season.jobs.end(), std::back_inserter(out),
                 [&](const StoredJob& job) { return job.machine == machine; });
    return out;
}

// Storing, showing, telling

Outcome FarmSession::perform(const std::vector<RecordChange>& changes) {
    if (auto stored = m_file->apply(changes); !stored) return stored;
    show(changes, {m_season, m_cases, m_customers, m_yard});
    announce(changes);
    return Done{};
}

Outcome FarmSession::performAsStep(std::vector<RecordChange> changes, const QString& undoText) {
    std::erase_if(changes, changesNothing);
    if (changes.empty()) return Done{};
    if (auto done = perform(changes); !done) return done;
    m_undo.push(new SessionCommand(*this, std::move(changes), undoText));
    return Done{};
}

bool FarmSession::replay(const std::vector<RecordChange>& changes) {
    // After one failure nothing more is replayed until the stack stands where the file does: a
    // later step would be laid on records that the failed one did not restore.
    if (m_stackShouldBeAt) return false;
    const auto done = perform(changes);
    if (done) return true;
    m_stackShouldBeAt = m_undo.index();
    // The stack moves its index once this returns; it is put right from the event loop.
    QTimer::singleShot(0, this, [this] {
        m_undo.setIndex(*m_stackShouldBeAt);
        m_stackShouldBeAt.reset();
    });
    Q_EMIT failed(done.problem());
    return false;
}

void FarmSession::announce(const std::vector<RecordChange>& changes) {
    bool season = false;
    bool cases = false;
    bool customers = false;
    bool yard = false;
    for (const auto& change : changes) {
        if (std::holds_alternative<Change<StoredCase>>(change)) {
            cases = true;
        } else if (std::holds_alternative<Change<StoredCustomer>>(change)) {
            customers = true;
        } else if (std::holds_alternative<Change<StoredYardRecord>>(change)) {
            yard = true;
        } else {
            season = true;
        }
    }
    const std::vector<Problem>& notices = m_file->notices();
    const std::vector<Problem> fresh(notices.begin() + static_cast<std::ptrdiff_t>(m_noticesSeen),
                                     notices.end());
    m_noticesSeen = notices.size();
    m_problems.insert(m_problems.end(), fresh.begin(), fresh.end());
    keepSelection();
    if (season) Q_EMIT seasonChanged();
    if (cases) Q_EMIT casesChanged();
    if (customers) Q_EMIT customersChanged();
    if (yard) Q_EMIT yardChanged();
    Q_EMIT saved();
    for (const auto& notice : fresh) Q_EMIT noticed(notice);
}

// What is in hand

RecordId FarmSession::firstJobOf(RecordId machine) const {
    for (const auto& job : m_season.jobs) {
        if (job.machine == machine) return job.id;
    }
    return 0;
}

/// What is in hand must exist, the job belong to the machine, and an empty hand takes the first.
void FarmSession::keepSelection() {
    const auto before = std::tuple(m_currentMachine, m_currentJob, m_currentNozzle);
    const auto first = [](const auto& records) { return records.empty() ? 0 : records.front().id; };
    if (!machine(m_currentMachine)) m_currentMachine = first(m_season.machines);
    const auto* inHand = recordOf(m_season.jobs, m_currentJob);
    if (!inHand || inHand->machine != m_currentMachine) m_currentJob = firstJobOf(m_currentMachine);
    if (!nozzle(m_currentNozzle)) m_currentNozzle = first(m_season.nozzles);
    if (before != std::tuple(m_currentMachine, m_currentJob, m_currentNozzle)) {
        Q_EMIT selectionChanged();
    }
}

void FarmSession::setCurrentMachine(RecordId id) {
    if (id == m_currentMachine || !machine(id)) return;
    m_currentMachine = id;
    m_currentJob = firstJobOf(id);
    Q_EMIT selectionChanged();
}

void FarmSession::setCurrentJob(RecordId id) {
    const auto* stored = recordOf(m_season.jobs, id);
    if (id == m_currentJob || !stored) return;
    m_currentJob = id;
    m_currentMachine = stored->machine;
    Q_EMIT selectionChanged();
}

void FarmSession::setCurrentNozzle(RecordId id) {
    if (id == m_currentNozzle || !nozzle(id)) return;
    m_currentNozzle = id;
    Q_EMIT selectionChanged();
}

NumberStyle FarmSession::styleOf(const Machine& machine) const {
    return {m_shownUnits.value_or(machine.units), m_decimalMark};
}

NumberStyle FarmSession::currentStyle() const {
    const Machine* inHand = machine(m_currentMachine);
    if (inHand) return styleOf(*inHand);
    return {m_shownUnits.value_or(UnitSystem::Metric), m_decimalMark};
}

void FarmSession::setShownUnits(std::optional<UnitSystem> units) {
    if (units == m_shownUnits) return;
    m_shownUnits = units;
    Q_EMIT styleChanged();
}

void FarmSession::setDecimalMark(char mark) {
    if (mark == m_decimalMark) return;
    m_decimalMark = mark;
    Q_EMIT styleChanged();
}

}  // namespace bw
