// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/chart_panel.h"

#include <QApplication>
#include <QClipboard>
#include <QMimeData>
#include <QPainter>
#include <QVBoxLayout>
#include <cmath>

#include "ui/kit/chart_view.h"
#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Decimals that tell the ticks apart.
int decimalsOf(const std::vector<double>& ticks, int wanted) {
    if (wanted >= 0) return wanted;
    for (int decimals = 0; decimals < 6; ++decimals) {
        const double scale = std::pow(10.0, decimals);
        const bool exact = std::all_of(ticks.begin(), ticks.end(), [scale](double t) {
            return std::abs(t * scale - std::round(t * scale)) <
                   1e-6 * std::max(1.0, std::abs(t * scale));
        });
        if (exact) return decimals;
    }
    return 6;
}

std::vector<double> ticksOf(const ChartAxis& axis, int count) {
    return axis.ticks.empty() ? niceTicks(axis.from, axis.to, count) : axis.ticks;
}

double niceStep(double range, int count) {
    const double raw = range / std::max(1, count);
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    const double part = raw / power;
    return power * (part <= 1.0 + 1e-9   ? 1.0
                    : part <= 2.0 + 1e-9 ? 2.0
                    : part <= 2.5 + 1e-9 ? 2.5
                    : part <= 5.0 + 1e-9 ? 5.0
                                         : 10.0);
}

}  // namespace

std::vector<double> niceTicks(double from, double to, int count) {
    std::vector<double> ticks;
    if (!(to > from) || !std::isfinite(to - from)) return ticks;
    const double step = niceStep(to - from, count);
    const double first = std::ceil(from / step - 1e-9);
    const double last = std::floor(to / step + 1e-9);
    for (double k = first; k <= last; k += 1.0) ticks.push_back(k * step + 0.0);
    return ticks;
}

std::pair<double, double> niceRange(double from, double to, int count) {
    if (!(to > from)) to = from + std::max(1.0, std::abs(from) * 0.1);
    const double step = niceStep(to - from, count);
    return {std::floor(from / step + 1e-9) * step, std::ceil(to / step - 1e-9) * step};
}

QRectF ChartMap::box(double xFrom, double xTo, double yFrom, double yTo) const {
    return QRectF(QPointF(x(xFrom), y(yTo)), QPointF(x(xTo), y(yFrom)))
        .normalized()
        .intersected(m_plot);
}
QRectF ChartMap::columns(double xFrom, double xTo) const {
    return box(xFrom, xTo, m_yFrom, m_yTo);
}
QRectF ChartMap::rows(double yFrom, double yTo) const {
    return box(m_xFrom, m_xTo, yFrom, yTo);
}

QFont ChartMap::font(TextSize size, bool bold) const {
    QFont font = textFont(size, bold);
    font.setPixelSize(std::max(4, static_cast<int>(std::lround(QFontInfo(font).pixelSize() *
                                                               m_scale * 12.0 / bodyPixels()))));
    return font;
}

QRectF paintPlate(QPainter& painter, const ChartMap& map, QPointF at, Qt::Alignment anchor,
                  const QString& text, Role ink, TextSize size, bool bold, Role plate) {
    const QFont font = map.font(size, bold);
    const QFontMetricsF metrics(font);
    const QSizeF words = metrics.size(0, text);
    QRectF box(at, words + QSizeF(map.px(8), map.px(2)));
    if (anchor & Qt::AlignRight) box.moveRight(at.x());
    if (anchor & Qt::AlignHCenter) box.moveLeft(at.x() - box.width() / 2);
    if (anchor & Qt::AlignBottom) box.moveBottom(at.y());
    if (anchor & Qt::AlignVCenter) box.moveTop(at.y() - box.height() / 2);
    painter.save();
    painter.fillRect(box, map.color(plate));
    painter.setFont(font);
    painter.setPen(map.color(ink));
    const Qt::Alignment side = anchor & Qt::AlignRight     ? Qt::AlignRight
                               : anchor & Qt::AlignHCenter ? Qt::AlignHCenter
                                                           : Qt::AlignLeft;
    painter.drawText(box.adjusted(map.px(4), 0, -map.px(4), 0),
                     static_cast<int>(side | Qt::AlignVCenter), text);
    painter.restore();
    return box;
}

void paintRibbon(QPainter& painter, const ChartMap& map, const std::vector<QPointF>& values,
                 const QColor& fill, double width) {
    if (values.size() < 2) return;
    QPainterPath path(map.point(values.front()));
    for (std::size_t i = 1; i < values.size(); ++i) path.lineTo(map.point(values[i]));
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(
        QPen(map.color(Role::Ink), map.px(width + 2.6), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(fill, map.px(width), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.restore();
}

ChartPanel::ChartPanel(QWidget* parent) : QWidget(parent), m_view(new ChartView(*this)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_view);
    setFocusProxy(m_view);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    connect(&theme(), &Theme::changed, this, [this] { m_view->restyle(); });
}

ChartPanel::~ChartPanel() = default;

void ChartPanel::setData(ChartData data) {
    m_data = std::move(data);
    m_view->setAccessibleName(m_data.name);
    m_view->setAccessibleDescription(m_data.summary);
    m_view->fill();
}

void ChartPanel::setUnderlay(Hook hook) {
    m_underlay = std::move(hook);
    m_view->repaintAll();
}
void ChartPanel::setOverlay(Hook hook) {
    m_overlay = std::move(hook);
    m_view->repaintAll();
}
void ChartPanel::setFrame(Hook hook) {
    m_frame = std::move(hook);
    m_view->repaintAll();
}

void ChartPanel::setRoom(double left, double top, double right, double bottom) {
    m_room[0] = left;
    m_room[1] = top;
    m_room[2] = right;
    m_room[3] = bottom;
    m_view->place();
}

void ChartPanel::setCursor(std::optional<double> x, std::vector<double> rings) {
    m_cursor = x;
    m_rings = std::move(rings);
    m_view->repaintAll();
}

void ChartPanel::setCursorRange(double from, double to, double step) {
    m_cursorFrom = from;
    m_cursorTo = to;
    m_cursorStep = step;
    m_view->setFocusPolicy(to > from ? Qt::StrongFocus : Qt::NoFocus);
    m_view->setMouseTracking(to > from);
}

void ChartPanel::moveCursor(double x) {
    if (!(m_cursorTo > m_cursorFrom)) return;
    if (m_cursorStep > 0) x = std::round(x / m_cursorStep) * m_cursorStep;
    x = std::clamp(x, m_cursorFrom, m_cursorTo);
    if (m_cursor != x) Q_EMIT cursorMoved(x);
}

void ChartPanel::setLook(std::optional<Look> look) {
    m_look = look;
    m_view->restyle();
}

Look ChartPanel::look() const {
    return m_look.value_or(theme().look());
}

QRectF ChartPanel::plotRect(QSizeF size, double scale) const {
    const QRectF all(QPointF(), size);
    const QRectF plot =
        all.adjusted(m_room[0] * scale, m_room[1] * scale, -m_room[2] * scale, -m_room[3] * scale);
    return plot.width() > 4 && plot.height() > 4 ? plot : QRectF(0, 0, 4, 4);
}

ChartMap ChartPanel::map() const {
    const double scale = bodyPixels() / 12.0;
    return {plotRect(m_view->viewport()->size(), scale), m_data.x, m_data.y, look(), scale};
}

void ChartPanel::paintBack(QPainter& painter, const ChartMap& map) {
    painter.fillRect(map.plot(), map.color(Role::Raised));
    painter.save();
    painter.setClipRect(map.plot(), Qt::IntersectClip);
    if (m_underlay) m_underlay(painter, map);
    painter.restore();
    painter.setPen(QPen(map.color(Role::Line), map.px(1)));
    QColor line = map.color(Role::Line);
    line.setAlphaF(0.7F);
    painter.setPen(QPen(line, map.px(1)));
    for (const double t : ticksOf(m_data.x, 7))
        painter.drawLine(QPointF(map.x(t), map.plot().top()),
                         QPointF(map.x(t), map.plot().bottom()));
    for (const double t : ticksOf(m_data.y, 6))
        painter.drawLine(QPointF(map.plot().left(), map.y(t)),
                         QPointF(map.plot().right(), map.y(t)));
}

void ChartPanel::paintFront(QPainter& painter, const ChartMap& map) {
    painter.save();
    painter.setClipRect(map.plot(), Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const auto& curve : m_data.curves) {
        const CurveStyle style = map.curve(curve.style);
        for (const QPointF& at : curve.markers) {
            if (curve.isVisible)
                paintMarker(painter, map.point(at), style.marker, map.px(8), style.color,
                            map.color(Role::Raised));
        }
    }
    if (m_overlay) m_overlay(painter, map);
    painter.restore();
    paintTicks(painter, map);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_frame) m_frame(painter, map);
    painter.restore();
    paintCursor(painter, map);
    paintLevel(painter, map);
}

void ChartPanel::paintTicks(QPainter& painter, const ChartMap& map) {
    painter.save();
    const QRectF plot = map.plot();
    painter.setPen(QPen(map.color(Role::Edge), map.px(1.3)));
    painter.drawLine(plot.bottomLeft(), plot.bottomRight());
    painter.drawLine(plot.bottomLeft(), plot.topLeft());
    painter.setFont(map.font(TextSize::Small));
    const QFontMetricsF metrics(painter.font());
    const auto xTicks = ticksOf(m_data.x, 7);
    const auto yTicks = ticksOf(m_data.y, 6);
    const QPen words(map.color(Role::Quiet)), stroke(map.color(Role::Edge), map.px(1.3));
    const double half = map.px(40);
    const auto label = [&](double t, const std::vector<double>& ticks, const ChartAxis& axis) {
        return qs(formatFixed(t, decimalsOf(ticks, axis.decimals), m_data.decimalMark));
    };
    for (const double t : xTicks) {
        const double x = map.x(t);
        painter.setPen(stroke);
        painter.drawLine(QPointF(x, plot.bottom()), QPointF(x, plot.bottom() + map.px(4)));
        painter.setPen(words);
        painter.drawText(QRectF(x - half, plot.bottom() + map.px(5), 2 * half, metrics.height()),
                         Qt::AlignHCenter | Qt::AlignTop, label(t, xTicks, m_data.x));
    }
    for (const double t : yTicks) {
        const double y = map.y(t);
        painter.setPen(stroke);
        painter.drawLine(QPointF(plot.left() - map.px(4), y), QPointF(plot.left(), y));
        painter.setPen(words);
        painter.drawText(QRectF(plot.left() - map.px(7) - 2 * half, y - metrics.height() / 2,
                                2 * half, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, label(t, yTicks, m_data.y));
    }
    painter.setPen(words);
    if (!m_data.y.title.isEmpty())
        painter.drawText(
            QPointF(std::max(0.0, plot.left() - map.px(m_room[0] - 2)), plot.top() - map.px(8)),
            m_data.y.title);
    if (!m_data.x.unit.isEmpty()) {
        const double lastHalf =
            xTicks.empty() ? 0
                           : metrics.horizontalAdvance(label(xTicks.back(), xTicks, m_data.x)) / 2;
        const double lastX = xTicks.empty() ? plot.right() : map.x(xTicks.back());
        painter.drawText(
            QPointF(lastX + lastHalf + map.px(5), plot.bottom() + map.px(5) + metrics.ascent()),
            m_data.x.unit);
    }
    if (!m_data.x.title.isEmpty())
        painter.drawText(
            QRectF(plot.left(), plot.bottom() + map.px(20), plot.width(), metrics.height()),
            Qt::AlignHCenter | Qt::AlignTop, m_data.x.title);
    painter.restore();
}

void ChartPanel::paintCursor(QPainter& painter, const ChartMap& map) {
    if (!m_cursor || map.look() == Look::Print) return;
    const double x = map.x(*m_cursor);
    const QRectF plot = map.plot();
    if (x < plot.left() - 1 || x > plot.right() + 1) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = map.color(Role::Focus);
    painter.setPen(QPen(ink, map.px(1.6)));
    painter.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom() + map.px(5)));
    for (const double value : m_rings) {
        const double y = map.y(value);
        if (y < plot.top() || y > plot.bottom()) continue;
        painter.setPen(QPen(ink, map.px(1), Qt::CustomDashLine));
        QPen dashed = painter.pen();
        dashed.setDashPattern({3, 3});
        painter.setPen(dashed);
        painter.drawLine(QPointF(plot.left(), y), QPointF(x, y));
        painter.setPen(QPen(ink, map.px(2.4)));
        painter.setBrush(map.color(Role::Raised));
        painter.drawEllipse(QPointF(x, y), map.px(5), map.px(5));
    }
    painter.restore();
}

void ChartPanel::render(QPainter& painter, const QRectF& target, Look look, double scale) {
    m_view->renderInto(painter, target, look, scale);
}

QImage ChartPanel::image(QSize size, Look look) {
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    image.fill(color(Role::Surface, look));
    QPainter painter(&image);
    render(painter, QRectF(QPointF(), size), look, bodyPixels() / 12.0);
    return image;
}

void ChartPanel::copy() {
    auto* data = new QMimeData;
    data->setImageData(image(m_view->viewport()->size() * 2 / 2, look()));
    data->setText(tableText());
    QApplication::clipboard()->setMimeData(data);
}

QString ChartPanel::tableText() const {
    QStringList lines;
    for (const auto& curve : m_data.curves) {
        lines.append(curve.name + u'\t' + m_data.x.unit + u'\t' + m_data.y.title);
        for (const QPointF& p : curve.points) {
            lines.append(u'\t' + qs(formatExact(p.x(), m_data.decimalMark)) + u'\t' +
                         qs(formatExact(p.y(), m_data.decimalMark)));
        }
    }
    return lines.join(u'\n') + u'\n';
}

QSize ChartPanel::minimumSizeHint() const {
    return {px(m_room[0] + m_room[2] + 120), px(m_room[1] + m_room[3] + 80)};
}
QSize ChartPanel::sizeHint() const {
    return {px(560), px(300)};
}

}  // namespace bw
