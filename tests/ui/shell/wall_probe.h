// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QImage>
#include <QLabel>
#include <QRectF>
#include <QString>
#include <QWidget>
#include <vector>

namespace bw::test {

/// One run of text as a widget paints it: where on the picture, how tall its type really is there
/// (em in pixels, all scaling in), and in which ink.
struct SeenText {
    QString text;
    QRectF box;
    double em = 0.0;
    QColor ink;
};

/// All texts that a widget and its children paint, whatever paints them: labels, charts, keys.
std::vector<SeenText> seenTexts(QWidget& widget);
/// All of it as one, for looking for names.
QString allText(QWidget& widget);

/// The colour that fills most of a part of the picture.
QColor groundOf(const QImage& picture, const QRect& part);

/// Measured on the picture alone, from the pixels that differ from the ground.
struct SeenInk {
    double glyphs = 0.0;    ///< height of the tallest line, from its topmost to its lowest pixel
    double contrast = 0.0;  ///< of its strongest pixel with the ground
    QColor ink;
};
SeenInk inkOf(const QImage& picture, const QRect& part);

/// The em of a label's type, from the height of its glyphs on the picture: the font only says
/// which part of an em these letters take.
double emOnPicture(const QLabel& label, const QImage& picture, const QWidget& whole);
/// Where a widget lies on the picture of the whole.
QRect placeOf(const QWidget& widget, const QWidget& whole);

}  // namespace bw::test
