// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_row.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <cmath>

#include "core/model/start_values.h"
#include "core/model/usual_ranges.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/pages/machine/origin_button.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kLabelWidth = 112;
constexpr double kRangeWidth = 76;

struct Range {
    AnyQuantity from;
    AnyQuantity to;
};

/// The usual range of a field for the machine's class, else for all machines.
std::optional<Range> usualOf(const Machine& machine, const QString& key) {
    const StartValue* start = startValue(machine, ss(key));
    const auto view = fieldView(machine, ss(key));
    if (start && start->use == StartUse::Range && view) {
        const auto read = [&](const std::string& text) {
            return parseQuantity(text, view->dimension, std::nullopt, DecimalMarks::PointOnly);
        };
        const auto from = read(start->from);
        const auto to = read(start->to);
        if (from && to) return Range{from->quantity, to->quantity};
    }
    const UsualRange* usual = usualRange("machine." + ss(key));
    if (!usual || !usual->from || !usual->to) return std::nullopt;
    return Range{*usual->from, *usual->to};
}

QString rangeText(const Range& range, Unit unit, const NumberStyle& style) {
    // The table's round figures stay; what a conversion makes of them is rounded again.
    const auto number = [&](AnyQuantity q) {
        const double figure = toUnit(q, unit);
        const bool isRound = std::abs(figure * 100 - std::round(figure * 100)) < 1e-6;
        if (isRound || figure <= 0) return qs(formatNumber(figure, unit, style.decimalMark));
        const double step = std::pow(10.0, std::floor(std::log10(figure)) - 1);
        return qs(formatExact(std::round(figure / step) * step, style.decimalMark));
    };
    return MachineRow::tr("%1 to %2").arg(number(range.from), number(range.to));
}

}  // namespace

MachineRow::MachineRow(const QString& key, const QString& name, QWidget* parent)
    : QWidget(parent),
      m_key(key),
      m_name(name),
      m_grid(new QGridLayout(this)),
      m_labelWidget(new TextLabel),
      m_origin(new OriginButton),
      m_range(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    setObjectName(name + u".row"_s);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(px(5));
    m_grid->setVerticalSpacing(px(2));
    m_labelWidget->setFixedWidth(px(kLabelWidth));
    m_labelWidget->setMinimumHeight(px(24));
    m_origin->setObjectName(name + u".origin"_s);
    m_range->setFixedWidth(px(kRangeWidth));
    m_range->setMinimumHeight(px(24));
    m_grid->addWidget(m_labelWidget, 0, 0, Qt::AlignTop);
    m_grid->setColumnMinimumWidth(1, px(kEditorWidth));
    m_grid->setColumnStretch(4, 1);
    connect(m_origin, &OriginButton::originChosen, this, &MachineRow::originWished);
    connect(m_origin, &OriginButton::unknownChosen, this, &MachineRow::unknownWished);
}

void MachineRow::placeEditor(QWidget* editor, bool isWide) {
    editor->setObjectName(m_name);
    // The editor spans the row, so that its problem text has room; origin and range lie over it.
    m_grid->addWidget(editor, 0, 1, 1, 4, isWide ? Qt::Alignment() : Qt::AlignTop);
    m_labelWidget->setBuddy(editor);
    m_grid->addWidget(m_origin, 0, 2, Qt::AlignTop);
    m_grid->addWidget(m_range, 0, 3, Qt::AlignTop);
    if (!isWide) return;
    m_origin->hide();
    m_range->hide();
}

void MachineRow::setLabel(const QString& label) {
    m_label = label;
    const QFontMetrics metrics(m_labelWidget->font());
    m_labelWidget->setText(metrics.elidedText(label, Qt::ElideRight, px(kLabelWidth)));
    m_labelWidget->setToolTip(m_labelWidget->text() == label ? QString() : label);
}

void MachineRow::present(const FormView& view) {
    const auto field = fieldView(view.machine, ss(m_key));
    if (!field) return;
    m_field = *field;
    setLabel(labelOf(view.session, view.machine, m_key));
    m_origin->setOrigin(m_field.isKnown ? std::optional(m_field.origin) : std::nullopt,
                        QString::fromStdString(m_field.date), m_label);
    presentRange(view);
}

void MachineRow::presentRange(const FormView& view) {
    const Unit unit = unitOfField(m_key, m_field.dimension, view.machine.units);
    m_usual.clear();
    m_range->clear();
    if (const auto usual = usualOf(view.machine, m_key)) {
        const QString text = rangeText(*usual, unit, view.style);
        m_range->setText(text);
        m_usual = tr("usual %1 %2").arg(text, symbol(unit)).trimmed();
    }
    if (m_field.isKnown && m_field.from && m_field.to) {
        const QString text = rangeText({*m_field.from, *m_field.to}, unit, view.style);
        m_range->setText(text);
        m_usual = tr("assumed, likely %1 %2").arg(text, symbol(unit)).trimmed();
    }
    const QFontMetrics metrics(m_range->font());
    const QString whole = m_range->text();
    m_range->setText(metrics.elidedText(whole, Qt::ElideRight, px(kRangeWidth)));
    m_range->setToolTip(m_usual);
}

QString MachineRow::usualText() const {
    return m_usual;
}

void MachineRow::buildProblem() {
    m_problemRow = new QWidget;
    auto* row = new QHBoxLayout(m_problemRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(6));
    m_problem = new TextLabel({}, TextSize::Small, Role::Limit);
    m_problem->setObjectName(m_name + u".problem"_s);
    row->addWidget(new IconLabel(u"caution"_s, Role::Limit, 16), 0, Qt::AlignTop);
    row->addWidget(m_problem->wrapped(), 1);
    m_problemRow->hide();
    m_grid->addWidget(m_problemRow, 1, 1, 1, 4);
}

void MachineRow::setProblem(const QString& sentence) {
    if (sentence.isEmpty() && !m_problemRow) return;
    if (!m_problemRow) buildProblem();
    m_problem->setText(sentence);
    m_problemRow->setVisible(!sentence.isEmpty());
    if (editor()) editor()->setAccessibleDescription(sentence);
}

QString MachineRow::undoText(const QString& value) const {
    return inSentence(m_label) + u' ' + value;
}

}  // namespace bw
