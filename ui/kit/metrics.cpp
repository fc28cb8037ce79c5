// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/metrics.h"

#include <QApplication>
#include <QFontInfo>
#include <QPainter>
#include <cmath>

namespace bw {

QFont textFont(TextSize size, bool bold) {
    static constexpr double kFactors[] = {0.92, 1.0, 1.25, 1.5, 1.67, 1.4, 2.25, 2.9};
    QFont font = QApplication::font();
    const double factor = kFactors[static_cast<int>(size)];
    if (font.pointSizeF() > 0)
        font.setPointSizeF(font.pointSizeF() * factor);
    else
        font.setPixelSize(std::max(1, static_cast<int>(std::lround(font.pixelSize() * factor))));
    font.setBold(bold);
    return font;
}

double bodyPixels() {
    return QFontInfo(QApplication::font()).pixelSize();
}

int px(double atTwelve) {
    return static_cast<int>(std::lround(atTwelve * bodyPixels() / 12.0));
}

TextLabel::TextLabel(const QString& text, TextSize size, Role role, bool bold, QWidget* parent)
    : QLabel(text, parent), m_role(role), m_size(size), m_isBold(bold) {
    setTextFormat(Qt::AutoText);
    setFont(textFont(size, bold));
    applyRole();
    connect(&theme(), &Theme::changed, this, [this] {
        setFont(textFont(m_size, m_isBold));
        applyRole();
    });
}

void TextLabel::setRole(Role role) {
    m_role = role;
    applyRole();
}

void TextLabel::setSize(TextSize size, bool bold) {
    m_size = size;
    m_isBold = bold;
    setFont(textFont(size, bold));
}

TextLabel* TextLabel::wrapped() {
    setWordWrap(true);
    QSizePolicy policy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    return this;
}

QSize TextLabel::minimumSizeHint() const {
    return wordWrap() ? QSize(0, fontMetrics().height()) : QLabel::minimumSizeHint();
}

void TextLabel::applyRole() {
    QPalette p;
    p.setColor(QPalette::WindowText, color(m_role));
    p.setColor(QPalette::Text, color(m_role));
    setPalette(p);
}

HairLine::HairLine(Qt::Orientation orientation, Role role, QWidget* parent)
    : QWidget(parent), m_role(role), m_orientation(orientation) {
    setThickness(1);
}

void HairLine::setRole(Role role) {
    m_role = role;
    update();
}

void HairLine::setThickness(int pixels) {
    if (m_orientation == Qt::Horizontal)
        setFixedHeight(pixels);
    else
        setFixedWidth(pixels);
}

void HairLine::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), color(m_role));
}

RolePanel::RolePanel(Role fill, QWidget* parent) : QWidget(parent), m_fill(fill) {}

void RolePanel::setFill(Role fill) {
    m_fill = fill;
    update();
}

void RolePanel::setEdges(Qt::Edges edges, Role role) {
    m_edges = edges;
    m_edgeRole = role;
    update();
}

void RolePanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), color(m_fill));
    const QColor edge = color(m_edgeRole);
    if (m_edges & Qt::TopEdge) painter.fillRect(0, 0, width(), 1, edge);
    if (m_edges & Qt::BottomEdge) painter.fillRect(0, height() - 1, width(), 1, edge);
    if (m_edges & Qt::LeftEdge) painter.fillRect(0, 0, 1, height(), edge);
    if (m_edges & Qt::RightEdge) painter.fillRect(width() - 1, 0, 1, height(), edge);
}

}  // namespace bw
