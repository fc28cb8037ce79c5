// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_text.h"

#include <QApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

namespace bw {

QFont SheetStyle::font(double ems, bool bold) const {
    QFont font(QApplication::font().family());
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(dots(ems)))));
    font.setBold(bold);
    // Lines break the same on paper and in the preview, whatever grid the screen has.
    font.setHintingPreference(QFont::PreferNoHinting);
    // Any spacing at all keeps Qt from ligatures, so that "fine" is found when it is searched for.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.02);
    return font;
}

double SheetStyle::lineHeight(double ems, bool bold) const {
    return QFontMetricsF(font(ems, bold)).height();
}

double SheetStyle::widthOf(const QString& text, double ems, bool bold) const {
    return QFontMetricsF(font(ems, bold)).horizontalAdvance(text);
}

double SheetStyle::longestWord(const QString& text, double ems, bool bold) const {
    const QFontMetricsF metrics(font(ems, bold));
    double widest = 0;
    for (const auto& word : text.split(u' ', Qt::SkipEmptyParts))
        widest = std::max(widest, metrics.horizontalAdvance(word));
    return widest;
}

SheetLines::SheetLines(const QString& text, const QFont& font, double width,
                       Qt::Alignment alignment, const std::vector<BoldPart>& bold)
    : m_layout(std::make_shared<QTextLayout>(text, font)) {
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setUseDesignMetrics(true);
    m_layout->setTextOption(option);
    m_layout->setCacheEnabled(true);
    QList<QTextLayout::FormatRange> ranges;
    for (const auto& part : bold) {
        QTextLayout::FormatRange range;
        range.start = part.from;
        range.length = part.length;
        range.format.setFontWeight(QFont::Bold);
        ranges.append(range);
    }
    m_layout->setFormats(ranges);
    breakLines(width);
    // "16 gal/" and "ac" below it is hard to read: such a word goes down whole.
    for (int i = 0; i < count(); ++i) {
        const QTextLine line = m_layout->lineAt(i);
        QString whole = m_layout->text();
        const int end = line.textStart() + line.textLength();
        if (end >= whole.size() || whole.at(end - 1) != u'/') continue;
        const auto blank = whole.lastIndexOf(u' ', end - 1);
        if (blank <= line.textStart()) continue;
        whole[blank] = QChar(QChar::LineSeparator);
        m_layout->setText(whole);
        breakLines(width);
    }
}

void SheetLines::breakLines(double width) {
    m_layout->beginLayout();
    double y = 0;
    for (QTextLine line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(std::max(1.0, width));
        line.setPosition({0, y});
        y += line.height();
    }
    m_layout->endLayout();
}

int SheetLines::count() const {
    return m_layout->lineCount();
}

double SheetLines::height() const {
    if (count() == 0) return 0;
    const QTextLine last = m_layout->lineAt(count() - 1);
    return last.y() + last.height();
}

double SheetLines::lineHeight(int line) const {
    return m_layout->lineAt(line).height();
}

double SheetLines::width() const {
    double widest = 0;
    for (int i = 0; i < count(); ++i)
        widest = std::max(widest, m_layout->lineAt(i).naturalTextWidth());
    return widest;
}

void SheetLines::paint(QPainter& painter, QPointF topLeft) const {
    m_layout->draw(&painter, topLeft);
}

void SheetLines::paintLine(QPainter& painter, int line, QPointF topLeft) const {
    const QTextLine text = m_layout->lineAt(line);
    text.draw(&painter, topLeft - QPointF(0, text.y()));
}

void paintOneLine(QPainter& painter, const QRectF& box, const QString& text, const QFont& font,
                  Qt::Alignment alignment) {
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    const QString fitting = metrics.horizontalAdvance(text) <= box.width() + 1
                                ? text
                                : metrics.elidedText(text, Qt::ElideRight, box.width());
    painter.drawText(box, static_cast<int>(alignment) | Qt::TextSingleLine | Qt::TextDontClip,
                     fitting);
}

}  // namespace bw
