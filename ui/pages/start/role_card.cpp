// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/start/role_card.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"

namespace bw {

RoleCard::RoleCard(const QString& icon, const QString& title, const QString& words, QWidget* parent)
    : QWidget(parent),
      m_column(new QVBoxLayout(this)),
      m_state(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    m_column->setContentsMargins(px(18), px(16), px(18), px(18));
    m_column->setSpacing(px(8));
    auto* head = new QHBoxLayout;
    head->setSpacing(px(10));
    head->addWidget(new IconLabel(icon, Role::Accent, 26));
    head->addWidget(new TextLabel(title, TextSize::Verdict, Role::Ink, true), 1);
    m_column->addLayout(head);
    m_column->addWidget((new TextLabel(words))->wrapped());
    m_column->addWidget(m_state->wrapped());
    m_column->addStretch(1);
    setAccessibleName(title);
}

Button* RoleCard::addDeed(const QString& text, const QString& icon, const QKeySequence& shownKey,
                          bool isFirst) {
    auto* button = new Button(text, icon, isFirst ? Button::Kind::Primary : Button::Kind::Plain);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    if (!shownKey.isEmpty()) button->setKey(shownKey, false);
    m_column->addWidget(button);
    return button;
}

void RoleCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(color(Role::Line), 1));
    painter.setBrush(color(Role::Raised));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.fillRect(QRectF(0, 0, width(), px(3)), color(Role::Accent));
}

}  // namespace bw
