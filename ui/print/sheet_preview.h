// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractScrollArea>
#include <memory>

#include "core/report/sheet.h"
#include "ui/print/page_choice.h"

namespace bw {

class SheetLayout;

/// The pages of a sheet as they will be printed, one under the other. Page Up and Page Down go by
/// pages, + and - change the size, 0 shows a whole page.
class SheetPreview : public QAbstractScrollArea {
    Q_OBJECT

  public:
    explicit SheetPreview(QWidget* parent = nullptr);
    ~SheetPreview() override;

    void setSheet(const Sheet& sheet, const PageChoice& page);
    int pageCount() const;
    /// The page in the middle of the view, from 0.
    int currentPage() const;
    void showPage(int page);
    QSize sizeHint() const override;

  Q_SIGNALS:
    void pageChanged(int page);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;

  private:
    QSizeF pagePixels() const;
    void fitBars();
    void zoom(double factor);

    std::unique_ptr<SheetLayout> m_layout;
    double m_zoom = 1.0;  ///< of a page that just fits
};

}  // namespace bw
