// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/window_paint.h"

#include <QFontMetricsF>
#include <QObject>
#include <algorithm>

#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

struct Lit {
    double from, to;  ///< in the reader's unit; from > to: nothing holds
};

Lit litOf(const WindowStudy& study) {
    const SpeedWindow& w = study.window();
    const WindowEnd& low = w.allRates ? w.allRates->low : w.low;
    const WindowEnd& high = w.allRates ? w.allRates->high : w.high;
    if (w.allRates ? w.allRates->empty : w.empty) return {study.xTo, study.xFrom};
    return {study.x(low.speed.value_or(Speed{})), high.speed ? study.x(*high.speed) : study.xTo};
}

/// Text centred on x, kept inside [left, right].
QRectF textBox(const QFontMetricsF& metrics, const QString& text, double x, double bottom,
               double left, double right) {
    QRectF box(0, bottom - metrics.height(), metrics.horizontalAdvance(text), metrics.height());
    box.moveLeft(std::clamp(x - box.width() / 2, left, std::max(left, right - box.width())));
    return box;
}

}  // namespace

void paintLitWindow(QPainter& painter, const ChartMap& map, const WindowStudy& study) {
    const JobDemand& d = study.model().demand();
    if (d.fast > d.slow)
        painter.fillRect(map.columns(study.x(d.slow), study.x(d.fast)),
                         map.color(Role::AccentTint));
    const Lit lit = litOf(study);
    const QColor veil = map.color(Role::Veil);
    if (lit.from > lit.to) {
        painter.fillRect(map.plot(), veil);
        return;
    }
    if (lit.from > study.xFrom) painter.fillRect(map.columns(study.xFrom, lit.from), veil);
    if (lit.to < study.xTo) painter.fillRect(map.columns(lit.to, study.xTo), veil);
}

std::vector<double> postsOf(const WindowStudy& study) {
    const Lit lit = litOf(study);
    std::vector<double> out;
    if (lit.from <= lit.to) out = {lit.from, lit.to};
    if (study.window().restrictor) out.push_back(study.x(study.window().restrictor->crossingSpeed));
    return out;
}

void paintPosts(QPainter& painter, const ChartMap& map, const WindowStudy& study) {
    const Lit lit = litOf(study);
    if (lit.from > lit.to) return;
    const bool open = isOpen(study.window(), study.hand().nozzle);
    QPen pen(map.color(open ? Role::Unchecked : Role::Ink), map.px(2.2), Qt::SolidLine,
             Qt::FlatCap);
    if (open) pen.setDashPattern({3, 2});
    painter.setPen(pen);
    for (const double x : {lit.from, lit.to}) {
        if (x <= study.xFrom || x >= study.xTo) continue;
        painter.drawLine(QPointF(map.x(x), map.plot().top()),
                         QPointF(map.x(x), map.plot().bottom()));
    }
}

void paintJobSpeeds(QPainter& painter, const ChartMap& map, const WindowStudy& study) {
    const JobDemand& d = study.model().demand();
    const QRectF plot = map.plot();
    const double slow = map.x(study.x(d.slow)), usual = map.x(study.x(d.usual)),
                 fast = map.x(study.x(d.fast));
    const double y = plot.top() - map.px(4);
    painter.setPen(QPen(map.color(Role::Accent), map.px(2.4), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(slow - map.px(1.2), y), QPointF(fast + map.px(1.2), y));
    for (const double x : {slow, usual, fast})
        painter.drawLine(QPointF(x, y), QPointF(x, plot.top() + map.px(2)));
    const auto words = [&](const QString& name, Speed speed) {
        return name + u' ' + figure(speed, study.style);
    };
    const QFontMetricsF bold(map.font(TextSize::Small, true)), plain(map.font(TextSize::Small));
    const double bottom = y - map.px(3);
    const QString middle = words(QObject::tr("usual"), d.usual);
    const QRectF box = textBox(bold, middle, usual, bottom, plot.left(), plot.right());
    painter.setFont(map.font(TextSize::Small, true));
    painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, middle);
    painter.setFont(map.font(TextSize::Small));
    const double gap = map.px(6);
    if (d.slow < d.usual) {
        const QString text = words(QObject::tr("slow"), d.slow);
        painter.drawText(textBox(plain, text, slow, bottom, 0, box.left() - gap),
                         Qt::AlignCenter | Qt::TextDontClip, text);
    }
    if (d.fast > d.usual) {
        const QString text = words(QObject::tr("fast"), d.fast);
        painter.drawText(
            textBox(plain, text,
                    std::max(fast, box.right() + gap + plain.horizontalAdvance(text) / 2), bottom,
                    box.right() + gap, plot.right() + map.px(kRoomRight)),
            Qt::AlignCenter | Qt::TextDontClip, text);
    }
}

std::vector<QRectF> paintChangeover(QPainter& painter, const ChartMap& map,
                                    const WindowStudy& study, double y) {
    std::vector<QRectF> plates;
    if (!study.window().restrictor) return plates;
    const Speed crossing = study.window().restrictor->crossingSpeed;
    const double x = map.x(study.x(crossing));
    const QRectF plot = map.plot();
    if (x <= plot.left() || x >= plot.right()) return plates;
    QPen dashed(map.color(Role::Ink), map.px(1.6), Qt::CustomDashLine, Qt::FlatCap);
    dashed.setDashPattern({4, 3});
    painter.setPen(dashed);
    painter.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
    const QString speed = figure(crossing, study.style);
    const QString flow = shown(study.machine.restrictor.changeoverFlow->value, study.style);
    const QFontMetricsF metrics(map.font(TextSize::Small));
    // Each word on its own side where it fits, else above the other one.
    const auto plate = [&](const QString& text, bool onLeft) {
        const double width = metrics.horizontalAdvance(text) + map.px(16);
        const bool fits = onLeft ? width < x - plot.left() : width < plot.right() - x;
        const bool left = fits == onLeft;
        const double bottom = fits ? y : y - metrics.height() - map.px(6);
        plates.push_back(paintPlate(painter, map, {x + map.px(left ? -3 : 3), bottom},
                                    (left ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignBottom,
                                    text));
    };
    if (study.isOnWall) {
        const bool isRight = x > plot.center().x();
        plates.push_back(paintPlate(painter, map,
                                    {x + map.px(isRight ? -3 : 3), plot.bottom() - map.px(3)},
                                    (isRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignBottom,
                                    QObject::tr("full bore from %1").arg(speed)));
        return plates;
    }
    plate(u"◂ "_s + QObject::tr("narrowed up to %1").arg(speed), true);
    plate(QObject::tr("full bore from %1, %2").arg(speed, flow) + u" ▸"_s, false);
    return plates;
}

void paintAxisTitle(QPainter& painter, const ChartMap& map, const QString& title) {
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    painter.drawText(QPointF(map.px(2), map.plot().top() - map.px(kRoomTop - 11)), title);
}

}  // namespace bw
