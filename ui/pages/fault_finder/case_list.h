// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/model/case_record.h"

class QStandardItemModel;

namespace bw {

class Button;
class DataTable;
class TextLabel;

/// The cases of the file, newest first: Enter or a double click opens one, Delete removes it.
class CaseList : public QWidget {
    Q_OBJECT

  public:
    explicit CaseList(QWidget* parent = nullptr);
    /// `inHand`: the row to stand on; 0: the one before, else the first.
    void setCases(const std::vector<StoredCase>& cases, RecordId inHand = 0);
    void takeFocus();

  Q_SIGNALS:
    void opened(qlonglong id);
    void removeWanted(qlonglong id);
    void newCallWanted();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void openCurrent();
    qlonglong currentId() const;
    TextLabel* m_intro;
    DataTable* m_table;
    QStandardItemModel* m_model;
    Button* m_open;
    Button* m_new;
};

}  // namespace bw
