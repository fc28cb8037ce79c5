// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/reading_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>

#include "core/diagnosis/case_numbers.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/case_view.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Everything that can be read, in the order in which a unit is taken for it.
std::vector<std::string> kinds() {
    std::vector<std::string> all;
    for (const auto& [reading, name] : ChoiceNames<Reading>::names) all.emplace_back(name);
    all.insert(all.begin(), std::string(kSpeedRead));
    return all;
}

std::optional<AnyQuantity> read(const QString& text, const std::string& check, bool bare,
                                const NumberStyle& style) {
    const auto dimension = readingDimension(check);
    if (!dimension || *dimension == Dimension::None) return std::nullopt;
    const auto unit = bare ? std::optional(readingUnit(check, style.units)) : std::nullopt;
    const auto parsed = parseQuantity(ss(text), *dimension, unit, marksOf(style));
    if (!parsed || parsed->quantity.si < 0) return std::nullopt;
    return parsed->quantity;
}

}  // namespace

ReadingBar::ReadingBar(QWidget* parent)
    : QWidget(parent),
      m_text(new QLineEdit),
      m_kind(new ChoiceBox),
      m_problem(new TextLabel({}, TextSize::Small, Role::Limit)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(18), px(6), px(18), px(6));
    column->setSpacing(px(3));
    auto* row = new QHBoxLayout;
    row->setSpacing(px(10));
    auto* label = new TextLabel(tr("Any reading"), TextSize::Body, Role::Ink, true);
    label->setBuddy(m_text);
    m_text->setObjectName(u"finder.reading.text"_s);
    m_text->setPlaceholderText(tr("number and unit, then Enter"));
    m_text->setAccessibleName(tr("Any reading, number and unit"));
    m_kind->setObjectName(u"finder.reading.kind"_s);
    m_kind->setAccessibleName(tr("What was read"));
    auto* close = new IconButton(tr("Close"), u"close"_s);
    close->setObjectName(u"finder.reading.close"_s);
    row->addWidget(label);
    row->addWidget(m_text, 1);
    row->addWidget(m_kind, 1);
    row->addWidget(close);
    column->addLayout(row);
    m_problem->setObjectName(u"finder.reading.problem"_s);
    column->addWidget(m_problem->wrapped());
    hide();
    connect(m_text, &QLineEdit::textEdited, this, &ReadingBar::fillKinds);
    connect(m_text, &QLineEdit::returnPressed, this, &ReadingBar::take);
    connect(close, &QAbstractButton::clicked, this, [this] {
        hide();
        Q_EMIT closed();
    });
}

std::optional<Observation> ReadingBar::readingIn(const QString& text, const NumberStyle& style) {
    for (const auto& check : kinds()) {
        if (const auto value = read(text, check, false, style))
            return Observation{check, {}, value, ss(text.trimmed())};
    }
    return std::nullopt;
}

void ReadingBar::open(const QString& text, const NumberStyle& style) {
    m_style = style;
    m_text->setText(text);
    m_problem->hide();
    fillKinds();
    show();
    m_text->setFocus(Qt::OtherFocusReason);
}

/// The kinds that the unit allows; all while there is no unit yet.
void ReadingBar::fillKinds() {
    const QString before = m_kind->currentData().toString();
    m_kind->clear();
    const bool hasUnit = readingIn(m_text->text(), m_style).has_value();
    for (const auto& check : kinds()) {
        if (hasUnit && !read(m_text->text(), check, false, m_style)) continue;
        const auto dimension = readingDimension(check);
        if (!dimension || *dimension == Dimension::None) continue;
        const QString unit = symbol(readingUnit(check, m_style.units));
        m_kind->addItem(qs(shippedSentences().text("finder.check." + check)) + u", "_s + unit,
                        qs(check));
    }
    if (const int same = m_kind->findData(before); same >= 0 && !hasUnit)
        m_kind->setCurrentIndex(same);
}

void ReadingBar::take() {
    const std::string check = ss(m_kind->currentData().toString());
    const auto value = read(m_text->text(), check, true, m_style);
    m_problem->setVisible(!value);
    if (!value) {
        m_problem->setText(
            tr("This is no figure with a unit of a reading: “24 psi”, “36 gal/min”, "
               "“13 mph”."));
        return;
    }
    const QString unit = symbol(readingUnit(check, m_style.units));
    const bool hasUnit = readingIn(m_text->text(), m_style).has_value();
    const QString typed =
        hasUnit ? m_text->text().trimmed() : m_text->text().trimmed() + u' ' + unit;
    hide();
    Q_EMIT given({check, {}, value, ss(typed)});
}

void ReadingBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
    hide();
    Q_EMIT closed();
}

}  // namespace bw
