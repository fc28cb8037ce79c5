// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/records/records_model.h"

class QLineEdit;

namespace bw {

class ChoiceBox;
class DataTable;
class FarmSession;
class RecordDetail;
class TextLabel;
struct Problem;

/// Everything that was done, as one table that can be narrowed and searched, and the record in
/// hand beside it.
class RecordsView : public QWidget {
    Q_OBJECT

  public:
    /// `pages`: ids of the pages that a record can be opened on.
    RecordsView(FarmSession& session, QStringList pages, QWidget* parent = nullptr);
    void refresh();
    void takeFocus();
    void startSearch();
    /// Shows the records of one machine or kind, or one record.
    void showMachine(const QString& machine);
    void showKind(LineKind kind);
    void showRecord(bool isCase, RecordId id);
    void openInHand();
    void removeInHand();
    /// The rows shown, with their heading. CSV has the notes too, and the customers if wanted.
    QString tableText() const;
    std::string csv(bool withCustomers) const;
    bool hasCustomers() const;
    int shownCount() const { return m_filter->rowCount(); }

  Q_SIGNALS:
    void goTo(const QString& target);
    void failed(const bw::Problem& problem);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void build();
    QWidget* buildFilters();
    void fillFilters();
    void narrow();
    void keepInHand();
    void choose(int row);
    const RecordLine* inHand() const;
    QString opens(const RecordLine& line) const;

    FarmSession& m_session;
    QStringList m_pages;
    RecordsModel* m_model;
    RecordsFilter* m_filter;
    QLineEdit* m_search = nullptr;
    ChoiceBox* m_machine = nullptr;
    ChoiceBox* m_year = nullptr;
    ChoiceBox* m_kind = nullptr;
    DataTable* m_table = nullptr;
    TextLabel* m_count = nullptr;
    RecordDetail* m_detail = nullptr;
    bool m_isCaseInHand = false;
    RecordId m_idInHand = 0;
    int m_rowInHand = 0;
    bool m_isFilling = true;  ///< also until it is filled for the first time
};

}  // namespace bw
