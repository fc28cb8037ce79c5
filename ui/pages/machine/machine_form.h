// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <QWidget>
#include <map>
#include <vector>

#include "core/model/season.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/pages/machine/machine_row.h"

class QVBoxLayout;

namespace bw {

class AidPanel;
class Section;
class SetRow;
class NameRows;
class QuestionStrip;

/// The left side of the page: what the ten questions still ask, the groups of fields, and what
/// helps with the field in hand.
class MachineForm : public QWidget {
    Q_OBJECT

  public:
    explicit MachineForm(const FarmSession& session, QWidget* parent = nullptr);
    ~MachineForm() override;

    void present(const FormView& view, RecordId machine);
    /// Brings a field into view, opens its group and gives it the focus. False if it has no row.
    bool focusField(const QString& key);
    /// The field in hand; empty: none.
    QString keyInHand() const;
    /// Commits a text that is being typed.
    bool commitPending();
    /// Whether the edit on its way is a number typed into a field.
    bool isEditingNumber() const;
    /// Answers an edit that the machine as a whole cannot take.
    void refuseEdit(const QString& sentence);
    /// Tries again what waits, since the machine has changed.
    void retryWaiting();

    // For the field in hand:
    void toggleWhere();
    void takeUnknown();
    void openOriginMenu();

  Q_SIGNALS:
    void edited(const bw::MachineChange& change, const QString& undoText);
    void customerWished(qint64 customer);
    void newCustomerWished();
    void fieldTaken(const QString& key);

  private:
    void buildGroup(const FormGroup& group);
    MachineRow* addRow(const FormGroup& group, const QString& key);
    void addSetRows(const FormGroup& group, QVBoxLayout& column);
    void watch(MachineRow* row);
    void pass(MachineRow* row, const MachineChange& change, const QString& undoText);
    void followFocus(QWidget* now);
    void takeInHand(MachineRow* row);
    void presentProblems(const FormView& view);
    void presentSummaries(const FormView& view);
    QString summary(const FormView& view, const QString& group) const;
    void presentAid();
    void setOrigin(MachineRow* row, Origin origin, const QString& date = {});
    MachineRow* rowOf(const QString& key) const;

    const FarmSession& m_session;
    QScrollArea* m_scroll;
    QVBoxLayout* m_column;
    AidPanel* m_aid;
    QuestionStrip* m_questions;
    NameRows* m_names;
    std::map<QString, Section*> m_sections;
    std::vector<MachineRow*> m_rows;
    std::vector<SetRow*> m_setRows;
    std::map<MachineRow*, Section*> m_sectionOf;
    MachineRow* m_inHand = nullptr;
    MachineRow* m_editing = nullptr;  ///< the row whose edit is on its way
    RecordId m_shownMachine = 0;
    QString m_otherInHand;  ///< "name" or "customer"
};

}  // namespace bw
