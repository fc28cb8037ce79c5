// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/machine/machine_row.h"

class QLineEdit;

namespace bw {

class ChoiceBox;
class QuantityEdit;

/// A quantity with its unit.
class QuantityRow : public MachineRow {
    Q_OBJECT

  public:
    QuantityRow(const QString& key, const QString& name, Dimension dimension);
    void present(const FormView& view) override;
    QWidget* editor() const override;
    void setProblem(const QString& sentence) override;
    void dropPending() override;
    bool commitPending() override;
    void refuse(const QString& sentence) override;
    bool isWaiting() const override { return m_isWaiting; }

  private:
    bool isRefusing() const;
    void take(AnyQuantity quantity, const QString& typed);
    QuantityEdit* m_edit;
    Dimension m_dimension;
    NumberStyle m_style;
    QString m_checkProblem;
    QString m_given;  ///< the text that was read last
    bool m_isWaiting = false;
};

/// One of a few words; the first is "not known".
class ChoiceRow : public MachineRow {
    Q_OBJECT

  public:
    ChoiceRow(const QString& key, const QString& name);
    void present(const FormView& view) override;
    QWidget* editor() const override;

  private:
    void fill(const FormView& view);
    void take(int index);
    ChoiceBox* m_box;
};

/// Text with a parser of its own: the sections, nozzle numbers, the points of a pump curve.
class ListRow : public MachineRow {
    Q_OBJECT

  public:
    ListRow(const QString& key, const QString& name);
    void present(const FormView& view) override;
    QWidget* editor() const override;
    void setProblem(const QString& sentence) override;
    void dropPending() override;
    bool commitPending() override;

  private:
    bool commit();
    bool takeSections(const QString& text);
    bool takeNozzles(const QString& text);
    bool takeCurve(const QString& text);
    bool refuseText(const Problem& problem);
    void showValue();
    QLineEdit* m_line;
    QString m_shown;
    QString m_checkProblem;
    NumberStyle m_style;
    bool m_isRefusing = false;
};

}  // namespace bw
