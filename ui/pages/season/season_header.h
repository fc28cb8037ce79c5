// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/model/season.h"
#include "ui/pages/season/season_rows.h"

class QLineEdit;

namespace bw {

class Button;
class ChoiceBox;

/// The season's tools in the header bar: which machine is shown, a search, the signs of the matrix,
/// its switch and the new job.
class SeasonHeader : public QWidget {
    Q_OBJECT

  public:
    explicit SeasonHeader(QWidget* parent = nullptr);
    void setMachines(const std::vector<StoredMachine>& machines, std::size_t jobs);
    SeasonScope scope() const;
    void clearFilter();
    void focusFilter();
    void setMatrixShown(bool shown);

  Q_SIGNALS:
    void scopeChanged();
    void matrixSwitched(bool shown);
    void addAsked();
    void chooseAsked();
    /// Down or Enter in the search: on to the table.
    void leftFilter();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    std::vector<std::pair<QString, qint64>> m_listed;
    ChoiceBox* m_machines;
    QLineEdit* m_filter;
    Button* m_matrix;
    Button* m_add;
    Button* m_choose;
};

}  // namespace bw
