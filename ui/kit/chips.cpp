// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/chips.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <cmath>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

constexpr double kOutline = 1.3;

/// Bold letters in the middle of a box, as large as its height allows, at most `most` of it wide.
void paintLetters(QPainter& painter, const QRectF& box, const QString& text, const QColor& ink,
                  double heightPart) {
    QFont font = textFont(TextSize::Body, true);
    // On a wall no letter is smaller than the small step of the type.
    const int least = theme().isProjector() ? QFontInfo(textFont(TextSize::Small)).pixelSize() : 5;
    font.setPixelSize(std::max(least, static_cast<int>(std::lround(box.height() * heightPart))));
    painter.setFont(font);
    painter.setPen(ink);
    painter.drawText(box, Qt::AlignCenter, text);
}

QPainterPath capPath(const QRectF& b) {
    const double cut = b.height() * 0.3;
    QPainterPath path(b.topLeft());
    path.lineTo(b.topRight());
    path.lineTo(b.right(), b.bottom() - cut * 1.4);
    path.lineTo(b.right() - cut, b.bottom());
    path.lineTo(b.left() + cut, b.bottom());
    path.lineTo(b.left(), b.bottom() - cut * 1.4);
    path.closeSubpath();
    return path;
}

QPainterPath markerPath(QPointF c, Marker marker, double r) {
    QPainterPath path;
    const auto polygon = [&](std::initializer_list<QPointF> points) {
        path.addPolygon(QPolygonF(QList<QPointF>(points)));
        path.closeSubpath();
    };
    switch (marker) {
        case Marker::Disc:
        case Marker::OpenRing:
            path.addEllipse(c, r, r);
            break;
        case Marker::Square:
        case Marker::OpenSquare:
            path.addRect(QRectF(c.x() - r, c.y() - r, 2 * r, 2 * r));
            break;
        case Marker::Triangle:
            polygon(
                {c + QPointF(0, -r * 1.15), c + QPointF(r * 1.15, r), c + QPointF(-r * 1.15, r)});
            break;
        case Marker::DownTriangle:
            polygon(
                {c + QPointF(0, r * 1.15), c + QPointF(r * 1.15, -r), c + QPointF(-r * 1.15, -r)});
            break;
        case Marker::Diamond:
            polygon({c + QPointF(0, -r * 1.3), c + QPointF(r * 1.3, 0), c + QPointF(0, r * 1.3),
                     c + QPointF(-r * 1.3, 0)});
            break;
        case Marker::Cross:
            path.moveTo(c + QPointF(-r, -r));
            path.lineTo(c + QPointF(r, r));
            path.moveTo(c + QPointF(r, -r));
            path.lineTo(c + QPointF(-r, r));
            break;
    }
    return path;
}

QRectF centred(QPointF centre, QSizeF size) {
    return {centre.x() - size.width() / 2, centre.y() - size.height() / 2, size.width(),
            size.height()};
}

}  // namespace

QSizeF dropletChipSize(DropletCategory category) {
    const bool two = letters(category).size() > 1;
    return {static_cast<double>(px(two ? 26 : 19)), static_cast<double>(px(17))};
}

QSizeF nozzleChipSize(const QString& sizeCode) {
    return {static_cast<double>(px(sizeCode.size() > 3 ? 38 : 31)), static_cast<double>(px(18))};
}

void paintDropletChip(QPainter& painter, const QRectF& box, DropletCategory category,
                      const QColor& outline) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor fill = dropletColor(category);
    const double pen = kOutline * box.height() / 17.0;
    const QRectF inner = box.adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2);
    painter.setPen(QPen(outline, pen));
    painter.setBrush(fill);
    painter.drawRoundedRect(inner, inner.height() / 2, inner.height() / 2);
    paintLetters(painter, box, letters(category), inkOn(fill), 0.65);
    painter.restore();
}

void paintNozzleChip(QPainter& painter, const QRectF& box, const QString& sizeCode,
                     const QColor& outline, const QColor& plain) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const auto standard = nozzleColor(sizeCode);
    const QColor fill = standard.value_or(plain);
    const double pen = kOutline * box.height() / 18.0;
    painter.setPen(QPen(outline, pen));
    painter.setBrush(fill);
    painter.drawPath(capPath(box.adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2)));
    const QString text = sizeCode.isEmpty() ? QStringLiteral("–") : sizeCode;
    paintLetters(painter, box.adjusted(0, 0, 0, -box.height() * 0.06), text, inkOn(fill), 0.62);
    painter.restore();
}

void paintOriginMark(QPainter& painter, const QRectF& box, std::optional<Origin> origin,
                     Look look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double side = std::min(box.width(), box.height());
    const QRectF ring = centred(box.center(), {side - 2, side - 2});
    const QColor ink = color(Role::Ink, look);
    if (!origin) {
        paintIcon(painter, centred(box.center(), {side, side}), QStringLiteral("unchecked"),
                  color(Role::Unchecked, look));
    } else if (*origin == Origin::Assumed) {
        QPen dashed(ink, 1.5, Qt::CustomDashLine, Qt::FlatCap);
        dashed.setDashPattern({1.6, 1.3});
        painter.setPen(dashed);
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(ring);
    } else {
        painter.setPen(QPen(ink, 1.3));
        painter.setBrush(*origin == Origin::Measured ? QBrush(ink) : QBrush(Qt::NoBrush));
        painter.drawEllipse(ring);
        painter.setBrush(ink);
        if (*origin == Origin::Handbook) painter.drawPie(ring, 90 * 16, 180 * 16);
    }
    painter.restore();
}

void paintMarker(QPainter& painter, QPointF at, Marker marker, double size, const QColor& line,
                 const QColor& fill) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, std::max(1.2, size * 0.2), Qt::SolidLine, Qt::RoundCap));
    const bool solid = marker == Marker::Disc;
    painter.setBrush(solid ? line : fill);
    painter.drawPath(markerPath(at, marker, size / 2));
    painter.restore();
}

void paintDropletChip(QPainter& painter, QPointF centre, DropletCategory category,
                      std::optional<Look> look) {
    const QColor outline = color(Role::Ink, look.value_or(theme().look()));
    paintDropletChip(painter, centred(centre, dropletChipSize(category)), category, outline);
}

void paintNozzleChip(QPainter& painter, QPointF centre, const QString& sizeCode,
                     std::optional<Look> look) {
    const Look worn = look.value_or(theme().look());
    paintNozzleChip(painter, centred(centre, nozzleChipSize(sizeCode)), sizeCode,
                    color(Role::Ink, worn), color(Role::Raised, worn));
}

QString originWord(std::optional<Origin> origin) {
    if (!origin) return QObject::tr("not known");
    switch (*origin) {
        case Origin::Measured:
            return QObject::tr("measured");
        case Origin::Handbook:
            return QObject::tr("from the handbook");
        case Origin::Assumed:
            return QObject::tr("assumed");
    }
    return {};
}

QString letters(DropletCategory category) {
    return qs(choiceName(category));
}

NozzleChip::NozzleChip(const QString& sizeCode, QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setSizeCode(sizeCode);
}
void NozzleChip::setSizeCode(const QString& sizeCode) {
    m_code = sizeCode;
    setAccessibleName(tr("Nozzle size %1").arg(sizeCode));
    updateGeometry();
    update();
}
QSize NozzleChip::sizeHint() const {
    return nozzleChipSize(m_code).toSize();
}
void NozzleChip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintNozzleChip(painter, rect(), m_code, color(Role::Ink), color(Role::Raised));
}

DropletChips::DropletChips(std::vector<DropletCategory> categories, QWidget* parent)
    : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setCategories(std::move(categories));
}
void DropletChips::setCategories(std::vector<DropletCategory> categories) {
    m_categories = std::move(categories);
    QStringList names;
    for (const auto category : m_categories) names.append(letters(category));
    setAccessibleName(tr("Droplets %1").arg(names.join(QStringLiteral(", "))));
    updateGeometry();
    update();
}
QSize DropletChips::sizeHint() const {
    double width = 0;
    for (const auto category : m_categories) width += dropletChipSize(category).width() + px(3);
    return {static_cast<int>(std::ceil(std::max(0.0, width - px(3)))), px(18)};
}
void DropletChips::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    double x = 0;
    for (const auto category : m_categories) {
        const QSizeF size = dropletChipSize(category);
        paintDropletChip(painter, QRectF(QPointF(x, (height() - size.height()) / 2), size),
                         category, color(Role::Ink));
        x += size.width() + px(3);
    }
}

OriginMark::OriginMark(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}
void OriginMark::setOrigin(std::optional<Origin> origin, const QString& date) {
    m_origin = origin;
    m_date = date;
    setAccessibleName(words());
    setToolTip(date.isEmpty() ? words() : words() + QStringLiteral(" ") + date);
    updateGeometry();
    update();
}
QString OriginMark::words() const {
    return m_origin == Origin::Handbook ? tr("handbook") : originWord(m_origin);
}
QSize OriginMark::sizeHint() const {
    const QFontMetrics metrics(textFont(TextSize::Small));
    return {px(17) + metrics.horizontalAdvance(words()) + 1, std::max(px(14), metrics.height())};
}
void OriginMark::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintOriginMark(painter, QRectF(0, (height() - px(12)) / 2.0, px(12), px(12)), m_origin,
                    theme().look());
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(m_origin ? Role::Ink : Role::Unchecked));
    painter.drawText(rect().adjusted(px(17), 0, 0, 0), Qt::AlignVCenter, words());
}

IconLabel::IconLabel(const QString& name, Role role, int pixelsAtTwelve, QWidget* parent)
    : QWidget(parent), m_name(name), m_role(role), m_pixels(pixelsAtTwelve) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}
void IconLabel::setIcon(const QString& name, Role role) {
    m_name = name;
    m_role = role;
    update();
}
QSize IconLabel::sizeHint() const {
    return {px(m_pixels), px(m_pixels)};
}
void IconLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (!m_name.startsWith(QStringLiteral("origin:"))) {
        paintIcon(painter, rect(), m_name, color(m_role));
        return;
    }
    const double side = px(12);
    paintOriginMark(painter, QRectF((width() - side) / 2, (height() - side) / 2, side, side),
                    originFor(ss(m_name.mid(7))), theme().look());
}

}  // namespace bw
