// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPageLayout>
#include <QSizeF>
#include <vector>

#include "core/report/sheet.h"
#include "ui/print/sheet_pieces.h"

class QPainter;

namespace bw {

/// A sheet broken into pages of a size. Rows stay whole, headings stay with what follows, the head
/// of a table comes again on every page.
class SheetLayout {
  public:
    /// Margins are those of the layout.
    SheetLayout(const Sheet& sheet, const QPageLayout& page);

    int pageCount() const { return static_cast<int>(m_pages.size()); }
    /// Of the whole paper, in dots (sheet_text.h).
    QSizeF pageSize() const { return m_paper.size(); }
    /// Paints one page (from 0) on a painter whose units are dots, the paper's corner at 0, 0.
    void paint(QPainter& painter, int page) const;
    /// Body text in points, as chosen for the fullest page.
    double bodyPoints() const { return m_smallestBody; }

  private:
    struct Placed {
        std::shared_ptr<SheetPiece> piece;
        QRectF box;
    };
    struct Page {
        double body = 9.5;
        std::vector<Placed> pieces;
    };
    void lay(const std::vector<SheetBlock>& blocks, double body);
    void breakPages(SheetPieces pieces, double body);
    double fittingBody(const std::vector<SheetBlock>& blocks) const;
    SheetStyle styleOf(double body) const;
    SheetStyle edgeStyle() const;
    QRectF frame() const;
    void paintHead(QPainter& painter) const;
    void paintFoot(QPainter& painter, int page) const;

    QString m_head, m_foot;
    QRectF m_paper, m_inside;
    bool m_isSmall = false;
    double m_smallestBody = 0;
    std::vector<Page> m_pages;
};

}  // namespace bw
