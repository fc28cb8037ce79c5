// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/icons.h"

#include <QDir>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QSvgRenderer>

// The icons live in a static library: its resources must be asked for.
static void takeIcons() {
    Q_INIT_RESOURCE(icons);
}

namespace bw {
namespace {

using namespace Qt::StringLiterals;

QString iconPath(const QString& name) {
    static const bool kTaken = (takeIcons(), true);
    Q_UNUSED(kTaken)
    return u":/icons/"_s + name + u".svg"_s;
}

/// The drawings say "currentColor" where the tint goes; a painter cannot, so the text is filled in.
QByteArray tintedSvg(const QString& name, const QColor& tint) {
    QFile file(iconPath(name));
    if (!file.open(QIODevice::ReadOnly)) return {};
    QByteArray svg = file.readAll();
    svg.replace("currentColor", tint.name(QColor::HexRgb).toLatin1());
    return svg;
}

class RoleIconEngine : public QIconEngine {
  public:
    RoleIconEngine(QString name, Role role) : m_name(std::move(name)), m_role(role) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        Role role = m_role;
        if (mode == QIcon::Disabled) role = Role::Disabled;
        if (mode == QIcon::Selected) role = Role::OnAccent;
        paintIcon(*painter, rect, m_name, color(role));
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paint(&painter, QRect(QPoint(), size), mode, state);
        return pixmap;
    }
    QIconEngine* clone() const override { return new RoleIconEngine(*this); }
    bool isNull() override { return m_name.isEmpty(); }

  private:
    QString m_name;
    Role m_role;
};

}  // namespace

QStringList iconNames() {
    iconPath({});
    QStringList names;
    const auto files = QDir(u":/icons"_s).entryList({u"*.svg"_s}, QDir::Files, QDir::Name);
    for (const QString& file : files) names.append(file.chopped(4));
    return names;
}

void paintIcon(QPainter& painter, const QRectF& square, const QString& name, const QColor& tint) {
    const QByteArray svg = tintedSvg(name, tint);
    if (svg.isEmpty()) return;
    QSvgRenderer renderer(svg);
    const double side = std::min(square.width(), square.height());
    const QRectF box(square.center().x() - side / 2, square.center().y() - side / 2, side, side);
    renderer.render(&painter, box);
}

QPixmap iconPixmap(const QString& name, const QColor& tint, int pixels, double devicePixelRatio) {
    const int side = static_cast<int>(pixels * devicePixelRatio);
    QPixmap pixmap(side, side);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintIcon(painter, QRectF(0, 0, side, side), name, tint);
    painter.end();
    pixmap.setDevicePixelRatio(devicePixelRatio);
    return pixmap;
}

QIcon icon(const QString& name, Role role) {
    return name.isEmpty() ? QIcon() : QIcon(new RoleIconEngine(name, role));
}

QString iconOf(Limit limit) {
    switch (limit) {
        case Limit::PressureFloor:
            return u"floor"_s;
        case Limit::PressureCeiling:
            return u"ceiling"_s;
        case Limit::NozzleMinimum:
            return u"nozzle_low"_s;
        case Limit::NozzleMaximum:
            return u"nozzle_high"_s;
        case Limit::DropletsTooCoarse:
            return u"coarse"_s;
        case Limit::DropletsTooFine:
            return u"fine"_s;
        case Limit::DropletsUnlisted:
        case Limit::DropletsNone:
        case Limit::Droplets:
            return u"unchecked"_s;
        case Limit::DriftClass:
        case Limit::DriftNone:
            return u"drift"_s;
        case Limit::MeterMinimum:
        case Limit::MeterMaximum:
        case Limit::Meter:
            return u"meter"_s;
        case Limit::Pump:
        case Limit::ControlMinimum:
            return u"pump"_s;
        case Limit::ReliefValve:
            return u"relief"_s;
        case Limit::Suction:
            return u"suction"_s;
        case Limit::DutyMinimum:
        case Limit::DutyMaximum:
            return u"duty"_s;
        case Limit::TopSpeed:
            return u"top_speed"_s;
        case Limit::None:
            break;
    }
    return u"outside"_s;
}

}  // namespace bw
