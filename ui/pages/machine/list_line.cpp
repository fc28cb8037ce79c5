// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/list_line.h"

#include <QFocusEvent>
#include <QKeyEvent>

#include "ui/kit/metrics.h"

namespace bw {

ListLine::ListLine(QWidget* parent) : QLineEdit(parent) {
    setFont(textFont(TextSize::Body, true));
    setFocusPolicy(Qt::StrongFocus);
    connect(&theme(), &Theme::changed, this, [this] { setFont(textFont(TextSize::Body, true)); });
}

void ListLine::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT escaped();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void ListLine::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) Q_EMIT focusLeft();
}

bool ListLine::event(QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride) return QLineEdit::event(event);
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Escape && isModified()) {
        key->accept();
        return true;
    }
    const bool isUndo = key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
    if (isUndo && !isModified()) {
        key->ignore();
        return true;
    }
    return QLineEdit::event(event);
}

}  // namespace bw
