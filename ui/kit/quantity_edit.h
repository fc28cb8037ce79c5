// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <QWidget>
#include <optional>

#include "core/model/origin.h"
#include "core/units/format.h"
#include "core/units/parse.h"

namespace bw {

class TextLabel;
class IconLabel;

/// The line of a quantity field: bold figure at the right, quiet unit behind it.
class FigureLine : public QLineEdit {
    Q_OBJECT

  public:
    explicit FigureLine(QWidget* parent = nullptr);
    void setUnitText(const QString& text);
    QString unitText() const { return m_unit; }

  Q_SIGNALS:
    void escaped();
    void focusLeft();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void fitUnit();
    QString m_unit;
};

/// The only number field of the program. Takes a bare number in its unit or any unit of its
/// dimension, either decimal mark; refuses group marks and never guesses. Enter, Tab and loss of
/// focus commit, Esc restores, the wheel is left to the page. What was typed is shown unrounded.
/// A text that cannot be read stays visible with its problem below; the old value is kept and
/// named.
class QuantityEdit : public QWidget {
    Q_OBJECT

  public:
    QuantityEdit(Dimension dimension, Unit unit, QWidget* parent = nullptr);

    /// Unit of a bare number, shown in the field. The value stays what it is.
    void setUnit(Unit unit);
    Unit unit() const { return m_unit; }
    void setDecimalMark(char mark);
    /// Decimal mark, and the system's unit for the dimension.
    void setNumberStyle(const NumberStyle& style);

    /// The value in hand; nothing = unknown. `typed` is shown if it still reads as the value.
    /// Does not signal, and leaves a text being edited alone.
    void setQuantity(std::optional<AnyQuantity> value, const QString& typed = {});
    template <class Q>
    void setKnown(const Known<Q>& known) {
        if (known)
            setQuantity(anyQuantity(known->value), QString::fromStdString(known->typed));
        else
            setQuantity(std::nullopt);
    }
    std::optional<AnyQuantity> quantity() const { return m_value; }
    template <class Q>
    std::optional<Q> value() const {
        return m_value ? std::optional<Q>(Q::fromSi(m_value->si)) : std::nullopt;
    }
    QString typed() const { return m_typed; }

    /// Whether an empty field means "unknown" (else it is a problem). Default true.
    void setOptional(bool optional) { m_optional = optional; }
    /// Whether an entry stands there that was refused, with its reason.
    bool isRefused() const;
    /// Shows the value again in place of a refused entry: another record is in hand.
    void forgetTyped();
    /// Least and most that a value may be, both allowed; nothing = no bound. Default: least 0.
    void setBounds(std::optional<AnyQuantity> least, std::optional<AnyQuantity> most);
    void setPlaceholder(const QString& text);
    void setReadOnly(bool readOnly);
    /// Name for screen readers, "Nozzle spacing"; the unit is added.
    void setLabel(const QString& label);
    /// A problem from outside (a check of the whole record); empty clears it.
    void setProblem(const QString& sentence);
    bool hasProblem() const { return !m_problem.isEmpty(); }
    QString problemText() const { return m_problem; }
    FigureLine* line() const { return m_line; }
    /// Commits a pending edit now (window closing, page left). False if it cannot be read.
    bool commitPending();

  Q_SIGNALS:
    void committed(bw::AnyQuantity quantity, const QString& typed);
    void cleared();
    /// A text was refused; `code` as in core/units/parse.h, or value_too_small, value_too_large.
    void refused(const QString& code);

  private:
    bool commit();
    bool refuse(const Problem& problem);
    std::optional<Problem> boundProblem(const ParsedQuantity& read) const;
    void restore();
    void showValue();
    void showUnitOf(const QString& text);
    void showProblem(const QString& text);
    QString keptText() const;
    QString exactText() const;
    DecimalMarks marks() const {
        return m_mark == ',' ? DecimalMarks::OwnComma : DecimalMarks::OwnPoint;
    }

    Dimension m_dimension;
    Unit m_unit;
    Unit m_shownUnit;  ///< that of what was typed
    char m_mark = '.';
    bool m_optional = true;
    std::optional<AnyQuantity> m_value;
    std::optional<AnyQuantity> m_least;
    std::optional<AnyQuantity> m_most;
    QString m_typed;
    QString m_shown;
    QString m_problem;
    QString m_label;
    FigureLine* m_line;
    QWidget* m_problemRow;
    TextLabel* m_problemLabel;
};

}  // namespace bw
