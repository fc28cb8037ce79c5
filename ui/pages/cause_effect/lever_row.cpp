// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/lever_row.h"

#include <QHBoxLayout>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"

namespace bw {

using namespace Qt::StringLiterals;

LeverTrack::LeverTrack(QWidget* parent) : QSlider(Qt::Horizontal, parent) {
    setFocusPolicy(Qt::StrongFocus);
}

QSize LeverTrack::sizeHint() const {
    return {px(160), px(20)};
}
QSize LeverTrack::minimumSizeHint() const {
    return {px(80), px(20)};
}

void LeverTrack::setHome(std::optional<int> home) {
    m_home = home;
    update();
}

double LeverTrack::placeOf(int value) const {
    const double part = maximum() > minimum()
                            ? static_cast<double>(value - minimum()) / (maximum() - minimum())
                            : 0.0;
    return px(7) + part * (width() - 2 * px(7));
}

int LeverTrack::valueAt(double x) const {
    const double part = (x - px(7)) / std::max(1, width() - 2 * px(7));
    return minimum() +
           static_cast<int>(std::lround(std::clamp(part, 0.0, 1.0) * (maximum() - minimum())));
}

void LeverTrack::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double y = height() / 2.0;
    const double at = placeOf(value());
    painter.setPen(QPen(color(Role::Edge), px(3), Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(px(7), y), QPointF(width() - px(7), y));
    if (m_home && *m_home >= minimum() && *m_home <= maximum()) {
        const double home = placeOf(*m_home);
        painter.setPen(QPen(color(Role::Accent), px(3), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(home, y), QPointF(at, y));
        painter.setPen(QPen(color(Role::Ink), px(2), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(home, y - px(7)), QPointF(home, y + px(7)));
    }
    painter.setPen(QPen(color(hasFocus()    ? Role::Focus
                              : isEnabled() ? Role::Accent
                                            : Role::Disabled),
                        px(2.4)));
    painter.setBrush(color(Role::Raised));
    painter.drawEllipse(QPointF(at, y), px(6), px(6));
    if (!hasFocus()) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(color(Role::Focus), 2));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 3, 3);
}

void LeverTrack::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) setValue(valueAt(event->position().x()));
}
void LeverTrack::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) setValue(valueAt(event->position().x()));
}
void LeverTrack::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

LeverRow::LeverRow(const QString& name, const QString& label, Dimension dimension, Unit unit,
                   QWidget* parent)
    : QWidget(parent),
      m_dimension(dimension),
      m_unit(unit),
      m_label(new TextLabel(label)),
      m_field(new QuantityEdit(dimension, unit)),
      m_track(new LeverTrack),
      m_remove(new IconButton({}, u"close"_s)) {
    setObjectName(name);
    m_field->setObjectName(name + u".field"_s);
    m_field->setLabel(label);
    m_field->setOptional(false);
    m_track->setObjectName(name + u".slider"_s);
    m_track->setAccessibleName(label);
    m_remove->setObjectName(name + u".remove"_s);
    m_remove->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(1));
    auto* row = new QHBoxLayout;
    row->setSpacing(px(6));
    m_label->wrapped();
    row->addWidget(m_label, 1);
    m_field->setFixedWidth(px(112));
    row->addWidget(m_field);
    row->addWidget(m_remove);
    column->addLayout(row);
    column->addWidget(m_track);
    connect(m_track, &QSlider::valueChanged, this, [this](int tick) {
        m_field->setQuantity(at(tick));
        Q_EMIT moved(at(tick));
    });
    connect(m_field, &QuantityEdit::committed, this,
            [this](AnyQuantity value, const QString&) { Q_EMIT moved(value); });
    connect(m_field, &QuantityEdit::cleared, this, &LeverRow::cleared);
    connect(m_remove, &QAbstractButton::clicked, this, &LeverRow::removeWished);
}

void LeverRow::setStyle(const NumberStyle& style, Unit unit) {
    m_unit = unit;
    m_field->setNumberStyle(style);
    m_field->setUnit(unit);
}

AnyQuantity LeverRow::at(int tick) const {
    return {m_dimension, (m_from + tick * m_step) * info(m_unit).inSi};
}

int LeverRow::tickOf(AnyQuantity value) const {
    const double ticks = (value.si / info(m_unit).inSi - m_from) / m_step;
    return static_cast<int>(std::lround(std::clamp(ticks, static_cast<double>(m_track->minimum()),
                                                   static_cast<double>(m_track->maximum()))));
}

void LeverRow::setRange(double from, double to, double step) {
    const QSignalBlocker quiet(m_track);
    m_from = from;
    m_step = step;
    m_track->setRange(0, std::max(1, static_cast<int>(std::lround((to - from) / step))));
    m_track->setPageStep(std::max(1, m_track->maximum() / 10));
}

void LeverRow::setHome(std::optional<AnyQuantity> home) {
    m_home = home;
    m_track->setHome(home ? std::optional(tickOf(*home)) : std::nullopt);
}

void LeverRow::setValue(std::optional<AnyQuantity> value) {
    const QSignalBlocker quiet(m_track);
    if (value && m_field->quantity() != value) m_field->setQuantity(value);
    if (!value) m_field->setQuantity(std::nullopt);
    m_track->setValue(value ? tickOf(*value) : m_track->minimum());
}

std::optional<AnyQuantity> LeverRow::value() const {
    return m_field->quantity();
}

void LeverRow::setOptional(const QString& noneWord) {
    m_field->setOptional(true);
    m_field->setPlaceholder(noneWord);
}

void LeverRow::setBounds(double least, double most) {
    m_field->setBounds(AnyQuantity{m_dimension, least * info(m_unit).inSi},
                       AnyQuantity{m_dimension, most * info(m_unit).inSi});
}

void LeverRow::setRemovable(const QString& words) {
    m_remove->setText(words);
    m_remove->setToolTip(words);
    m_remove->setAccessibleName(words);
    m_remove->show();
}

}  // namespace bw
