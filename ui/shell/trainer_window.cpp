// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/trainer_window.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QScreen>
#include <QTextBrowser>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/kit/palette.h"

namespace bw {

using namespace Qt::StringLiterals;

QScreen* screenForNotes(const QList<QScreen*>& screens, const QScreen* scene) {
    for (QScreen* screen : screens) {
        if (screen != scene) return screen;
    }
    return nullptr;
}

TrainerWindow::TrainerWindow(QWidget* parent)
    : QWidget(parent, Qt::Window),
      m_heading(new QLabel),
      m_notes(new QPlainTextEdit),
      m_truth(new QTextBrowser),
      m_later(new QTimer(this)) {
    setObjectName(u"trainer"_s);
    setWindowTitle(tr("Notes and truth · Boomwright"));
    setAttribute(Qt::WA_QuitOnClose, false);
    setFont(theme().deskFont());
    m_heading->setObjectName(u"trainer.heading"_s);
    m_heading->setTextFormat(Qt::PlainText);
    m_notes->setObjectName(u"trainer.notes"_s);
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->setPlaceholderText(tr("Your notes to this page. They never go on the wall."));
    m_notes->setTabChangesFocus(true);
    m_truth->setObjectName(u"trainer.truth"_s);
    m_truth->setAccessibleName(tr("Truth"));
    m_truth->setOpenLinks(false);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_heading);
    column->addWidget(m_notes, 2);
    column->addWidget(new QLabel(tr("Behind what the wall shows")));
    column->addWidget(m_truth, 3);
    const int line = fontMetrics().height();
    resize(36 * line, 40 * line);
    constexpr int kPause = 800;  // ms
    m_later->setSingleShot(true);
    m_later->setInterval(kPause);
    connect(m_later, &QTimer::timeout, this, &TrainerWindow::keep);
    connect(m_notes, &QPlainTextEdit::textChanged, this, [this] {
        m_isTyped = true;
        m_later->start();
    });
}

void TrainerWindow::setNotes(const QString& key, const QString& heading, const QString& text) {
    m_heading->setText(tr("Notes: %1").arg(heading));
    if (key == m_key) return;
    keep();
    m_key = key;
    const QSignalBlocker quiet(m_notes);
    m_notes->setPlainText(text);
}

void TrainerWindow::setTruth(const QString& richText) {
    const QString shown =
        richText.isEmpty() ? tr("Nothing behind this page but what it shows.") : richText;
    if (m_truth->property("bw.text").toString() == shown) return;
    m_truth->setProperty("bw.text", shown);
    m_truth->setHtml(shown);
}

void TrainerWindow::keep() {
    m_later->stop();
    if (!m_isTyped) return;
    m_isTyped = false;
    Q_EMIT notesChanged(m_key, m_notes->toPlainText());
}

void TrainerWindow::hideEvent(QHideEvent* event) {
    keep();
    QWidget::hideEvent(event);
    Q_EMIT shownOrHidden();
}

void TrainerWindow::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    Q_EMIT shownOrHidden();
}

}  // namespace bw
