// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/model/case_record.h"
#include "core/model/season.h"
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
    const Machine* machine(RecordId id) const;
    const Job* job(RecordId id) const;
    const Nozzle* nozzle(RecordId id) const;
    const StoredCase* caseRecord(RecordId id) const;
    /// The nozzle of a name among own and built-in ones.
    const Nozzle* nozzleNamed(const std::string& name) const;
    std::vector<StoredJob> jobsOf(RecordId machine) const;

    // Each edit: one undo step, one transaction. Return the new record's id, or Done.
    Result<RecordId> addMachine(Machine machine, const QString& undoText);
    Outcome editMachine(RecordId id, Machine after, const QString& undoText);
    Outcome removeMachine(RecordId id,
                          const QString& undoText);  ///< with its jobs; cases keep their copy
    Result<RecordId> addNozzle(Nozzle nozzle, const QString& undoText);
    Outcome editNozzle(RecordId id, Nozzle after, const QString& undoText);
    Outcome removeNozzle(RecordId id, const QString& undoText);
    Outcome addNozzles(std::vector<Nozzle> nozzles, const QString& undoText);
    Result<RecordId> addJob(RecordId machine, Job job, int position, const QString& undoText);
    Outcome editJob(RecordId id, Job after, const QString& undoText);
    /// Many jobs in one step (paste, fill down): replaces those with an id, adds those with id 0.
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

    QUndoStack& undoStack() { return m_undo; }
    FarmFile& file() { return *m_file; }
    const Sentences& sentences() const { return m_sentences; }
    QString path() const;

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
    char decimalMark() const { return m_decimalMark; }
    void setDecimalMark(char mark);

  Q_SIGNALS:
    void seasonChanged();  ///< any machine, job or nozzle was added, changed, removed
    void casesChanged();
    void customersChanged();
    void selectionChanged();  ///< what is in hand
    void styleChanged();
    void saved();                             ///< a transaction was committed
    void failed(const bw::Problem& problem);  ///< undo or redo could not be stored; nothing changed

  private:
    friend class SessionCommand;
    Season m_season;
    std::vector<StoredCase> m_cases;
    std::vector<StoredCustomer> m_customers;
    std::unique_ptr<FarmFile> m_file;
    QUndoStack m_undo;
    Sentences m_sentences;
    RecordId m_currentMachine = 0;
    RecordId m_currentJob = 0;
    RecordId m_currentNozzle = 0;
    char m_decimalMark = '.';
};

}  // namespace bw
