// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/quantity_edit.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

FigureLine::FigureLine(QWidget* parent) : QLineEdit(parent) {
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setFont(textFont(TextSize::Body, true));
    setFocusPolicy(Qt::StrongFocus);
    connect(&theme(), &Theme::changed, this, [this] {
        setFont(textFont(TextSize::Body, true));
        fitUnit();
    });
}

void FigureLine::setUnitText(const QString& text) {
    m_unit = text;
    fitUnit();
    update();
}

void FigureLine::fitUnit() {
    const QFontMetrics quiet(textFont(TextSize::Body));
    setTextMargins(0, 0, m_unit.isEmpty() ? 0 : quiet.horizontalAdvance(m_unit) + px(10), 0);
}

void FigureLine::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    if (m_unit.isEmpty()) return;
    QPainter painter(this);
    painter.setFont(textFont(TextSize::Body));
    painter.setPen(color(isEnabled() ? Role::Quiet : Role::Disabled));
    painter.drawText(rect().adjusted(0, 0, -px(8), 0), Qt::AlignRight | Qt::AlignVCenter, m_unit);
}

void FigureLine::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT escaped();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void FigureLine::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) Q_EMIT focusLeft();
}

void FigureLine::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

bool FigureLine::event(QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride) return QLineEdit::event(event);
    auto* key = static_cast<QKeyEvent*>(event);
    // Esc belongs to the field while its text differs from the value; no window shortcut takes it.
    if (key->key() == Qt::Key_Escape && isModified()) {
        event->accept();
        return true;
    }
    // Once committed, undo means the edit, not the letters.
    const bool isUndo = key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
    if (isUndo && !isModified()) {
        event->ignore();
        return false;
    }
    return QLineEdit::event(event);
}

QuantityEdit::QuantityEdit(Dimension dimension, Unit unit, QWidget* parent)
    : QWidget(parent),
      m_dimension(dimension),
      m_unit(unit),
      m_shownUnit(unit),
      m_least(AnyQuantity{dimension, 0.0}),
      m_line(new FigureLine),
      m_problemRow(new QWidget),
      m_problemLabel(new TextLabel({}, TextSize::Small, Role::Limit)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(3));
    column->addWidget(m_line);
    column->addWidget(m_problemRow);
    auto* row = new QHBoxLayout(m_problemRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(6));
    row->addWidget(new IconLabel(u"caution"_s, Role::Limit, 16), 0, Qt::AlignTop);
    row->addWidget(m_problemLabel->wrapped(), 1);
    m_problemRow->hide();
    m_line->setUnitText(symbol(unit));
    setFocusProxy(m_line);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    connect(m_line, &QLineEdit::returnPressed, this, [this] { commit(); });
    connect(m_line, &FigureLine::focusLeft, this, [this] { commit(); });
    connect(m_line, &FigureLine::escaped, this, &QuantityEdit::restore);
    connect(m_line, &QLineEdit::textEdited, this, &QuantityEdit::showUnitOf);
}

void QuantityEdit::setUnit(Unit unit) {
    if (unit == m_unit) return;  // a refused entry stays as typed
    m_unit = unit;
    setLabel(m_label);
    showValue();
}

void QuantityEdit::setDecimalMark(char mark) {
    if (mark == m_mark) return;
    m_mark = mark;
    showValue();
}

void QuantityEdit::setNumberStyle(const NumberStyle& style) {
    m_mark = style.decimalMark;
    setUnit(displayUnit(style.units, m_dimension));
}

void QuantityEdit::setQuantity(std::optional<AnyQuantity> value, const QString& typed) {
    const bool changed = value != m_value || typed != m_typed;
    m_value = value;
    m_typed = typed;
    if (m_line->hasFocus() && m_line->isModified()) return;
    if (changed || !hasProblem()) showValue();
}

bool QuantityEdit::isRefused() const {
    return hasProblem() && m_line->isModified();
}

void QuantityEdit::forgetTyped() {
    showValue();
}

void QuantityEdit::setBounds(std::optional<AnyQuantity> least, std::optional<AnyQuantity> most) {
    m_least = least;
    m_most = most;
}

void QuantityEdit::setPlaceholder(const QString& text) {
    m_line->setPlaceholderText(text);
}
void QuantityEdit::setReadOnly(bool readOnly) {
    m_line->setReadOnly(readOnly);
}

void QuantityEdit::setLabel(const QString& label) {
    m_label = label;
    m_line->setAccessibleName(m_unit == Unit::None ? label : label + u", "_s + symbol(m_unit));
}

void QuantityEdit::setProblem(const QString& sentence) {
    showProblem(sentence);
}

bool QuantityEdit::commitPending() {
    return !m_line->isModified() || commit();
}

bool QuantityEdit::commit() {
    const QString text = m_line->text().trimmed();
    if (!m_line->isModified() || text == m_shown) {
        m_line->setModified(false);
        if (text == m_shown) showProblem({});
        return true;
    }
    if (text.isEmpty() && m_optional) {
        m_value.reset();
        m_typed.clear();
        showValue();
        Q_EMIT cleared();
        return true;
    }
    // A value in another unit carries it in its text, so a bare number is one in the field's unit.
    const auto read = parseQuantity(ss(text), m_dimension, m_unit, marks());
    if (!read) return refuse(read.problem());
    if (const auto problem = boundProblem(*read)) return refuse(*problem);
    m_value = read->quantity;
    m_typed = read->unitWasTyped || m_unit == Unit::None ? text : text + u' ' + symbol(m_unit);
    showValue();
    Q_EMIT committed(*m_value, m_typed);
    return true;
}

std::optional<Problem> QuantityEdit::boundProblem(const ParsedQuantity& read) const {
    const auto problem = [&](const char* code, const AnyQuantity& bound) {
        return error(code, {}, {{"bound", ss(qs(format(bound, read.unit, m_mark)))}});
    };
    constexpr double kRounding = 1e-9;
    if (m_least && m_least->si >= 0 && read.quantity.si < 0) return error("value_under_zero");
    if (m_least && read.quantity.si < m_least->si - kRounding * std::abs(m_least->si))
        return problem("value_too_small", *m_least);
    if (m_most && read.quantity.si > m_most->si + kRounding * std::abs(m_most->si))
        return problem("value_too_large", *m_most);
    return std::nullopt;
}

bool QuantityEdit::refuse(const Problem& problem) {
    m_line->setModified(true);
    QString sentence = sentenceOf(problem, {UnitSystem::Metric, m_mark});
    if (m_value) sentence += u' ' + tr("Kept until mended: %1.").arg(keptText());
    showProblem(sentence);
    Q_EMIT refused(qs(problem.code));
    return false;
}

QString QuantityEdit::keptText() const {
    const QString figure = m_shown.isEmpty() ? exactText() : m_shown;
    const bool hasUnit = m_shownUnit != m_unit || m_unit == Unit::None;
    return hasUnit ? figure : figure + u' ' + symbol(m_unit);
}

/// While a text is being typed: the field's unit stands beside a bare number only.
void QuantityEdit::showUnitOf(const QString& text) {
    const bool hasLetters = std::any_of(text.begin(), text.end(), [](QChar c) {
        return c.isLetter() || c == u'%' || c == u'\u00b0' || c == u'"';
    });
    m_line->setUnitText(hasLetters ? QString() : symbol(m_unit));
}

void QuantityEdit::restore() {
    showValue();
    m_line->selectAll();
}

QString QuantityEdit::exactText() const {
    return m_value ? qs(formatExact(toUnit(*m_value, m_unit), m_mark)) : QString();
}

/// What was typed stays as typed while it still reads as the value; one in another unit than the
/// field's keeps its unit, and the value in the field's unit stands behind it.
void QuantityEdit::showValue() {
    m_shown = m_value ? qs(formatNumber(toUnit(*m_value, m_unit), m_unit, m_mark)) : QString();
    QString unitText = symbol(m_unit);
    m_shownUnit = m_unit;
    if (m_value && !m_typed.isEmpty()) {
        const auto read = parseQuantity(ss(m_typed), m_dimension, m_unit, marks());
        if (read && std::abs(read->quantity.si - m_value->si) <= 1e-9 * std::abs(m_value->si)) {
            m_shown = qs(formatExact(read->number, m_mark));
            m_shownUnit = read->unit;
            if (m_shownUnit != m_unit) {
                m_shown += u' ' + symbol(m_shownUnit);
                unitText = u"= "_s + shownIn(*m_value, m_unit, {UnitSystem::Metric, m_mark});
            }
        }
    }
    m_line->setUnitText(unitText);
    m_line->setText(m_shown);
    m_line->setModified(false);
    showProblem({});
}

void QuantityEdit::showProblem(const QString& text) {
    m_problem = text;
    m_problemLabel->setText(text);
    m_problemRow->setVisible(!text.isEmpty());
    m_line->setAccessibleDescription(text);
    m_line->setProperty("bw.problem", !text.isEmpty());
    m_line->update();
    updateGeometry();
}

}  // namespace bw
