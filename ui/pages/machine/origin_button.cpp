// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/origin_button.h"

#include <QKeyEvent>
#include <QMenu>
#include <QPainter>

#include "ui/kit/chips.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

OriginButton::OriginButton(QWidget* parent) : QAbstractButton(parent), m_menu(new QMenu(this)) {
    // Not on the Tab path, which would stop twice at every field: F2 opens the menu from the
    // editor.
    setFocusPolicy(Qt::ClickFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    const auto add = [this](const QString& text, Origin origin, const char* name) {
        QAction* action = m_menu->addAction(text, this, [this, origin] { choose(origin); });
        action->setObjectName(QLatin1String(name));
    };
    add(tr("&Measured (today's date)"), Origin::Measured, "origin.measured");
    add(tr("From the &handbook"), Origin::Handbook, "origin.handbook");
    add(tr("&Assumed"), Origin::Assumed, "origin.assumed");
    m_menu->addSeparator();
    m_menu->addAction(tr("&Not known\tF4"), this, &OriginButton::unknownChosen);
    connect(this, &QAbstractButton::clicked, this, &OriginButton::openMenu);
}

void OriginButton::setOrigin(std::optional<Origin> origin, const QString& date,
                             const QString& field) {
    m_origin = origin;
    m_date = date;
    setEnabled(origin.has_value());
    QString words = originWord(origin);
    if (!date.isEmpty()) words += u' ' + date;
    setAccessibleName(tr("%1: %2").arg(field, words));
    setAccessibleDescription(tr("Where the value came from"));
    setToolTip(origin ? tr("%1. Click to change where it came from.").arg(words) : words);
    setText(origin == Origin::Handbook ? tr("handbook") : originWord(origin));
    updateGeometry();
    update();
}

void OriginButton::choose(Origin origin) {
    if (m_origin) Q_EMIT originChosen(origin);
}

void OriginButton::openMenu() {
    if (m_origin) m_menu->popup(mapToGlobal(QPoint(0, height())));
}

QSize OriginButton::sizeHint() const {
    return {px(80), px(24)};
}

void OriginButton::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_M:
            return choose(Origin::Measured);
        case Qt::Key_H:
            return choose(Origin::Handbook);
        case Qt::Key_A:
            return choose(Origin::Assumed);
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Down:
            return openMenu();
        default:
            QAbstractButton::keyPressEvent(event);
    }
}

void OriginButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_origin && (underMouse() || hasFocus())) {
        painter.setPen(QPen(color(hasFocus() ? Role::Focus : Role::Edge), hasFocus() ? 2 : 1));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 3, 3);
    }
    const double side = px(12);
    paintOriginMark(painter, QRectF(px(3), (height() - side) / 2, side, side), m_origin,
                    theme().look());
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(m_origin ? Role::Ink : Role::Unchecked));
    painter.drawText(rect().adjusted(px(19), 0, 0, 0), Qt::AlignVCenter, text());
}

}  // namespace bw
