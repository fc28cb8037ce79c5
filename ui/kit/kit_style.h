// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProxyStyle>

namespace bw {

/// Fusion with flat fields, buttons, heads and bars in the roles of the palette: corners of 3 px,
/// no shadows, a visible focus ring.
class KitStyle : public QProxyStyle {
    Q_OBJECT

  public:
    KitStyle();
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget = nullptr) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget = nullptr) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                            QPainter* painter, const QWidget* widget = nullptr) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                    const QWidget* widget = nullptr) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                           const QWidget* widget = nullptr) const override;
    int styleHint(StyleHint hint, const QStyleOption* option = nullptr,
                  const QWidget* widget = nullptr,
                  QStyleHintReturn* result = nullptr) const override;
};

/// Style, font and theme of the application. Called once, before the first widget, by the program
/// and by the tests alike. The desktop's font is kept, at 9 pt or more; `isFixed` takes 9 pt DejaVu
/// Sans, so that pictures and tests look alike everywhere.
void dressApplication(bool isFixed = false);

}  // namespace bw
