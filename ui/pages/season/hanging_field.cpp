// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/hanging_field.h"

#include <algorithm>

#include "ui/kit/metrics.h"

namespace bw {

HangingField::HangingField(QWidget* parent) : QLineEdit(parent) {
    auto* panel = new RolePanel(Role::Raised);
    panel->setEdges(Qt::TopEdge | Qt::BottomEdge | Qt::LeftEdge | Qt::RightEdge, Role::Edge);
    panel->setParent(parent);
    // A click on it would else give the focus to the table, which closes the field.
    panel->setFocusPolicy(Qt::ClickFocus);
    panel->setFocusProxy(this);
    m_panel = panel;
}

HangingField::~HangingField() {
    delete m_panel;
}

void HangingField::placePanel() {
    m_panel->adjustSize();
    const QRect field = geometry();
    const QRect around = parentWidget() ? parentWidget()->rect() : field;
    const int below = around.bottom() - field.bottom() - px(2);
    const int above = field.top() - around.top() - px(2);
    QRect box(field.bottomLeft() + QPoint(0, px(2)), m_panel->size());
    const bool goesUp = box.height() > below && above > below;
    box.setHeight(std::min(box.height(), goesUp ? above : below));
    if (goesUp) box.moveBottom(field.top() - px(2));
    if (box.right() > around.right()) box.moveRight(around.right());
    if (box.left() < around.left()) box.moveLeft(around.left());
    m_panel->setGeometry(box);
    m_panel->raise();
}

void HangingField::showEvent(QShowEvent* event) {
    QLineEdit::showEvent(event);
    placePanel();
    m_panel->show();
}

void HangingField::hideEvent(QHideEvent* event) {
    m_panel->hide();
    QLineEdit::hideEvent(event);
}

void HangingField::moveEvent(QMoveEvent* event) {
    QLineEdit::moveEvent(event);
    placePanel();
}

void HangingField::resizeEvent(QResizeEvent* event) {
    QLineEdit::resizeEvent(event);
    placePanel();
}

}  // namespace bw
