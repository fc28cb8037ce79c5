// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/problem.h"
#include "core/model/season.h"
#include "ui/kit/page.h"

class QLineEdit;
class QModelIndex;

namespace bw {

class Button;
class ChartPanel;
class DataTable;
class EvidenceList;
class NozzleForm;
class NozzlesModel;
class TextLabel;

/// The nozzles to choose from: own ones with their tables, and the sizes of ISO 10625.
class NozzlesPage : public Page {
    Q_OBJECT

  public:
    explicit NozzlesPage(FarmSession& session, QWidget* parent = nullptr);
    QString title() const override { return tr("Nozzles"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override { return tr("Ins adds a nozzle, Ctrl+Del removes one"); }

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void buildTools();
    QWidget* buildList();
    QWidget* buildDetail();
    void add();
    void copy();
    void remove();
    void choose(const QModelIndex& index);
    void showChosen();
    void showCurve(const Nozzle& nozzle);
    void showNotes(const Nozzle& nozzle);
    void store(const Nozzle& nozzle, const QString& undoText);
    void say(const Problem& problem);

    QWidget* m_tools = nullptr;
    QLineEdit* m_filter = nullptr;
    Button* m_copy = nullptr;
    Button* m_remove = nullptr;
    DataTable* m_table = nullptr;
    NozzlesModel* m_model = nullptr;
    NozzleForm* m_form = nullptr;
    ChartPanel* m_chart = nullptr;
    EvidenceList* m_notes = nullptr;
    TextLabel* m_heading = nullptr;
    StoredNozzle m_chosen;
    bool m_hasChosen = false;
    std::pair<RecordId, std::string> m_shown;  ///< the nozzle whose entries the form holds
};

}  // namespace bw
