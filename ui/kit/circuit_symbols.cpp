// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/circuit_symbols.h"

#include <QPainterPath>
#include <cmath>

namespace bw::symbols {
namespace {

constexpr double kPipe = 8.0;
constexpr double kPi = 3.14159265358979;

QPolygonF polygon(std::initializer_list<QPointF> points) {
    return QPolygonF(QList<QPointF>(points));
}

void fillRaised(QPainter& painter) {
    painter.setBrush(color(Role::Raised));
}

}  // namespace

void outline(QPainter& painter, bool isKnown) {
    QPen pen(color(isKnown ? Role::Ink : Role::Unchecked), 1.6);
    pen.setCapStyle(isKnown ? Qt::RoundCap : Qt::FlatCap);
    if (!isKnown) pen.setDashPattern({2.4, 1.8});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
}

void pipe(QPainter& painter, const QPolygonF& along, const QColor& tone) {
    painter.setBrush(Qt::NoBrush);
    QPen wall(color(Role::Ink), kPipe + 2.4, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    painter.setPen(wall);
    painter.drawPolyline(along);
    wall.setColor(tone);
    wall.setWidthF(kPipe);
    painter.setPen(wall);
    painter.drawPolyline(along);
}

void tank(QPainter& painter, const QRectF& box, bool isKnown) {
    outline(painter, isKnown);
    fillRaised(painter);
    painter.drawRect(QRectF(box.center().x() - 14, box.top() - 8, 28, 8));
    painter.drawRoundedRect(box, 10, 10);
    const double level = box.top() + box.height() * 0.26;
    QPainterPath water(QPointF(box.left() + 1, level));
    water.cubicTo(QPointF(box.left() + box.width() * 0.25, level - 7),
                  QPointF(box.left() + box.width() * 0.3, level + 7),
                  QPointF(box.center().x(), level));
    water.cubicTo(QPointF(box.left() + box.width() * 0.7, level - 7),
                  QPointF(box.left() + box.width() * 0.75, level + 7),
                  QPointF(box.right() - 1, level));
    QPainterPath inside = water;
    inside.lineTo(box.right() - 1, box.bottom() - 10);
    inside.quadTo(QPointF(box.right() - 1, box.bottom() - 1),
                  QPointF(box.right() - 11, box.bottom() - 1));
    inside.lineTo(box.left() + 11, box.bottom() - 1);
    inside.quadTo(QPointF(box.left() + 1, box.bottom() - 1),
                  QPointF(box.left() + 1, box.bottom() - 10));
    inside.closeSubpath();
    painter.fillPath(inside, color(Role::AccentTint));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(color(Role::Ink), 1.2));
    painter.drawPath(water);
}

void strainer(QPainter& painter, QPointF at, double size, bool isKnown) {
    outline(painter, isKnown);
    fillRaised(painter);
    const double half = size / 2;
    painter.drawPolygon(polygon({at + QPointF(-half, 0), at + QPointF(0, -half * 0.8),
                                 at + QPointF(half, 0), at + QPointF(0, half * 0.8)}));
    painter.setPen(QPen(color(isKnown ? Role::Ink : Role::Unchecked), 1, Qt::DotLine));
    for (const double x : {-0.3, 0.0, 0.3}) {
        const double reach = half * 0.8 * (1 - std::abs(x)) * 0.8;
        painter.drawLine(at + QPointF(x * half, -reach), at + QPointF(x * half, reach));
    }
}

void valve(QPainter& painter, QPointF at, double size, bool isUpright, bool hasStem, bool isKnown) {
    painter.save();
    painter.translate(at);
    if (isUpright) painter.rotate(90);
    outline(painter, isKnown);
    fillRaised(painter);
    const double half = size / 2;
    painter.drawPolygon(polygon({{-half, -half * 0.75}, {0, 0}, {-half, half * 0.75}}));
    painter.drawPolygon(polygon({{half, -half * 0.75}, {0, 0}, {half, half * 0.75}}));
    if (hasStem) {
        painter.drawLine(QPointF(0, 0), QPointF(0, -half * 1.25));
        painter.drawLine(QPointF(-half * 0.6, -half * 1.25), QPointF(half * 0.6, -half * 1.25));
    }
    painter.restore();
}

void pump(QPainter& painter, QPointF at, double radius, const Known<PumpKind>& kind) {
    outline(painter, kind.has_value());
    fillRaised(painter);
    painter.drawEllipse(at, radius, radius);
    painter.setBrush(color(Role::Ink));
    painter.setPen(Qt::NoPen);
    const double r = radius * 0.62;
    if (!kind) {
        QFont font = painter.font();
        font.setBold(true);
        painter.setFont(font);
        painter.setPen(color(Role::Unchecked));
        painter.drawText(QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius),
                         Qt::AlignCenter, QStringLiteral("?"));
    } else if (kind->value == PumpKind::Centrifugal) {
        painter.drawPolygon(polygon(
            {at + QPointF(-r * 0.8, -r), at + QPointF(r * 1.1, 0), at + QPointF(-r * 0.8, r)}));
    } else {
        for (const double x : {-r * 0.85, r * 0.1})
            painter.drawPolygon(polygon({at + QPointF(x, -r * 0.8), at + QPointF(x + r * 0.85, 0),
                                         at + QPointF(x, r * 0.8)}));
    }
}

void speedArrow(QPainter& painter, QPointF at, double radius) {
    outline(painter);
    const QRectF box(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius);
    painter.drawArc(box, 40 * 16, 100 * 16);
    const double angle = 40 * kPi / 180;
    arrow(painter, at + QPointF(radius * std::cos(angle), -radius * std::sin(angle)), 50);
}

void meter(QPainter& painter, QPointF at, double radius, bool isKnown) {
    outline(painter, isKnown);
    fillRaised(painter);
    painter.drawEllipse(at, radius, radius);
    for (const double degrees : {90.0, 210.0, 330.0}) {
        const double angle = degrees * kPi / 180;
        painter.drawLine(
            at, at + QPointF(std::cos(angle) * radius * 0.7, -std::sin(angle) * radius * 0.7));
    }
    painter.setBrush(painter.pen().color());
    painter.drawEllipse(at, 2.2, 2.2);
}

void restrictor(QPainter& painter, QPointF at, double size, bool isKnown) {
    outline(painter, isKnown);
    fillRaised(painter);
    const double half = size / 2;
    QPainterPath neck(at + QPointF(-half, -half * 0.6));
    neck.quadTo(at + QPointF(0, half * 0.35), at + QPointF(half, -half * 0.6));
    neck.lineTo(at + QPointF(half, half * 0.6));
    neck.quadTo(at + QPointF(0, -half * 0.35), at + QPointF(-half, half * 0.6));
    neck.closeSubpath();
    painter.drawPath(neck);
    painter.drawLine(at, at + QPointF(0, -half));
    painter.drawLine(at + QPointF(-half * 0.4, -half), at + QPointF(half * 0.4, -half));
}

void dial(QPainter& painter, QPointF foot, double radius) {
    outline(painter);
    painter.drawLine(foot, foot - QPointF(0, radius));
    fillRaised(painter);
    const QPointF centre = foot - QPointF(0, 2 * radius);
    painter.drawEllipse(centre, radius, radius);
    painter.drawLine(centre, centre + QPointF(radius * 0.5, -radius * 0.5));
}

void arrow(QPainter& painter, QPointF at, double angle) {
    painter.save();
    painter.translate(at);
    painter.rotate(angle);
    painter.setPen(Qt::NoPen);
    painter.setBrush(color(Role::Ink));
    painter.drawPolygon(polygon({{-4, -3.5}, {4, 0}, {-4, 3.5}}));
    painter.restore();
}

}  // namespace bw::symbols
