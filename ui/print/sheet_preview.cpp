// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_preview.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>

#include "ui/kit/metrics.h"
#include "ui/kit/palette.h"
#include "ui/print/sheet_layout.h"

namespace bw {
namespace {

constexpr double kZoomStep = 1.2, kLeastZoom = 0.5, kMostZoom = 4.0;

double gap() {
    return px(14);
}

}  // namespace

SheetPreview::SheetPreview(QWidget* parent) : QAbstractScrollArea(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Print preview"));
    connect(&theme(), &Theme::changed, viewport(), qOverload<>(&QWidget::update));
}

SheetPreview::~SheetPreview() = default;

void SheetPreview::setSheet(const Sheet& sheet, const PageChoice& page) {
    m_layout = std::make_unique<SheetLayout>(sheet, pageLayoutOf(page));
    QString text;
    for (const auto& words : textsOf(sheet)) text += QString::fromStdString(words) + u'\n';
    setAccessibleDescription(text);
    fitBars();
    verticalScrollBar()->setValue(0);
    viewport()->update();
    Q_EMIT pageChanged(0);
}

int SheetPreview::pageCount() const {
    return m_layout ? m_layout->pageCount() : 0;
}

int SheetPreview::currentPage() const {
    if (!m_layout) return 0;
    const double one = pagePixels().height() + gap();
    const double middle = verticalScrollBar()->value() + viewport()->height() / 2.0;
    return std::clamp(static_cast<int>(middle / one), 0, pageCount() - 1);
}

void SheetPreview::showPage(int page) {
    const double one = pagePixels().height() + gap();
    verticalScrollBar()->setValue(static_cast<int>(one * std::clamp(page, 0, pageCount() - 1)));
}

QSize SheetPreview::sizeHint() const {
    return {px(700), px(560)};
}

/// A page on screen: whole in the view at zoom 1.
QSizeF SheetPreview::pagePixels() const {
    if (!m_layout) return {};
    const QSizeF page = m_layout->pageSize();
    const double wide = (viewport()->width() - 2 * gap()) / page.width();
    const double high = (viewport()->height() - 2 * gap()) / page.height();
    return page * std::max(1e-4, std::min(wide, high) * m_zoom);
}

void SheetPreview::fitBars() {
    const QSizeF page = pagePixels();
    const double height = pageCount() * (page.height() + gap()) + gap();
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(px(30));
    verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(height) - viewport()->height()));
    const double width = page.width() + 2 * gap();
    horizontalScrollBar()->setPageStep(viewport()->width());
    horizontalScrollBar()->setSingleStep(px(30));
    horizontalScrollBar()->setRange(0, std::max(0, static_cast<int>(width) - viewport()->width()));
}

void SheetPreview::zoom(double factor) {
    const int page = currentPage();
    m_zoom = factor <= 0 ? 1.0 : std::clamp(m_zoom * factor, kLeastZoom, kMostZoom);
    fitBars();
    showPage(page);
    viewport()->update();
}

void SheetPreview::paintEvent(QPaintEvent*) {
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), color(Role::Sunken));
    if (!m_layout) return;
    const QSizeF page = pagePixels();
    const double left =
        std::max(gap(), (viewport()->width() - page.width()) / 2) - horizontalScrollBar()->value();
    const double scale = page.width() / m_layout->pageSize().width();
    for (int i = 0; i < pageCount(); ++i) {
        const double top = gap() + i * (page.height() + gap()) - verticalScrollBar()->value();
        const QRectF box(QPointF(left, top), page);
        if (!box.intersects(QRectF(viewport()->rect()))) continue;
        painter.fillRect(box, color(Role::Surface, Look::Print));
        painter.setPen(QPen(color(Role::Edge), 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box);
        painter.save();
        painter.setClipRect(box);
        painter.translate(box.topLeft());
        painter.scale(scale, scale);
        m_layout->paint(painter, i);
        painter.restore();
    }
    if (hasFocus()) {
        painter.setPen(QPen(color(Role::Focus), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(viewport()->rect().adjusted(1, 1, -1, -1));
    }
}

void SheetPreview::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    fitBars();
}

void SheetPreview::scrollContentsBy(int, int) {
    viewport()->update();
    Q_EMIT pageChanged(currentPage());
}

void SheetPreview::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_PageDown:
            return showPage(currentPage() + 1);
        case Qt::Key_PageUp:
            return showPage(currentPage() - 1);
        case Qt::Key_Home:
            return showPage(0);
        case Qt::Key_End:
            return showPage(pageCount() - 1);
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoom(kZoomStep);
        case Qt::Key_Minus:
            return zoom(1 / kZoomStep);
        case Qt::Key_0:
            return zoom(0);
        default:
            QAbstractScrollArea::keyPressEvent(event);
    }
}

}  // namespace bw
