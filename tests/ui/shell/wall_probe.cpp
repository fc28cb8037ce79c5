// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/shell/wall_probe.h"

#include <QFontInfo>
#include <QFontMetricsF>
#include <QHash>
#include <QPaintEngine>
#include <QPainter>
#include <QTextDocument>
#include <algorithm>
#include <cmath>

#include "ui/kit/palette.h"

namespace bw::test {

namespace {

/// Paints nothing and notes each text.
class TextEngine : public QPaintEngine {
  public:
    TextEngine() : QPaintEngine(QPaintEngine::AllFeatures) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawImage(const QRectF&, const QImage&, const QRectF&, Qt::ImageConversionFlags) override {
    }
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
    void drawRects(const QRectF*, int) override {}
    void drawLines(const QLineF*, int) override {}
    void drawEllipse(const QRectF&) override {}
    Type type() const override { return QPaintEngine::User; }
    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        const QTransform map = painter()->deviceTransform();
        const QFontMetricsF metrics(item.font());
        const QRectF box =
            map.mapRect(QRectF(at.x(), at.y() - metrics.ascent(),
                               metrics.horizontalAdvance(item.text()), metrics.height()));
        // What a clip leaves of it is what is seen.
        QRectF seen = box;
        if (painter()->hasClipping()) seen &= map.mapRect(painter()->clipBoundingRect());
        if (!systemClip().isEmpty()) seen &= QRectF(systemClip().boundingRect());
        if (item.text().trimmed().isEmpty() || seen.height() < 0.5 * box.height()) return;
        const double scale = std::sqrt(std::abs(map.determinant()));
        texts.push_back({item.text(), seen, QFontInfo(item.font()).pixelSize() * scale,
                         painter()->pen().color()});
    }
    std::vector<SeenText> texts;
};

class TextDevice : public QPaintDevice {
  public:
    explicit TextDevice(QSize size) : m_size(size) {}
    QPaintEngine* paintEngine() const override { return &engine; }
    int metric(PaintDeviceMetric metric) const override {
        switch (metric) {
            case PdmWidth:
                return m_size.width();
            case PdmHeight:
                return m_size.height();
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return 96;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(QPaintDevice::devicePixelRatioFScale());
            case PdmDepth:
                return 32;
            case PdmNumColors:
                return 1 << 24;
            default:
                return QPaintDevice::metric(metric);
        }
    }
    mutable TextEngine engine;

  private:
    QSize m_size;
};

QString plainText(const QLabel& label) {
    if (!Qt::mightBeRichText(label.text())) return label.text();
    QTextDocument document;
    document.setHtml(label.text());
    return document.toPlainText();
}

}  // namespace

std::vector<SeenText> seenTexts(QWidget& widget) {
    TextDevice device(widget.size());
    widget.render(&device);
    return device.engine.texts;
}

QString allText(QWidget& widget) {
    QStringList all;
    for (const SeenText& seen : seenTexts(widget)) all.append(seen.text);
    return all.join(u'\n');
}

QColor groundOf(const QImage& picture, const QRect& part) {
    QHash<QRgb, int> counts;
    const QRect inside = part & picture.rect();
    for (int y = inside.top(); y <= inside.bottom(); ++y) {
        for (int x = inside.left(); x <= inside.right(); ++x) ++counts[picture.pixel(x, y)];
    }
    QRgb most = 0;
    int count = -1;
    for (auto it = counts.cbegin(); it != counts.cend(); ++it) {
        if (it.value() > count) {
            most = it.key();
            count = it.value();
        }
    }
    return QColor(most);
}

SeenInk inkOf(const QImage& picture, const QRect& part) {
    constexpr double kDiffers = 1.6;  // as contrast with the ground: the edge of a glyph
    SeenInk out;
    const QRect inside = part & picture.rect();
    const QColor ground = groundOf(picture, inside);
    int run = 0;
    QHash<QRgb, double> known;
    for (int y = inside.top(); y <= inside.bottom(); ++y) {
        bool hasInk = false;
        for (int x = inside.left(); x <= inside.right(); ++x) {
            const QRgb rgb = picture.pixel(x, y);
            auto found = known.find(rgb);
            if (found == known.end()) found = known.insert(rgb, contrast(QColor(rgb), ground));
            hasInk = hasInk || *found > kDiffers;
            if (*found > out.contrast) {
                out.contrast = *found;
                out.ink = QColor(rgb);
            }
        }
        run = hasInk ? run + 1 : 0;
        out.glyphs = std::max<double>(out.glyphs, run);
    }
    return out;
}

QRect placeOf(const QWidget& widget, const QWidget& whole) {
    return {widget.mapTo(&whole, QPoint()), widget.size()};
}

double emOnPicture(const QLabel& label, const QImage& picture, const QWidget& whole) {
    const SeenInk seen = inkOf(picture, placeOf(label, whole));
    // A large font, so that whole pixels of the metrics do not tell.
    QFont large = label.font();
    constexpr int kLarge = 1000;
    large.setPixelSize(kLarge);
    const double part = QFontMetricsF(large).tightBoundingRect(plainText(label)).height() / kLarge;
    return part > 0 ? seen.glyphs / part : 0.0;
}

}  // namespace bw::test
