// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_watch.h"

#include <QApplication>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/kit/metrics.h"
#include "ui/kit/palette.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr int kTickMs = 100;
constexpr int kWholeTurn = 360 * 16;
}  // namespace

CatchWatch::CatchWatch(QWidget* parent) : QAbstractButton(parent) {
    setFocusPolicy(Qt::TabFocus);
    setToolTip(
        tr("Stop-watch: press to start, press again to stop. It beeps when the time of a "
           "catch is over."));
    m_ticker.setInterval(kTickMs);
    connect(&m_ticker, &QTimer::timeout, this, &CatchWatch::tick);
    connect(this, &QAbstractButton::clicked, this, &CatchWatch::toggleWatch);
    tell();
}

QSize CatchWatch::sizeHint() const {
    return {px(64), px(64)};
}

void CatchWatch::setSeconds(double seconds) {
    if (seconds == m_seconds) return;
    m_seconds = seconds;
    stopWatch();
}

double CatchWatch::secondsLeft() const {
    if (!isRunning()) return m_isOver ? 0.0 : m_seconds;
    return std::max(0.0, m_seconds - static_cast<double>(m_since.elapsed()) / 1000.0);
}

void CatchWatch::toggleWatch() {
    if (isRunning()) return stopWatch();
    if (!(m_seconds > 0)) return;
    m_isOver = false;
    m_since.start();
    m_ticker.start();
    tell();
}

void CatchWatch::stopWatch() {
    m_ticker.stop();
    m_isOver = false;
    tell();
}

void CatchWatch::tick() {
    if (static_cast<double>(m_since.elapsed()) / 1000.0 < m_seconds) return update();
    m_ticker.stop();
    m_isOver = true;
    QApplication::beep();
    tell();
    Q_EMIT over();
}

void CatchWatch::tell() {
    setAccessibleName(m_isOver      ? tr("Stop-watch: time is over")
                      : isRunning() ? tr("Stop-watch, running")
                                    : tr("Stop-watch, %1 s").arg(std::lround(m_seconds)));
    update();
}

void CatchWatch::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double pen = px(5);
    const double side = std::min(width(), height()) - pen - px(4);
    const QRectF ring((width() - side) / 2, (height() - side) / 2, side, side);
    painter.setPen(QPen(color(Role::Line), pen));
    painter.drawEllipse(ring);
    const double gone = m_seconds > 0 ? 1.0 - secondsLeft() / m_seconds : 0.0;
    painter.setPen(
        QPen(color(m_isOver ? Role::Limit : Role::Accent), pen, Qt::SolidLine, Qt::FlatCap));
    painter.drawArc(ring, 90 * 16, -static_cast<int>(gone * kWholeTurn));
    painter.setPen(color(m_isOver ? Role::Limit : Role::Ink));
    painter.setFont(textFont(m_isOver ? TextSize::Body : TextSize::Lead, true));
    const QString text =
        m_isOver ? tr("Stop!") : QString::number(static_cast<int>(std::ceil(secondsLeft())));
    painter.drawText(rect(), Qt::AlignCenter, text);
    if (!hasFocus()) return;
    painter.setPen(QPen(color(Role::Focus), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(rect().adjusted(1, 1, -2, -2), 3, 3);
}

}  // namespace bw
