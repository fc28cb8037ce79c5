// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/hanging_field.h"

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
    QRect box(geometry().bottomLeft() + QPoint(0, px(2)), m_panel->size());
    if (const QWidget* around = parentWidget()) {
        if (box.bottom() > around->height()) box.moveBottom(geometry().top() - px(2));
        if (box.top() < 0) box.moveTop(0);
        if (box.right() > around->width()) box.moveRight(around->width());
        if (box.left() < 0) box.moveLeft(0);
    }
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
