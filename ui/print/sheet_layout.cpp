// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_layout.h"

#include <QObject>
#include <QPainter>
#include <algorithm>

#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Body text in points: usual, on small paper, and the ends between which a page is filled.
constexpr double kBody = 9.5, kSmallBody = 8.5, kLeastBody = 6.2, kMostBody = 14.0;
constexpr double kStep = 0.1;
/// Text of head and foot in points; it does not grow with the page.
constexpr double kEdgeBody = 7.5, kSmallEdgeBody = 6.5;
constexpr double kSmallPaper = 7.5 * kDotsPerInch;  ///< shorter side

std::vector<std::vector<SheetBlock>> partsBetweenBreaks(const std::vector<SheetBlock>& blocks) {
    std::vector<std::vector<SheetBlock>> parts(1);
    for (const auto& block : blocks) {
        if (std::holds_alternative<SheetPageBreak>(block.content))
            parts.emplace_back();
        else
            parts.back().push_back(block);
    }
    return parts;
}

/// How many pieces from `first` on must stay together.
std::size_t chainFrom(const SheetPieces& pieces, std::size_t first) {
    std::size_t last = first;
    while (last + 1 < pieces.size() && pieces[last].keepsWithNext && !pieces[last + 1].breaksPage)
        ++last;
    return last - first + 1;
}

double chainHeight(const SheetPieces& pieces, std::size_t first, std::size_t count) {
    double height = 0;
    for (std::size_t i = first; i < first + count; ++i)
        height += pieces[i].height + (i > first ? pieces[i].gap : 0.0);
    return height;
}

}  // namespace

SheetLayout::SheetLayout(const Sheet& sheet, const QPageLayout& page) {
    m_paper = QRectF(page.fullRectPixels(kDotsPerInch));
    const QMarginsF margins = page.margins(QPageLayout::Inch);
    m_inside = m_paper.adjusted(margins.left() * kDotsPerInch, margins.top() * kDotsPerInch,
                                -margins.right() * kDotsPerInch, -margins.bottom() * kDotsPerInch);
    m_isSmall = std::min(m_paper.width(), m_paper.height()) < kSmallPaper;
    m_head = qs(sheet.title);
    if (!sheet.machine.empty()) m_head += u" · "_s + qs(sheet.machine);
    m_foot = qs(sheet.footer);
    for (const auto& part : partsBetweenBreaks(sheet.blocks)) {
        const double body = sheet.fillsPages ? fittingBody(part) : m_isSmall ? kSmallBody : kBody;
        lay(part, body);
        if (m_smallestBody <= 0 || body < m_smallestBody) m_smallestBody = body;
    }
}

SheetStyle SheetLayout::styleOf(double body) const {
    return {body, frame().height()};
}

SheetStyle SheetLayout::edgeStyle() const {
    return {m_isSmall ? kSmallEdgeBody : kEdgeBody, m_paper.height()};
}

/// What head and foot leave.
QRectF SheetLayout::frame() const {
    const double line = edgeStyle().lineHeight();
    return m_inside.adjusted(0, line * 1.3, 0, -line * 1.4);
}

/// The largest text with which everything stands on one page; the least one if none does.
double SheetLayout::fittingBody(const std::vector<SheetBlock>& blocks) const {
    const QRectF space = frame();
    const auto fits = [&](double body) {
        return heightOf(piecesOf(blocks, space.width(), styleOf(body))) <= space.height();
    };
    // Larger text does not always need more height: what stood in three columns may stand in two.
    // So the sizes are tried from the largest down, first roughly.
    constexpr double kRough = 0.4;
    double body = kMostBody;
    while (body - kRough > kLeastBody && !fits(body)) body -= kRough;
    if (!fits(body)) body = kLeastBody;
    while (body + kStep <= kMostBody && fits(body + kStep)) body += kStep;
    return body;
}

void SheetLayout::lay(const std::vector<SheetBlock>& blocks, double body) {
    breakPages(piecesOf(blocks, frame().width(), styleOf(body)), body);
}

void SheetLayout::breakPages(SheetPieces pieces, double body) {
    const QRectF space = frame();
    double y = space.top();
    m_pages.push_back({body, {}});
    const auto place = [&](std::shared_ptr<SheetPiece> piece) {
        const bool isFirst = m_pages.back().pieces.empty();
        if (!isFirst) y += piece->gap;
        m_pages.back().pieces.push_back(
            {piece, QRectF(space.left(), y, space.width(), piece->height)});
        y += piece->height;
    };
    std::size_t chainLeft = 0;  // pieces of a chain that was found to fit
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (chainLeft > 0) {
            --chainLeft;
        } else {
            std::size_t count = chainFrom(pieces, i);
            // A chain higher than a page breaks after all.
            if (chainHeight(pieces, i, count) > space.height()) count = 1;
            const double needed = chainHeight(pieces, i, count) + pieces[i].gap;
            if (!m_pages.back().pieces.empty() && y + needed > space.bottom() + 1) {
                m_pages.push_back({body, {}});
                y = space.top();
                if (pieces[i].head) place(pieces[i].head);
            }
            chainLeft = count - 1;
        }
        place(std::make_shared<SheetPiece>(std::move(pieces[i])));
    }
}

void SheetLayout::paint(QPainter& painter, int page) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintHead(painter);
    for (const auto& placed : m_pages[static_cast<std::size_t>(page)].pieces) {
        if (!placed.piece->paint) continue;
        painter.save();
        placed.piece->paint(painter, placed.box);
        painter.restore();
    }
    paintFoot(painter, page);
    painter.restore();
}

void SheetLayout::paintHead(QPainter& painter) const {
    const SheetStyle style = edgeStyle();
    painter.setPen(color(Role::Quiet, Look::Print));
    paintOneLine(painter,
                 QRectF(m_inside.left(), m_inside.top(), m_inside.width(), style.lineHeight()),
                 m_head, style.font());
}

void SheetLayout::paintFoot(QPainter& painter, int page) const {
    const SheetStyle style = edgeStyle();
    const double line = style.lineHeight();
    const QString number = QObject::tr("%1 of %2").arg(page + 1).arg(pageCount());
    const double width = style.widthOf(number) + 2;
    QRectF box(m_inside.left(), m_inside.bottom() - line, m_inside.width(), line);
    painter.setPen(color(Role::Ink, Look::Print));
    paintOneLine(painter, box.adjusted(box.width() - width, 0, 0, 0), number, style.font(),
                 Qt::AlignRight | Qt::AlignVCenter);
    paintOneLine(painter, box.adjusted(0, 0, -width - style.dots(1.5), 0), m_foot,
                 style.font(1.0, true));
}

}  // namespace bw
