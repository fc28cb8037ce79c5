// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/yard_book.h"
#include "core/yard/yard_sum.h"
#include "ui/kit/evidence.h"

class QScrollArea;
class QVBoxLayout;

namespace bw {

class Button;
class CautionBox;
class FarmSession;
class ReadingForm;
class EvidenceColumn;
class TextLabel;

/// One yard check: cautions, what to do, what to read; at the right the sum as it grows and what
/// it would write into the profile. Every reading is saved as it is typed.
class CheckPane : public QWidget {
    Q_OBJECT

  public:
    explicit CheckPane(FarmSession& session, QWidget* parent = nullptr);
    /// Shows a check for a machine, with the readings of one that was begun.
    void open(const YardCheckText& check, RecordId machine);
    /// After the session changed.
    void refresh();
    void takeFocus();
    bool commitPending();
    QString checkTitle() const;
    const YardCheckText* check() const { return m_check; }
    const YardRecord& record() const { return m_record; }
    /// A text that could not be read, if one stands in a field.
    QString refusedText() const;

  Q_SIGNALS:
    void failed(const bw::Problem& problem);
    void told(const QString& text);

  private:
    QWidget* buildMiddle();
    void buildFoot();
    void fillWords();
    void fillSteps();
    const Machine* machine() const;
    NumberStyle style() const;
    void take(const NotedReading& reading);
    void drop(const std::string& id, int run);
    void choose(const std::string& id, const std::string& word);
    bool save();
    void show();
    YardReadings readings() const;
    /// The first reading still needed by a run that was begun; empty if none.
    QString halfRun() const;
    void showMissing(const QString& what);
    void showProblem(const Problem& problem);
    void showAnswer(const YardAnswer& answer);
    std::optional<Machine> written(const YardAnswer& answer) const;
    EvidenceSection sumSection(const YardAnswer& answer) const;
    EvidenceSection aboutSection() const;
    QString lastWords() const;
    void showFoot(bool canWrite, bool isWritten, bool canFinish, const QString& note);
    void write();
    void finish();
    void startAgain();
    std::string now() const;

    FarmSession& m_session;
    const YardCheckText* m_check = nullptr;
    RecordId m_machineId = 0;
    RecordId m_recordId = 0;  ///< 0: nothing was read yet
    YardRecord m_record;
    std::optional<YardAnswer> m_answer;
    bool m_isSaving = false;

    TextLabel* m_title;
    TextLabel* m_purpose;
    TextLabel* m_takes;
    CautionBox* m_cautions;
    QVBoxLayout* m_steps;
    TextLabel* m_last;
    ReadingForm* m_form;
    QScrollArea* m_scroll;
    EvidenceColumn* m_result;
    Button* m_write;
    Button* m_finish;
    Button* m_again;
    TextLabel* m_note;
};

}  // namespace bw
