// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/section_strip.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <cmath>
#include <numeric>

#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kOff = 0.05;  ///< a share further from 1 is off
constexpr double kFanStep = 4.0;

bool isNear(double share) {
    return std::abs(share - 1.0) <= kOff;
}

}  // namespace

SectionStrip::SectionStrip(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Sections of the boom"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize SectionStrip::sizeHint() const {
    return {px(400), px(64)};
}
QSize SectionStrip::minimumSizeHint() const {
    return {px(200), px(64)};
}

void SectionStrip::setSections(const std::vector<int>& nozzles) {
    m_nozzles = nozzles;
    m_isOn.resize(nozzles.size(), true);
    m_current = 0;
    describe();
    update();
}

void SectionStrip::setOn(const std::vector<bool>& isOn) {
    m_isOn = isOn;
    m_isOn.resize(m_nozzles.size(), true);
    describe();
    update();
}

void SectionStrip::setShares(const std::vector<double>& shares) {
    m_shares = shares;
    describe();
    update();
}

QString SectionStrip::words(std::size_t index) const {
    if (!m_isOn[index]) return tr("off");
    if (index >= m_shares.size()) return {};
    return tr("%1 %").arg(std::lround(m_shares[index] * 100.0));
}

void SectionStrip::describe() {
    QStringList all;
    for (std::size_t i = 0; i < m_nozzles.size(); ++i)
        all.append(tr("section %1: %2").arg(i + 1).arg(words(i)));
    setAccessibleDescription(all.join(u", "_s));
}

QRectF SectionStrip::sectionRect(int section) const {
    const int all = std::accumulate(m_nozzles.begin(), m_nozzles.end(), 0);
    if (all <= 0 || section < 0 || section >= static_cast<int>(m_nozzles.size())) return {};
    const double gap = px(6), left = px(42), right = px(16);
    const double room = width() - left - right - gap * static_cast<double>(m_nozzles.size() - 1);
    double x = left;
    for (int i = 0; i < section; ++i)
        x += room * m_nozzles[static_cast<std::size_t>(i)] / all + gap;
    return {x, 0.0, room * m_nozzles[static_cast<std::size_t>(section)] / all,
            static_cast<double>(height())};
}

void SectionStrip::paintSection(QPainter& painter, std::size_t index) const {
    const QRectF box = sectionRect(static_cast<int>(index));
    const bool isOn = m_isOn[index];
    const bool isTold = isOn && index < m_shares.size();
    const double share = isTold ? m_shares[index] : 1.0;
    const QColor ink = color(!isOn ? Role::Disabled : isNear(share) ? Role::Ink : Role::Limit);
    const double y = px(20);
    painter.setPen(QPen(ink, px(2), isOn ? Qt::SolidLine : Qt::DashLine, Qt::FlatCap));
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
    painter.setPen(QPen(ink, px(1.4)));
    painter.drawLine(QPointF(box.left() + 1, y - px(4)), QPointF(box.left() + 1, y + px(4)));
    painter.drawLine(QPointF(box.right() - 1, y - px(4)), QPointF(box.right() - 1, y + px(4)));
    if (isOn && share > 0.02) {
        const int fans = std::clamp(m_nozzles[index], 1,
                                    std::max(1, static_cast<int>(box.width() / px(kFanStep))));
        const double step = box.width() / fans;
        const double reach = px(20) * std::clamp(share, 0.15, 1.25);
        QPainterPath path;
        for (int i = 0; i < fans; ++i) {
            const double x = box.left() + (i + 0.5) * step;
            path.moveTo(x - 0.46 * step, y + reach);
            path.lineTo(x, y + px(3));
            path.lineTo(x + 0.46 * step, y + reach);
        }
        painter.setPen(QPen(ink, px(1)));
        painter.drawPath(path);
    }
    const bool isPlain = !isTold || isNear(share);
    painter.setFont(textFont(TextSize::Small, !isPlain));
    painter.setPen(ink);
    painter.drawText(QRectF(box.left() - px(10), px(46), box.width() + px(20), px(16)),
                     Qt::AlignCenter, words(index));
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Quiet));
    painter.drawText(QRectF(box.left(), 0, box.width(), px(15)), Qt::AlignCenter,
                     QString::number(index + 1));
}

void SectionStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Quiet));
    painter.drawText(QRectF(px(2), px(12), px(40), px(16)), Qt::AlignLeft | Qt::AlignVCenter,
                     tr("Boom"));
    for (std::size_t i = 0; i < m_nozzles.size(); ++i) paintSection(painter, i);
    if (!hasFocus()) return;
    painter.setPen(QPen(color(Role::Focus), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(sectionRect(m_current).adjusted(-2, 1, 2, -1), 3, 3);
}

void SectionStrip::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    for (int i = 0; i < static_cast<int>(m_nozzles.size()); ++i) {
        if (!sectionRect(i).contains(event->position())) continue;
        m_current = i;
        Q_EMIT toggled(i);
        return;
    }
}

void SectionStrip::keyPressEvent(QKeyEvent* event) {
    const int last = static_cast<int>(m_nozzles.size()) - 1;
    switch (event->key()) {
        case Qt::Key_Left:
            m_current = std::max(0, m_current - 1);
            break;
        case Qt::Key_Right:
            m_current = std::min(last, m_current + 1);
            break;
        case Qt::Key_Space:
            if (last >= 0) Q_EMIT toggled(m_current);
            break;
        default:
            return event->ignore();
    }
    update();
}

void SectionStrip::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}
void SectionStrip::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

bool SectionStrip::event(QEvent* event) {
    if (event->type() == QEvent::FontChange) updateGeometry();
    return QWidget::event(event);
}

}  // namespace bw
