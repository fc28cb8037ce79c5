// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/machine/field_row.h"

class QLineEdit;

namespace bw {

class ChoiceBox;
class QuantityEdit;

/// A quantity with its unit.
class QuantityRow : public FieldRow {
    Q_OBJECT

  public:
    QuantityRow(const QString& key, const QString& name, Dimension dimension);
    void present(const FormView& view) override;
    QWidget* editor() const override;
    void setProblem(const QString& sentence) override;
    void dropPending() override;
    bool commitPending() override;

  private:
    bool isRefusing() const;
    void take(AnyQuantity quantity, const QString& typed);
    QuantityEdit* m_edit;
    Dimension m_dimension;
    QString m_checkProblem;
};

/// One of a few words; the first is "not known".
class ChoiceRow : public FieldRow {
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

/// Text with a parser of its own: the sections, the points of a pump curve.
class ListRow : public FieldRow {
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
    bool takeCurve(const QString& text);
    bool refuse(const Problem& problem);
    void showValue();
    QLineEdit* m_line;
    QString m_shown;
    QString m_checkProblem;
    NumberStyle m_style;
    bool m_isRefusing = false;
};

}  // namespace bw
