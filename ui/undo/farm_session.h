// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/model/case_record.h"
#include "core/model/season.h"
#include "core/store/record_change.h"
#include "core/text/sentences.h"

namespace bw {

class FarmFile;

/// The open farm file as the pages see it: a mirror of what is stored, the only door through which
/// anything is changed, undo and redo, and what is in hand. Every edit is stored in one transaction
/// before it appears here; if storing fails nothing changes and the problem comes back.
/// Lives on the UI thread. Undo texts are in the user's words ("floor 1.6 bar").
class FarmSession : public QObject {
    Q_OBJECT

  public:
    /// Takes an open file and reads it.
    FarmSession(std::unique_ptr<FarmFile> file, QObject* parent = nullptr);
    ~FarmSession() override;

    const Season& season() const { return m_season; }
    const std::vector<StoredCase>& cases() const { return m_cases; }
    const std::vector<StoredCustomer>& customers() const { return m_customers; }
    const std::vector<StoredYardRecord>& yardRecords() const { return m_yard; }
    /// What the user should know since opening: notices of the file, records set aside.
    const std::vector<Problem>& problems() const { return m_problems; }
    const Machine* machine(RecordId id) const;
    const Job* job(RecordId id) const;
    const Nozzle* nozzle(RecordId id) const;
    const StoredCase* caseRecord(RecordId id) const;
    const StoredYardRecord* yardRecord(RecordId id) const;
    /// The nozzle of a name, among own ones first, then the built-in sizes. Good until the next
    /// change.
    const Nozzle* nozzleNamed(const std::string& name) const;
    std::vector<StoredJob> jobsOf(RecordId machine) const;

    // Each edit: one undo step, one transaction. Return the new record's id, or Done. An edit that
    // changes nothing makes no step. Problems: record_gone, nozzle_name_taken (own nozzles are
    // referred to by name), and those of FarmFile::apply.
    Result<RecordId> addMachine(Machine machine, const QString& undoText);
    Outcome editMachine(RecordId id, Machine after, const QString& undoText);
    Outcome removeMachine(RecordId id,
                          const QString& undoText);  ///< with its jobs; cases keep their copy
    Result<RecordId> addNozzle(Nozzle nozzle, const QString& undoText);
    /// A new name is carried over to the jobs and sets aboard that use the nozzle.
    Outcome editNozzle(RecordId id, Nozzle after, const QString& undoText);
    Outcome removeNozzle(RecordId id, const QString& undoText);
    Outcome addNozzles(std::vector<Nozzle> nozzles, const QString& undoText);
    /// Many nozzles in one step (import, copy within a family): replaces those with an id, which
    /// keep their names, adds those with id 0.
    Outcome takeNozzles(std::vector<StoredNozzle> nozzles, const QString& undoText);
    /// At `position` in the machine's list (0: first); below 0 or past the end: last.
    Result<RecordId> addJob(RecordId machine, Job job, int position, const QString& undoText);
    Outcome editJob(RecordId id, Job after, const QString& undoText);
    /// Many jobs in one step (paste, fill down): replaces those with an id, adds those with id 0 at
    /// their `position` as in addJob, one after the other.
    Outcome editJobs(std::vector<StoredJob> jobs, const QString& undoText);
    Outcome removeJobs(const std::vector<RecordId>& ids, const QString& undoText);
    Result<RecordId> addCustomer(Customer customer, const QString& undoText);
    Outcome editCustomer(RecordId id, Customer after, const QString& undoText);
    /// Its machines and cases stay; the machines belong to nobody then.
    Outcome removeCustomer(RecordId id, const QString& undoText);
    Outcome setMachineCustomer(RecordId machine, RecordId customerOrZero, const QString& undoText);
    /// A case is saved at each answer; that is no undo step of its own (answers can be changed in
    /// the case).
    Result<RecordId> saveCase(RecordId idOrZero, CaseRecord record);
    Outcome removeCase(RecordId id, const QString& undoText);
    /// A yard record is saved at each entry, as a case is: no undo step of its own.
    Result<RecordId> saveYardRecord(RecordId idOrZero, YardRecord record);
    Outcome removeYardRecord(RecordId id, const QString& undoText);

    QUndoStack& undoStack() { return m_undo; }
    FarmFile& file() { return *m_file; }
    const Sentences& sentences() const { return m_sentences; }
    QString path() const;
    /// What the clock says; a value set to "measured" and a new case bear its day.
    QDateTime now() const { return m_clock(); }
    void setClock(std::function<QDateTime()> clock);

    // What is in hand, shared by the pages. Setters of a machine also pick its first job if the
    // job in hand is another machine's.
    RecordId currentMachine() const { return m_currentMachine; }
    RecordId currentJob() const { return m_currentJob; }
    RecordId currentNozzle() const { return m_currentNozzle; }
    void setCurrentMachine(RecordId id);
    void setCurrentJob(RecordId id);
    void setCurrentNozzle(RecordId id);

    /// Units of a machine and the user's decimal mark.
    NumberStyle styleOf(const Machine& machine) const;
    NumberStyle currentStyle() const;
    /// Shows all machines in these units, whatever their own; nothing: each in its own. Not stored.
    void setShownUnits(std::optional<UnitSystem> units);
    std::optional<UnitSystem> shownUnits() const { return m_shownUnits; }
    char decimalMark() const { return m_decimalMark; }
    void setDecimalMark(char mark);

  Q_SIGNALS:
    void seasonChanged();  ///< any machine, job or nozzle was added, changed, removed
    void casesChanged();
    void customersChanged();
    void yardChanged();
    void selectionChanged();  ///< what is in hand
    void styleChanged();
    void saved();                             ///< a transaction was committed
    void failed(const bw::Problem& problem);  ///< undo or redo could not be stored; nothing changed
    void noticed(const bw::Problem& problem);  ///< an edit is stored, but its backup is not

  private:
    friend class SessionCommand;
    template <class Stored, class Record>
    Result<RecordId> saveAsTaken(const std::vector<Stored>& list, RecordKind kind,
                                 RecordId idOrZero, Record record);
    void load();
    void tellSetAside(const std::vector<Problem>& setAside);
    /// Stores, then shows: file, mirror, signals.
    Outcome perform(const std::vector<RecordChange>& changes);
    /// As `perform`, as one undo step; nothing at all if the changes change nothing.
    Outcome performAsStep(std::vector<RecordChange> changes, const QString& undoText);
    /// Undo or redo of a step. False: it could not be stored, and the stack goes back to where it
    /// was.
    bool replay(const std::vector<RecordChange>& changes);
    void announce(const std::vector<RecordChange>& changes);
    void keepSelection();
    RecordId firstJobOf(RecordId machine) const;
    Problem nameTaken(const std::string& name) const;
    bool isNameTaken(const std::string& name, RecordId butFor) const;

    Season m_season;
    std::vector<StoredCase> m_cases;
    std::vector<StoredCustomer> m_customers;
    std::vector<StoredYardRecord> m_yard;
    std::vector<Problem> m_problems;
    std::unique_ptr<FarmFile> m_file;
    std::function<QDateTime()> m_clock;
    QUndoStack m_undo;
    Sentences m_sentences;
    std::optional<int> m_stackShouldBeAt;  // set while a failed undo or redo waits to be put right
    std::size_t m_noticesSeen = 0;
    RecordId m_currentMachine = 0;
    RecordId m_currentJob = 0;
    RecordId m_currentNozzle = 0;
    std::optional<UnitSystem> m_shownUnits;
    char m_decimalMark = '.';
};

}  // namespace bw
