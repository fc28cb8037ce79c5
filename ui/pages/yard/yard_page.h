// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/season.h"
#include "ui/kit/page.h"

class QStackedWidget;

namespace bw {

class Button;
class CatchPane;
class CheckList;
class CheckPane;
class ChecklistPane;
class ChoiceBox;
class FirmUpRunner;
struct CheckLine;
struct Machine;
struct Problem;
struct YardCheckText;

/// Yard checks: what to measure on the machine, each with its cautions, its sum and what it writes
/// into the profile; the catch test; the pre-season checklist.
class YardPage : public Page {
    Q_OBJECT

  public:
    explicit YardPage(FarmSession& session, QWidget* parent = nullptr);
    ~YardPage() override;

    QString title() const override { return tr("Yard checks"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override;
    void showState(const QString& state) override;
    /// By the id of a check, "Y2"; "checklist" for the list.
    void takeInHand(const QString& check) override;

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void buildHeader();
    QWidget* buildWork();
    void addActions();
    void connectPanes();
    RecordId machineInHand() const;
    const Machine* machine() const;
    void presentMachines();
    void presentList();
    CheckLine lineOf(const YardCheckText& check, const Machine& machine) const;
    CheckLine checklistLine() const;
    void askFirmUp();
    void openCheck(const QString& id, bool takeFocus);
    void leaveCheck();
    void offerPrint();
    void showRoom();
    void toggleList();
    void tell(const Problem& problem);

    QWidget* m_tools = nullptr;
    ChoiceBox* m_machineBox = nullptr;
    Button* m_listButton = nullptr;
    Button* m_printButton = nullptr;
    QStackedWidget* m_stack;
    QWidget* m_side = nullptr;
    CheckList* m_list;
    QStackedWidget* m_panes;
    CheckPane* m_check;
    CatchPane* m_catch;
    ChecklistPane* m_checklist;
    FirmUpRunner* m_firmUp;
    RecordId m_shownMachine = 0;
    QString m_inHand;
    bool m_isListWanted = false;  ///< though the catch test would rather have the room
};

}  // namespace bw
