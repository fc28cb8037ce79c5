// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainterPath>
#include <algorithm>

#include "ui/kit/circuit_layout.h"
#include "ui/kit/circuit_symbols.h"
#include "ui/kit/circuit_view.h"
#include "ui/kit/quantity_format.h"

/// How the circuit is painted; places and clicks are in circuit_view.cpp.
namespace bw {

using namespace Qt::StringLiterals;
using namespace circuit;

namespace {

constexpr int kSmall = 11;
constexpr double kFanStep = 5;  ///< nearer than this, nozzles are drawn as fewer fans

QFont fontOf(QPainter& painter, bool isBold) {
    QFont font = painter.font();
    font.setPixelSize(kSmall);
    font.setBold(isBold);
    return font;
}

/// A name under or over a part, with a quiet second line.
void label(QPainter& painter, QPointF top, const QString& name, const QString& quiet = {},
           Qt::Alignment side = Qt::AlignHCenter) {
    const double room = side & Qt::AlignHCenter ? 170 : 400;
    const double left = side & Qt::AlignHCenter ? top.x() - room / 2
                        : side & Qt::AlignRight ? top.x() - room
                                                : top.x();
    painter.setFont(fontOf(painter, false));
    painter.setPen(color(Role::Ink));
    painter.drawText(QRectF(left, top.y(), room, 14), side | Qt::AlignTop, name);
    painter.setPen(color(Role::Quiet));
    painter.drawText(QRectF(left, top.y() + 13, room, 14), side | Qt::AlignTop, quiet);
}

void plate(QPainter& painter, const QRectF& box) {
    painter.setPen(QPen(color(Role::Edge), 1));
    painter.setBrush(color(Role::Raised));
    painter.drawRoundedRect(box, 3, 3);
}

/// A figure on a plate.
void tag(QPainter& painter, const QRectF& box, const QString& text) {
    plate(painter, box);
    painter.setFont(fontOf(painter, true));
    painter.setPen(color(Role::Ink));
    painter.drawText(box, Qt::AlignCenter, text);
}

/// Two figures on a plate, the first the weightier; one alone takes the whole plate.
void tag(QPainter& painter, const QRectF& box, const QString& first, const QString& second) {
    if (second.isEmpty()) return tag(painter, box, first);
    plate(painter, box);
    const double half = box.height() / 2;
    painter.setFont(fontOf(painter, true));
    painter.setPen(color(Role::Ink));
    painter.drawText(box.adjusted(0, 1, 0, -half), Qt::AlignCenter, first);
    painter.setFont(fontOf(painter, false));
    painter.drawText(box.adjusted(0, half - 1, 0, -1), Qt::AlignCenter, second);
}

/// What a part takes, over it.
void loss(QPainter& painter, QPointF bottom, const QString& text) {
    if (text.isEmpty()) return;
    painter.setFont(fontOf(painter, true));
    painter.setPen(color(Role::Ink));
    painter.drawText(QRectF(bottom.x() - 60, bottom.y() - 15, 120, 15), Qt::AlignCenter, text);
}

QString meshText(const Known<double>& mesh) {
    return mesh ? CircuitView::tr("%1 mesh").arg(qs(formatExact(mesh->value))) : QString();
}

}  // namespace

void CircuitView::paintPipes(QPainter& painter) const {
    const QColor suction = color(Role::Raised);
    const QColor line = color(Role::AccentTint);
    symbols::pipe(painter,
                  QPolygonF({{kTank.center().x(), kTank.bottom()},
                             {kTank.center().x(), kLineY},
                             {kPump.x(), kLineY}}),
                  suction);
    symbols::pipe(painter, QPolygonF({{kPump.x(), kLineY}, {kDownX, kLineY}, {kDownX, kFeedY}}),
                  line);
    symbols::pipe(painter, QPolygonF({{kBoomLeft, kFeedY}, {kBoomRight, kFeedY}}), line);
    symbols::arrow(painter, {kDownX, kFeedY - 34}, 90);
}

void CircuitView::paintReturns(QPainter& painter) const {
    const QColor tone = color(Role::AccentTint);
    symbols::pipe(painter,
                  QPolygonF({{kAgitationX, kLineY - 5},
                             {kAgitationX, kAgitationY},
                             {kTank.right() + 2, kAgitationY}}),
                  tone);
    symbols::arrow(painter, {kTank.right() + 20, kAgitationY}, 180);
    symbols::valve(painter, kAgitation, 20, false, true, m_machine.agitation.flow.has_value());
    label(painter, kAgitation + QPointF(0, 14), tr("Agitation"));
    if (!m_machine.control || m_machine.control->value != Control::Bypass) return;
    symbols::pipe(
        painter,
        QPolygonF({{kBypassX, kLineY - 5}, {kBypassX, kBypassY}, {kTank.right() + 2, kBypassY}}),
        tone);
    symbols::arrow(painter, {kTank.right() + 20, kBypassY}, 180);
    symbols::valve(painter, kBypass, 22, false, true, true);
    label(painter, kBypass - QPointF(0, 34), tr("By-pass changes the rate"));
}

void CircuitView::paintTankSide(QPainter& painter) const {
    const Machine& m = m_machine;
    symbols::tank(painter, kTank, m.tank.has_value());
    label(painter, {kTank.center().x(), kTank.top() - 25}, tr("Tank"));
    symbols::strainer(painter, kSuctionStrainer, 30, m.strainers.suctionMesh.has_value());
    label(painter, kSuctionStrainer + QPointF(-4, 19), tr("Suction strainer"),
          meshText(m.strainers.suctionMesh));
    painter.setFont(fontOf(painter, true));
    symbols::pump(painter, kPump, 18, m.pump.kind);
    const bool isSpeed = m.control && m.control->value == Control::PumpSpeed;
    if (isSpeed) symbols::speedArrow(painter, kPump, 25);
    const QString kind = !m.pump.kind                                  ? QString()
                         : m.pump.kind->value == PumpKind::Centrifugal ? tr("centrifugal")
                                                                       : tr("diaphragm or piston");
    label(painter, kPump + QPointF(12, 22), isSpeed ? tr("Pump, its speed") : tr("Pump"),
          isSpeed ? tr("changes the rate") : kind);
}

void CircuitView::paintLine(QPainter& painter) const {
    const Machine& m = m_machine;
    symbols::strainer(painter, kLineStrainer, 30, m.strainers.lineMesh.has_value());
    label(painter, kLineStrainer + QPointF(0, 19), tr("Line strainer"),
          meshText(m.strainers.lineMesh));
    if (part(u"control"_s) && m.control->value == Control::Throttle) {
        symbols::valve(painter, kThrottle, 22, false, true, true);
        label(painter, kThrottle - QPointF(0, 46), tr("Valve changes"), tr("the rate"));
    }
    if (part(u"meter"_s)) {
        symbols::meter(painter, kMeter, 17, m.senses.has_value());
        label(painter, kMeter + QPointF(0, 22), m.senses ? tr("Flow meter") : tr("Flow meter?"));
    }
    if (part(u"restrictor"_s)) {
        symbols::restrictor(painter, kRestrictor, 40, true);
        const bool isNarrowed =
            m.restrictor.position && m.restrictor.position->value == RestrictorPosition::Narrowed;
        label(painter, kRestrictor + QPointF(0, 22), tr("Restrictor"),
              !m.restrictor.position ? QString()
              : isNarrowed           ? tr("narrowed")
                                     : tr("at full bore"));
    }
    symbols::dial(painter, kSensor - QPointF(0, 5), 13);
    label(painter, kSensor + QPointF(27, -50), tr("Boom sensor"), {}, Qt::AlignLeft);
}

void CircuitView::paintSections(QPainter& painter) const {
    label(
        painter, {kBoomLeft, kFeedY - 22},
        m_machine.strainers.sectionMesh
            ? tr("Section valves and strainers, %1").arg(meshText(m_machine.strainers.sectionMesh))
            : tr("Section valves"),
        {}, Qt::AlignLeft);
    if (m_sections.empty()) {
        painter.setFont(fontOf(painter, false));
        painter.setPen(color(Role::Unchecked));
        painter.drawText(QRectF(kBoomLeft, kFeedY + 8, kBoomRight - kBoomLeft, 30), Qt::AlignCenter,
                         tr("Sections not known yet"));
    }
    for (std::size_t i = 0; i < m_sections.size(); ++i) paintSection(painter, i);
}

void CircuitView::paintSection(QPainter& painter, std::size_t index) const {
    const QRectF& box = m_sections[index];
    const double x = box.center().x();
    const double size = std::clamp(box.width() * 0.5, 6.0, 14.0);
    const bool hasStrainer = m_machine.strainers.sectionMesh.has_value();
    symbols::outline(painter);
    painter.drawLine(QPointF(x, kFeedY + 5), QPointF(x, box.top()));
    symbols::valve(painter, {x, kFeedY + (hasStrainer ? 16 : 26)}, size, true, false, true);
    if (hasStrainer) symbols::strainer(painter, {x, kFeedY + 35}, size * 1.1, true);
    symbols::pipe(painter, QPolygonF({{box.left(), box.top()}, {box.right(), box.top()}}),
                  color(Role::AccentTint));
    const int nozzles = m_machine.sections->value[index];
    const int fans = std::clamp(nozzles, 1, std::max(1, static_cast<int>(box.width() / kFanStep)));
    painter.setPen(QPen(color(Role::Ink), 0.9));
    painter.setBrush(Qt::NoBrush);
    QPainterPath path;
    const double step = box.width() / fans;
    for (int i = 0; i < fans; ++i) {
        const double left = box.left() + i * step;
        path.moveTo(left, box.top() + 19);
        path.lineTo(left + step / 2, box.top() + 6);
        path.lineTo(left + step, box.top() + 19);
    }
    painter.drawPath(path);
    const QString whole = tr("Section %1 \u00b7 %2").arg(index + 1).arg(nozzles);
    const QString few = QString::number(nozzles);
    painter.setFont(fontOf(painter, false));
    painter.setPen(color(Role::Quiet));
    const bool hasRoom = painter.fontMetrics().horizontalAdvance(whole) < box.width() + 8;
    if (hasRoom || painter.fontMetrics().horizontalAdvance(few) < box.width() + 4)
        painter.drawText(QRectF(x - 60, box.top() + 22, 120, 15), Qt::AlignCenter,
                         hasRoom ? whole : few);
}

void CircuitView::paintTags(QPainter& painter) const {
    const QPointF flowAt = part(u"meter"_s) ? kMeter : QPointF(440, kLineY);
    if (!m_readings.boomFlow.isEmpty()) {
        painter.setPen(QPen(color(Role::Edge), 1));
        painter.drawLine(flowAt + QPointF(0, -50), flowAt + QPointF(0, -19));
        tag(painter, QRectF(flowAt.x() - 50, flowAt.y() - 84, 100, 34), m_readings.boomFlow,
            m_readings.meterLoss);
    }
    if (!m_readings.sensorPressure.isEmpty())
        tag(painter, QRectF(kSensor.x() + 26, kSensor.y() - 34, 76, 20), m_readings.sensorPressure);
    if (!m_readings.nozzle.isEmpty())
        tag(painter, QRectF(kBoomLeft, kHeight - 22, 320, 20), m_readings.nozzle);
}

void CircuitView::paintPumpTags(QPainter& painter) const {
    if (!m_readings.pumpOutlet.isEmpty()) {
        const QRectF box(kBypassX + 8, kLineY - 118, 82, 34);
        painter.setPen(QPen(color(Role::Edge), 1));
        painter.drawLine(QPointF(box.left() + 4, box.bottom()),
                         QPointF(box.left() + 4, kLineY - 6));
        tag(painter, box, m_readings.pumpOutlet, m_readings.pumpFlow);
    }
    if (!m_readings.agitation.isEmpty())
        tag(painter, QRectF(kAgitation.x() - 44, kAgitationY + 31, 88, 19), m_readings.agitation);
    if (!m_readings.bypass.isEmpty())
        tag(painter, QRectF(kBypassX + 8, kBypassY - 24, 82, 20), m_readings.bypass);
}

void CircuitView::paintLosses(QPainter& painter) const {
    loss(painter, kSuctionStrainer + QPointF(6, -17), m_readings.suctionLoss);
    loss(painter, kLineStrainer + QPointF(0, -17), m_readings.lineLoss);
    loss(painter, kThrottle + QPointF(0, -48), m_readings.valveLoss);
    if (part(u"restrictor"_s))
        loss(painter, kRestrictor + QPointF(2, -24), m_readings.restrictorLoss);
    if (m_readings.sectionLoss.isEmpty()) return;
    painter.setFont(fontOf(painter, true));
    painter.setPen(color(Role::Ink));
    painter.drawText(QRectF(kBoomLeft, kFeedY - 22, kDownX - kBoomLeft - 10, 14), Qt::AlignRight,
                     m_readings.sectionLoss);
}

void CircuitView::paintRing(QPainter& painter) const {
    const CircuitPart* inHand = part(partOfField(m_machine, m_inHand));
    if (!inHand) return;
    painter.setPen(QPen(color(Role::Accent), 2));
    painter.setBrush(color(Role::AccentTint));
    const QRectF& box = inHand->box;
    if (box.width() < 90) {
        const double radius = std::max(box.width(), box.height()) / 2 + 4;
        painter.drawEllipse(box.center(), radius, radius);
    } else {
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(box, 8, 8);
    }
}

}  // namespace bw
