// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPointF>
#include <QString>
#include <memory>
#include <vector>

class QPainter;
class QTextLayout;

namespace bw {

/// Sheets are laid out in dots of 1/1200 inch; whatever paints them scales.
inline constexpr int kDotsPerInch = 1200;
inline constexpr double kDotsPerPoint = kDotsPerInch / 72.0;

/// The sizes of one sheet: everything is a multiple of its body text.
struct SheetStyle {
    double body = 9.5;        ///< points
    double pageHeight = 1e9;  ///< dots: nothing is higher that can be parted
    double dots(double ems) const { return ems * body * kDotsPerPoint; }
    QFont font(double ems = 1.0, bool bold = false) const;
    double lineHeight(double ems = 1.0, bool bold = false) const;
    double widthOf(const QString& text, double ems = 1.0, bool bold = false) const;
    /// Width of the longest word.
    double longestWord(const QString& text, double ems = 1.0, bool bold = false) const;
};

/// A part of a text in bold.
struct BoldPart {
    int from = 0;
    int length = 0;
};

/// A text broken into lines of a width: between words, inside a word only if it is wider than the
/// line. Shared, so that what paints it later needs no second layout.
class SheetLines {
  public:
    SheetLines(const QString& text, const QFont& font, double width,
               Qt::Alignment alignment = Qt::AlignLeft, const std::vector<BoldPart>& bold = {});
    int count() const;
    double height() const;
    double lineHeight(int line) const;
    /// Width of the longest line.
    double width() const;
    /// All lines, or one of them, with their top left at a point.
    void paint(QPainter& painter, QPointF topLeft) const;
    void paintLine(QPainter& painter, int line, QPointF topLeft) const;

  private:
    void breakLines(double width);
    std::shared_ptr<QTextLayout> m_layout;
};

/// One line, cut with an ellipsis if it is wider.
void paintOneLine(QPainter& painter, const QRectF& box, const QString& text, const QFont& font,
                  Qt::Alignment alignment = Qt::AlignLeft | Qt::AlignVCenter);

}  // namespace bw
