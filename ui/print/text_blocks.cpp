// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_pieces.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kSmall = 0.86, kLead = 1.32, kHeadingSize = 1.14;
/// A label or a fact in a row of facts is at least this wide, in ems.
constexpr double kLeastFact = 10.0, kLeastLargeFact = 12.0;

QColor ink() {
    return color(Role::Ink, Look::Print);
}
QColor quiet() {
    return color(Role::Quiet, Look::Print);
}

/// One piece a line, so that pages break between lines; the first and the last two stay together.
void addLines(SheetPieces& out, const SheetLines& lines, double gap, const QColor& tint) {
    const int count = lines.count();
    for (int i = 0; i < count; ++i) {
        SheetPiece piece;
        piece.gap = i == 0 ? gap : 0;
        piece.height = lines.lineHeight(i);
        piece.keepsWithNext = i + 1 < count && (i == 0 || i + 2 >= count);
        piece.paint = [lines, i, tint](QPainter& painter, const QRectF& box) {
            painter.setPen(tint);
            lines.paintLine(painter, i, box.topLeft());
        };
        out.push_back(std::move(piece));
    }
}

void paintWarningMark(QPainter& painter, const QRectF& box) {
    const double pen = box.height() * 0.1;
    const QRectF b = box.adjusted(pen, pen, -pen, -pen);
    QPainterPath path(QPointF(b.center().x(), b.top()));
    path.lineTo(b.bottomRight());
    path.lineTo(b.bottomLeft());
    path.closeSubpath();
    painter.setPen(QPen(ink(), pen, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
    painter.drawLine(QPointF(b.center().x(), b.top() + b.height() * 0.4),
                     QPointF(b.center().x(), b.top() + b.height() * 0.66));
    painter.setBrush(ink());
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(QPointF(b.center().x(), b.top() + b.height() * 0.84), pen * 0.65,
                        pen * 0.65);
}

/// A fact laid out at a width.
struct FactBox {
    FactBox(const SheetFact& fact, double width, const SheetStyle& style, bool isLarge)
        : value(isLarge ? 1.3 : 1.0),
          mark(fact.mark),
          markSide(isLarge && mark && mark->kind == SheetMark::Kind::NozzleSize ? 2.4
                                                                                : value * 1.2),
          markRoom(mark ? markWidth(*mark, style, markSide) + style.dots(0.6) : 0.0),
          isBeside(mark && mark->kind == SheetMark::Kind::NozzleSize),
          label(qs(fact.label), style.font(0.92), width - side()),
          text(qs(fact.value), style.font(value, true), width - markRoom),
          note(qs(fact.note), style.font(isLarge ? 1.0 : 0.92), width - side()),
          hasLabel(!fact.label.empty()),
          hasText(!fact.value.empty() || mark),
          hasNote(!fact.note.empty()) {
        height =
            (hasLabel ? label.height() : 0) + textHeight(style) + (hasNote ? note.height() : 0);
    }
    /// Room that the mark takes off every line.
    double side() const { return isBeside ? markRoom : 0.0; }
    double textHeight(const SheetStyle& style) const {
        if (!hasText) return 0;
        return std::max(text.height(), isBeside || !mark ? 0.0 : style.dots(markSide * 1.25));
    }
    void paint(QPainter& painter, QPointF at, const SheetStyle& style) const {
        painter.setPen(quiet());
        const QPointF words = at + QPointF(side(), 0);
        if (hasLabel) label.paint(painter, words);
        double y = words.y() + (hasLabel ? label.height() : 0.0);
        if (mark) {
            const double top = isBeside
                                   ? at.y() + std::max(0.0, (height - style.dots(markSide)) / 2)
                                   : y + style.dots(0.1);
            paintMark(painter, {at.x(), top}, *mark, style, markSide);
        }
        painter.setPen(ink());
        text.paint(painter, {at.x() + markRoom, y});
        y += textHeight(style);
        if (hasNote) note.paint(painter, {words.x(), y});
    }

    double value;
    std::optional<SheetMark> mark;
    double markSide;
    double markRoom;
    bool isBeside;
    SheetLines label, text, note;
    bool hasLabel, hasText, hasNote;
    double height = 0;
};

/// A mark or box, then a text with a quiet note after it.
void addMarkedLine(SheetPieces& out, const QString& text, const QString& note, double gap,
                   double width, const SheetStyle& style, double markRoom,
                   std::function<void(QPainter&, const QRectF&)> paintSign) {
    const QString whole = note.isEmpty() ? text : text + u" · "_s + note;
    const SheetLines lines(whole, style.font(), width - markRoom);
    SheetPiece piece;
    piece.gap = gap;
    piece.height = lines.height();
    piece.paint = [lines, markRoom, paintSign, style](QPainter& painter, const QRectF& box) {
        const double side = style.dots(0.86);
        const double line = lines.lineHeight(0);
        paintSign(painter, QRectF(box.left(), box.top() + (line - side) / 2, side, side));
        painter.setPen(ink());
        lines.paint(painter, box.topLeft() + QPointF(markRoom, 0));
    };
    out.push_back(std::move(piece));
}

void paintTickBox(QPainter& painter, const QRectF& box, bool isTicked) {
    const double pen = box.height() * 0.11;
    painter.setPen(QPen(ink(), pen));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2));
    if (!isTicked) return;
    painter.setPen(QPen(ink(), pen * 1.6, Qt::SolidLine, Qt::RoundCap));
    painter.drawPolyline(
        QPolygonF({box.topLeft() + QPointF(box.width() * 0.22, box.height() * 0.52),
                   box.topLeft() + QPointF(box.width() * 0.44, box.height() * 0.76),
                   box.topLeft() + QPointF(box.width() * 0.8, box.height() * 0.24)}));
}

SheetPiece ruleForHand(double height, const SheetStyle& style) {
    SheetPiece piece;
    piece.height = height;
    piece.paint = [style](QPainter& painter, const QRectF& box) {
        painter.setPen(QPen(color(Role::Edge, Look::Print), style.dots(0.06)));
        painter.drawLine(box.bottomLeft(), box.bottomRight());
    };
    return piece;
}

}  // namespace

void addPieces(SheetPieces& out, const SheetBanner& block, double width, const SheetStyle& style) {
    const QString value = qs(block.value);
    double valueSize = block.value.empty() ? 0 : 2.9;
    while (valueSize > 1.2 && style.widthOf(value, valueSize, true) > width * 0.42)
        valueSize *= 0.92;
    const double right =
        block.value.empty() ? 0
                            : std::max(style.widthOf(value, valueSize, true),
                                       std::min(style.widthOf(qs(block.note), 0.96), width * 0.42));
    const double left = width - right - (right > 0 ? style.dots(1.2) : 0);
    // Long names take more lines in a smaller type.
    double titleSize = 2.2;
    SheetLines title(qs(block.title), style.font(titleSize, true), left);
    while (title.count() > 1 && titleSize > 1.4) {
        titleSize *= 0.9;
        title = SheetLines(qs(block.title), style.font(titleSize, true), left);
    }
    const SheetLines subtitle(qs(block.subtitle), style.font(1.06), left);
    const SheetLines big(value, style.font(std::max(0.1, valueSize), true), right + style.dots(0.2),
                         Qt::AlignRight);
    const SheetLines note(qs(block.note), style.font(0.96), right + style.dots(0.2),
                          Qt::AlignRight);
    const double leftHeight = title.height() + (block.subtitle.empty() ? 0 : subtitle.height());
    const double rightHeight =
        block.value.empty() ? 0 : big.height() * 0.92 + (block.note.empty() ? 0 : note.height());
    SheetPiece piece;
    piece.gap = style.dots(1.0);
    piece.height = std::max(leftHeight, rightHeight) + style.dots(0.55);
    piece.keepsWithNext = true;
    piece.paint = [=](QPainter& painter, const QRectF& box) {
        painter.setPen(ink());
        const double foot = box.bottom() - style.dots(0.55);
        title.paint(painter, {box.left(), foot - leftHeight});
        if (!block.subtitle.empty())
            subtitle.paint(painter, {box.left(), foot - subtitle.height()});
        const double x = box.right() - right - style.dots(0.2);
        if (!block.value.empty()) {
            big.paint(painter, {x, foot - rightHeight - big.height() * 0.04});
            if (!block.note.empty()) note.paint(painter, {x, foot - note.height()});
        }
        painter.setPen(QPen(ink(), style.dots(0.2), Qt::SolidLine, Qt::FlatCap));
        const double y = box.bottom() - style.dots(0.1);
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
    };
    out.push_back(std::move(piece));
}

void addPieces(SheetPieces& out, const SheetHeading& block, double width, const SheetStyle& style) {
    const std::size_t before = out.size();
    addLines(out, SheetLines(qs(block.text), style.font(kHeadingSize, true), width),
             style.dots(0.7), ink());
    for (std::size_t i = before; i < out.size(); ++i) out[i].keepsWithNext = true;
}

void addPieces(SheetPieces& out, const SheetParagraph& block, double width,
               const SheetStyle& style) {
    const double ems = block.size == SheetText::Small  ? kSmall
                       : block.size == SheetText::Lead ? kLead
                                                       : 1.0;
    const bool bold = block.size == SheetText::Lead;
    addLines(out, SheetLines(qs(block.text), style.font(ems, bold), width), style.dots(0.35),
             ink());
}

void addPieces(SheetPieces& out, const SheetCautions& block, double width,
               const SheetStyle& style) {
    if (block.items.empty()) return;
    QString text;
    std::vector<BoldPart> bold;
    for (const auto& item : block.items) {
        if (!text.isEmpty()) text += u' ';
        const QString lead = qs(item.lead);
        if (!lead.isEmpty()) {
            bold.push_back({static_cast<int>(text.size()), static_cast<int>(lead.size())});
            text += lead + u' ';
        }
        text += qs(item.text);
    }
    const double inset = style.dots(3.6), pad = style.dots(0.45), pen = style.dots(0.16);
    const SheetLines lines(text, style.font(0.92), width - inset - pad * 2, Qt::AlignLeft, bold);
    const int count = lines.count();
    for (int i = 0; i < count; ++i) {
        const bool isFirst = i == 0, isLast = i + 1 == count;
        SheetPiece piece;
        piece.gap = isFirst ? style.dots(0.6) : 0;
        piece.height = lines.lineHeight(i) + (isFirst ? pad : 0) + (isLast ? pad : 0);
        piece.keepsWithNext = !isLast;
        piece.paint = [=](QPainter& painter, const QRectF& box) {
            painter.setPen(QPen(ink(), pen, Qt::SolidLine, Qt::SquareCap));
            const QRectF b = box.adjusted(pen / 2, 0, -pen / 2, 0);
            if (isFirst) painter.drawLine(b.topLeft(), b.topRight());
            if (isLast) painter.drawLine(b.bottomLeft(), b.bottomRight());
            painter.drawLine(b.topRight(), b.bottomRight());
            painter.fillRect(QRectF(box.left(), box.top(), style.dots(0.75), box.height()), ink());
            const double top = box.top() + (isFirst ? pad : 0);
            if (isFirst) {
                const double side = std::min(style.dots(1.9), style.dots(1.0) * 1.9);
                paintWarningMark(painter, QRectF(box.left() + style.dots(1.3),
                                                 top + style.dots(0.1), side, side * 0.9));
            }
            painter.setPen(ink());
            lines.paintLine(painter, i, {box.left() + inset, top});
        };
        // Room for the mark, even beside a single line.
        if (count == 1) piece.height = std::max(piece.height, style.dots(2.2) + 2 * pad);
        out.push_back(std::move(piece));
    }
}

void addPieces(SheetPieces& out, const SheetFacts& block, double width, const SheetStyle& style) {
    if (block.facts.empty()) return;
    const double between = style.dots(1.3);
    const double least = style.dots(block.isLarge ? kLeastLargeFact : kLeastFact);
    const auto fitting = static_cast<std::size_t>((width + between) / (least + between));
    const std::size_t across = std::clamp<std::size_t>(fitting, 1, block.facts.size());
    // The first, the one that matters, gets more of the width where it has a picture.
    const bool firstIsWide = block.isLarge && across > 1 && block.facts.front().mark.has_value();
    const double parts = static_cast<double>(across) + (firstIsWide ? 0.55 : 0.0);
    const double part = (width - between * static_cast<double>(across - 1)) / parts;
    for (std::size_t first = 0; first < block.facts.size(); first += across) {
        std::vector<std::pair<double, FactBox>> row;
        double x = 0, height = 0;
        for (std::size_t i = first; i < std::min(first + across, block.facts.size()); ++i) {
            const double own = firstIsWide && i == first ? part * 1.55 : part;
            row.emplace_back(x, FactBox(block.facts[i], own, style, block.isLarge));
            height = std::max(height, row.back().second.height);
            x += own + between;
        }
        SheetPiece piece;
        piece.gap = style.dots(block.isLarge ? 0.7 : 0.45);
        piece.height = height;
        piece.paint = [row, style](QPainter& painter, const QRectF& box) {
            for (const auto& [left, fact] : row)
                fact.paint(painter, box.topLeft() + QPointF(left, 0), style);
        };
        out.push_back(std::move(piece));
    }
}

void addPieces(SheetPieces& out, const SheetList& block, double width, const SheetStyle& style) {
    for (std::size_t i = 0; i < block.items.size(); ++i) {
        const auto& item = block.items[i];
        const auto sign = [mark = item.mark, style](QPainter& painter, const QRectF& box) {
            if (mark) return paintMark(painter, box.topLeft(), *mark, style, 0.86);
            painter.setPen(QPen(ink(), style.dots(0.09)));
            painter.drawLine(box.center() - QPointF(style.dots(0.25), 0),
                             box.center() + QPointF(style.dots(0.25), 0));
        };
        const double room = item.mark
                                ? std::max(markWidth(*item.mark, style, 0.86), style.dots(0.86))
                                : style.dots(0.86);
        addMarkedLine(out, qs(item.text), qs(item.note), style.dots(i == 0 ? 0.25 : 0.18), width,
                      style, room + style.dots(0.5), sign);
    }
}

void addPieces(SheetPieces& out, const SheetTicks& block, double width, const SheetStyle& style) {
    for (std::size_t i = 0; i < block.items.size(); ++i) {
        const auto& item = block.items[i];
        QString note = qs(item.note);
        if (!item.done.empty()) note += (note.isEmpty() ? u""_s : u" · "_s) + qs(item.done);
        const bool isTicked = !item.done.empty();
        addMarkedLine(out, qs(item.text), note, style.dots(i == 0 ? 0.25 : 0.3), width, style,
                      style.dots(1.4), [isTicked](QPainter& painter, const QRectF& box) {
                          paintTickBox(painter, box, isTicked);
                      });
        if (!item.hasNoteLine) continue;
        out.back().keepsWithNext = true;
        out.push_back(ruleForHand(style.lineHeight() * 1.25, style));
    }
}

void addPieces(SheetPieces& out, const SheetBlanks& block, double width, const SheetStyle& style) {
    if (!block.label.empty()) {
        addLines(out, SheetLines(qs(block.label), style.font(), width), style.dots(0.6), ink());
        out.back().keepsWithNext = true;
    }
    for (int i = 0; i < block.lines; ++i)
        out.push_back(ruleForHand(style.lineHeight() * 1.6, style));
}

void addPieces(SheetPieces& out, const SheetSpace& block, double, const SheetStyle& style) {
    SheetPiece piece;
    piece.height = style.lineHeight() * block.lines;
    out.push_back(std::move(piece));
}

void addPieces(SheetPieces& out, const SheetRule&, double, const SheetStyle& style) {
    SheetPiece piece;
    piece.gap = style.dots(0.5);
    piece.height = style.dots(0.1);
    piece.paint = [style](QPainter& painter, const QRectF& box) {
        painter.setPen(QPen(ink(), style.dots(0.09), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(box.left(), box.center().y()),
                         QPointF(box.right(), box.center().y()));
    };
    out.push_back(std::move(piece));
}

void addPieces(SheetPieces& out, const SheetPageBreak&, double, const SheetStyle&) {
    SheetPiece piece;
    piece.breaksPage = true;
    out.push_back(std::move(piece));
}

}  // namespace bw
