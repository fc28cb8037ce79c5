// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/prompts.h"

#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

int WindowPrompts::ask(QWidget* parent, const Question& question) {
    QMessageBox box(question.isWarning ? QMessageBox::Warning : QMessageBox::Question,
                    question.title, question.text, QMessageBox::NoButton, parent);
    constexpr int kSide = 36;
    const Role role = question.isWarning ? Role::Limit : Role::Accent;
    box.setIconPixmap(
        iconPixmap(question.isWarning ? QStringLiteral("caution") : QStringLiteral("help"),
                   color(role), px(kSide), parent ? parent->devicePixelRatioF() : 1.0));
    box.setInformativeText(question.detail);
    QList<QAbstractButton*> buttons;
    for (const QString& text : question.buttons)
        buttons.append(box.addButton(text, QMessageBox::ActionRole));
    if (!buttons.isEmpty()) {
        box.setDefaultButton(qobject_cast<QPushButton*>(buttons.first()));
        box.setEscapeButton(buttons.last());
    }
    box.exec();
    const auto taken = buttons.indexOf(box.clickedButton());
    return static_cast<int>(taken < 0 ? buttons.size() - 1 : taken);
}

QString WindowPrompts::openFile(QWidget* parent, const QString& title, const QString& folder,
                                const QString& filter) {
    return QFileDialog::getOpenFileName(parent, title, folder, filter);
}
QString WindowPrompts::saveFile(QWidget* parent, const QString& title, const QString& path,
                                const QString& filter) {
    return QFileDialog::getSaveFileName(parent, title, path, filter);
}
QString WindowPrompts::text(QWidget* parent, const QString& title, const QString& label,
                            const QString& start) {
    bool taken = false;
    const QString text =
        QInputDialog::getText(parent, title, label, QLineEdit::Normal, start, &taken);
    return taken ? text : QString();
}

int ScriptedPrompts::ask(QWidget*, const Question& question) {
    m_asked.append(question);
    if (m_buttons.empty()) {
        ++m_unexpected;
        return static_cast<int>(question.buttons.size()) - 1;
    }
    const int button = m_buttons.front();
    m_buttons.pop_front();
    return button;
}

QString ScriptedPrompts::nextText() {
    if (m_texts.empty()) {
        ++m_unexpected;
        return {};
    }
    const QString text = m_texts.front();
    m_texts.pop_front();
    return text;
}
QString ScriptedPrompts::openFile(QWidget*, const QString&, const QString&, const QString&) {
    return nextText();
}
QString ScriptedPrompts::saveFile(QWidget*, const QString&, const QString&, const QString&) {
    return nextText();
}
QString ScriptedPrompts::text(QWidget*, const QString&, const QString&, const QString&) {
    return nextText();
}

namespace {
Prompts*& standInSlot() {
    static Prompts* slot = nullptr;
    return slot;
}
}  // namespace

Prompts& prompts() {
    static WindowPrompts window;
    return standInSlot() ? *standInSlot() : window;
}

void usePrompts(Prompts* standIn) {
    standInSlot() = standIn;
}

}  // namespace bw
