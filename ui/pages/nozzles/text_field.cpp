// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/nozzles/text_field.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include "ui/kit/metrics.h"

namespace bw {

TextField::TextField(QWidget* parent)
    : QWidget(parent),
      m_line(new QLineEdit(this)),
      m_problem(new TextLabel({}, TextSize::Small, Role::Limit, false, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(2));
    column->addWidget(m_line);
    m_problem->wrapped();
    m_problem->hide();
    column->addWidget(m_problem);
    setFocusProxy(m_line);
    m_line->installEventFilter(this);
    connect(m_line, &QLineEdit::editingFinished, this, &TextField::commit);
}

// A line that loses the focus while its field is being destroyed would commit to nobody.
TextField::~TextField() {
    m_line->disconnect(this);
}

void TextField::setStored(const QString& text) {
    const bool untouched = m_line->text() == m_stored;
    const bool isRefused = !untouched && text == m_stored && !problem().isEmpty();
    m_stored = text;
    if (isRefused || (!untouched && m_line->hasFocus())) return;
    forgetTyped();
}

void TextField::forgetTyped() {
    m_line->setText(m_stored);
    m_line->setCursorPosition(0);
    setProblem({});
}

void TextField::setProblem(const QString& sentence) {
    m_problem->setText(sentence.isEmpty() ? QString() : QStringLiteral("\u25b2 ") + sentence);
    m_problem->setVisible(!sentence.isEmpty());
    m_line->setAccessibleDescription(sentence);
}

QString TextField::problem() const {
    return m_problem->text();
}

void TextField::commit() {
    if (m_line->text() == m_stored) return setProblem({});
    Q_EMIT committed(m_line->text());
}

bool TextField::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_line && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        m_line->setText(m_stored);
        setProblem({});
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace bw
