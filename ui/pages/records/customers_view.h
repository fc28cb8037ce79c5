// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/season.h"

class QLineEdit;
class QPlainTextEdit;
class QStandardItemModel;

namespace bw {

class Button;
class DataTable;
class EvidenceList;
class FarmSession;
class TextLabel;
struct Problem;

/// Whose machines they are: a list, the customer in hand to edit, and their machines and cases.
class CustomersView : public QWidget {
    Q_OBJECT

  public:
    explicit CustomersView(FarmSession& session, QWidget* parent = nullptr);
    void refresh();
    void takeFocus();
    void add();
    QString tableText() const;

  Q_SIGNALS:
    void failed(const bw::Problem& problem);
    /// A machine's or a case's row was followed: "machine:name", "case:7".
    void linkActivated(const QString& link);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    QWidget* buildList();
    QWidget* buildForm();
    QLineEdit* field(class QGridLayout& grid, const QString& label, const QString& name,
                     std::string Customer::*part);
    void choose(int row);
    void present();
    void presentBelongings(RecordId id);
    void store(std::string Customer::*part, const QString& text);
    void remove();
    const StoredCustomer* inHand() const;

    FarmSession& m_session;
    QStandardItemModel* m_model;
    DataTable* m_table = nullptr;
    QWidget* m_form = nullptr;
    TextLabel* m_title = nullptr;
    TextLabel* m_none = nullptr;
    std::vector<std::pair<QLineEdit*, std::string Customer::*>> m_fields;
    QPlainTextEdit* m_notes = nullptr;
    EvidenceList* m_belongings = nullptr;
    Button* m_remove = nullptr;
    RecordId m_idInHand = 0;
    bool m_isFilling = false;
};

}  // namespace bw
