// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/base/problem.h"
#include "core/model/yard_record.h"
#include "core/yard/checklist.h"

class QCheckBox;
class QLineEdit;
class QVBoxLayout;

namespace bw {

class Button;
class FarmSession;
class EvidenceColumn;
class SegmentedButtons;
class TextLabel;

/// One line of the list: a tick with its day, what to do and why, and a note.
class ChecklistRow : public QWidget {
    Q_OBJECT

  public:
    ChecklistRow(const ChecklistItem& item, QWidget* parent = nullptr);
    void present(const NotedTick* tick);
    const std::string& id() const { return m_id; }
    bool hasHeightForWidth() const override { return true; }

  Q_SIGNALS:
    void changed(const QString& item, bool isTicked, const QString& note);
    void checkWanted(const QString& check);

  private:
    std::string m_id;
    QCheckBox* m_tick;
    TextLabel* m_day;
    QLineEdit* m_note;
};

/// The pre-season checklist made from the profile: three phases, each kept as a record of its own.
class ChecklistPane : public QWidget {
    Q_OBJECT

  public:
    explicit ChecklistPane(FarmSession& session, QWidget* parent = nullptr);
    void open(RecordId machine);
    void refresh();
    void takeFocus();
    void takePhase(int index);
    /// The phase in hand, for this machine; null if it has none.
    const ChecklistPart* part() const;
    const YardRecord& record() const { return m_record; }

  Q_SIGNALS:
    void failed(const bw::Problem& problem);
    void checkWanted(const QString& check);

  private:
    void readRecord();
    void fill();
    void addItems(const ChecklistPart& part);
    void show();
    void note(const QString& item, bool isTicked, const QString& text);
    bool save();
    void finish();
    std::string now() const;

    FarmSession& m_session;
    RecordId m_machineId = 0;
    RecordId m_recordId = 0;
    YardRecord m_record;
    std::vector<ChecklistPart> m_parts;
    std::vector<std::string> m_filled;  ///< ids of the items that stand on the page
    std::vector<ChecklistRow*> m_rows;
    bool m_isSaving = false;

    SegmentedButtons* m_phase;
    QWidget* m_body = nullptr;
    QVBoxLayout* m_column = nullptr;
    EvidenceColumn* m_result;
    Button* m_finish;
    TextLabel* m_note;
};

}  // namespace bw
