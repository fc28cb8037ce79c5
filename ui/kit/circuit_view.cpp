// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/circuit_view.h"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <algorithm>

#include "core/model/machine_fields.h"
#include "ui/kit/circuit_layout.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;
using namespace circuit;

namespace {

bool startsWithAny(const QString& key, std::initializer_list<const char*> starts) {
    return std::any_of(starts.begin(), starts.end(),
                       [&](const char* start) { return key.startsWith(QLatin1String(start)); });
}

QRectF about(QPointF at, double width, double height) {
    return {at.x() - width / 2, at.y() - height / 2, width, height};
}

}  // namespace

QString partOfField(const Machine& m, const QString& key) {
    if (key == u"tank"_s) return u"tank"_s;
    if (startsWithAny(key, {"strainers.suction", "losses.suction", "pump.suction"}))
        return u"suction"_s;
    if (key.startsWith(u"pump."_s)) return u"pump"_s;
    if (key.startsWith(u"agitation."_s)) return u"agitation"_s;
    if (startsWithAny(key, {"control"}))
        return !m.control || m.control->value == Control::PumpSpeed ? u"pump"_s : u"control"_s;
    if (startsWithAny(key, {"strainers.line", "losses.line"})) return u"line"_s;
    if (startsWithAny(key, {"senses", "meter.", "losses.plumbing"}))
        return hasMeterDrawn(m) ? u"meter"_s : u"sensor"_s;
    if (key.startsWith(u"restrictor."_s)) return u"restrictor"_s;
    if (key.startsWith(u"limits."_s)) return u"sensor"_s;
    if (startsWithAny(key, {"sections", "width", "section_returns", "losses.section",
                            "strainers.section", "boom_pipe"}))
        return u"sections"_s;
    if (startsWithAny(key, {"spacing", "check_valve", "body_positions", "sets_aboard",
                            "strainers.nozzle", "pulsed"}))
        return u"nozzles"_s;
    return {};
}

CircuitView::CircuitView(QWidget* parent) : QWidget(parent) {
    setMouseTracking(true);
    setAccessibleName(tr("Drawn circuit of the machine"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    layOut();
}

void CircuitView::setMachine(const Machine& machine) {
    m_machine = machine;
    layOut();
    describe();
    update();
}

void CircuitView::setReadings(const CircuitReadings& readings) {
    m_readings = readings;
    describe();
    update();
}

QString CircuitView::readingOf(const QString& id) const {
    if (id == u"suction"_s) return m_readings.suctionLoss;
    if (id == u"pump"_s) return (m_readings.pumpOutlet + u' ' + m_readings.pumpFlow).trimmed();
    if (id == u"agitation"_s) return m_readings.agitation;
    if (id == u"control"_s) return m_readings.bypass + m_readings.valveLoss;
    if (id == u"line"_s) return m_readings.lineLoss;
    if (id == u"meter"_s) return (m_readings.boomFlow + u' ' + m_readings.meterLoss).trimmed();
    if (id == u"restrictor"_s) return m_readings.restrictorLoss;
    if (id == u"sensor"_s) return m_readings.sensorPressure;
    if (id == u"sections"_s) return m_readings.sectionLoss;
    return id == u"nozzles"_s ? m_readings.nozzle : QString();
}

/// The drawing in words, for those who hear it.
void CircuitView::describe() {
    QStringList parts;
    for (const auto& part : m_parts)
        parts.append((part.name + u' ' + readingOf(part.id)).trimmed());
    setAccessibleDescription(parts.join(u", "_s));
}

void CircuitView::setFieldInHand(const QString& key) {
    m_inHand = key;
    update();
}

QSize CircuitView::sizeHint() const {
    return {px(kWidth), px(kHeight)};
}
QSize CircuitView::minimumSizeHint() const {
    // On a wall its words may not shrink with it.
    const double least = theme().isProjector() ? 1.03 : 0.8;
    return {px(kWidth * least), px(kHeight * least)};
}
int CircuitView::heightForWidth(int width) const {
    return static_cast<int>(kHeight * std::min<double>(width / kWidth, px(kMostScale * 12) / 12.0));
}

double CircuitView::drawingScale() const {
    return std::min({width() / kWidth, height() / kHeight, px(kMostScale * 12) / 12.0});
}

QPointF CircuitView::origin() const {
    const double s = drawingScale();
    return {(width() - kWidth * s) / 2, 0};
}

void CircuitView::add(const QString& id, const QRectF& box, const QString& key,
                      const QString& name) {
    m_parts.push_back({id, box, key, name});
}

const CircuitPart* CircuitView::part(const QString& id) const {
    const auto found = std::find_if(m_parts.begin(), m_parts.end(),
                                    [&](const CircuitPart& p) { return p.id == id; });
    return found == m_parts.end() ? nullptr : &*found;
}

void CircuitView::layOut() {
    m_parts.clear();
    const Machine& m = m_machine;
    add(u"tank"_s, kTank, u"tank"_s, tr("Tank"));
    add(u"suction"_s, about(kSuctionStrainer, 34, 34), u"strainers.suction.mesh"_s,
        tr("Suction strainer"));
    add(u"pump"_s, about(kPump, 42, 42), u"pump.kind"_s, tr("Pump"));
    add(u"agitation"_s, about(kAgitation, 34, 34), u"agitation.flow"_s, tr("Agitation"));
    if (m.control && m.control->value == Control::Bypass)
        add(u"control"_s, about(kBypass, 34, 34), u"control"_s, tr("By-pass valve"));
    if (m.control && m.control->value == Control::Throttle)
        add(u"control"_s, about(kThrottle, 34, 34), u"control"_s, tr("Valve in the line"));
    add(u"line"_s, about(kLineStrainer, 34, 34), u"strainers.line.mesh"_s, tr("Line strainer"));
    if (hasMeterDrawn(m))
        add(u"meter"_s, about(kMeter, 44, 44),
            m.senses ? u"meter.minimum_full_bore"_s : u"senses"_s, tr("Flow meter"));
    if (valueOr(m.restrictor.fitted, false))
        add(u"restrictor"_s, about(kRestrictor, 46, 40), u"restrictor.fitted"_s,
            tr("Restrictor valve"));
    add(u"sensor"_s, about(kSensor - QPointF(0, 26), 34, 40), u"limits.pressure_floor"_s,
        tr("Boom pressure sensor"));
    layOutSections();
}

void CircuitView::layOutSections() {
    m_sections.clear();
    add(u"sections"_s, QRectF(kBoomLeft - 4, kFeedY - 8, kBoomRight - kBoomLeft + 8, 50),
        u"sections"_s, tr("Sections"));
    add(u"nozzles"_s, QRectF(kBoomLeft - 4, kSectionY - 6, kBoomRight - kBoomLeft + 8, 46),
        u"sets_aboard"_s, tr("Nozzles"));
    if (!m_machine.sections) return;
    const auto& counts = m_machine.sections->value;
    const int all = std::max(1, nozzleCount(m_machine));
    const double gap =
        std::min(14.0, 90.0 / static_cast<double>(std::max<std::size_t>(1, counts.size())));
    const double room = kBoomRight - kBoomLeft -
                        gap * static_cast<double>(std::max<std::size_t>(1, counts.size()) - 1);
    double x = kBoomLeft;
    for (const int nozzles : counts) {
        const double width = room * std::max(0, nozzles) / all;
        m_sections.emplace_back(x, kSectionY, width, 24);
        x += width + gap;
    }
}

QRectF CircuitView::partRect(const QString& id) const {
    const CircuitPart* found = part(id);
    if (!found) return {};
    const double s = drawingScale();
    return {origin() + found->box.topLeft() * s, found->box.size() * s};
}

const CircuitPart* CircuitView::partAt(QPointF pixel) const {
    const double s = drawingScale();
    const QPointF at = (pixel - origin()) / s;
    const auto found = std::find_if(m_parts.begin(), m_parts.end(), [&](const CircuitPart& part) {
        return part.box.adjusted(-3, -3, 3, 3).contains(at);
    });
    return found == m_parts.end() ? nullptr : &*found;
}

void CircuitView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    if (const CircuitPart* taken = partAt(event->position())) {
        const QString key = taken->firstKey;
        Q_EMIT partTaken(key);
    }
}

void CircuitView::mouseMoveEvent(QMouseEvent* event) {
    setCursor(partAt(event->position()) ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

bool CircuitView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    auto* help = static_cast<QHelpEvent*>(event);
    const CircuitPart* under = partAt(help->pos());
    QToolTip::showText(help->globalPos(),
                       under ? (under->name + u'\n' + readingOf(under->id)).trimmed() : QString(),
                       this);
    return true;
}

void CircuitView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(origin());
    painter.scale(drawingScale(), drawingScale());
    paintPipes(painter);
    paintRing(painter);
    paintReturns(painter);
    paintTankSide(painter);
    paintLine(painter);
    paintSections(painter);
    paintTags(painter);
    paintPumpTags(painter);
    paintLosses(painter);
}

}  // namespace bw
