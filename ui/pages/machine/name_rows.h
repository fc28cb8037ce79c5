// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/season.h"
#include "ui/pages/machine/machine_row.h"

namespace bw {

class ChoiceBox;
class ListLine;

/// The machine's name and whose it is.
class NameRows : public QWidget {
    Q_OBJECT

  public:
    explicit NameRows(QWidget* parent = nullptr);
    void present(const FormView& view, RecordId machine);
    void focusName();
    bool commitPending();
    void dropPending();
    /// "name" or "customer" if the widget belongs to that row.
    QString keyOf(const QWidget* widget) const;

  Q_SIGNALS:
    void renamed(const QString& name);
    void customerWished(qint64 customer);
    void newCustomerWished();

  private:
    bool takeName();
    ListLine* m_name;
    ChoiceBox* m_customer;
    TextLabel* m_problem;
    QString m_shown;
};

}  // namespace bw
