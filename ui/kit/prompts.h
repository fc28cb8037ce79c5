// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <deque>

class QWidget;

namespace bw {

/// A question with its answers. The first button is the usual one, the last the way out.
struct Question {
    QString title;
    QString text;    ///< what happened
    QString detail;  ///< what is safe, what to do
    QStringList buttons;
    bool isWarning = false;
};

/// Everything that stops for an answer: message boxes and file dialogs. Tests put a script in its
/// place.
class Prompts {
  public:
    virtual ~Prompts() = default;
    /// Index of the button taken; the last one for Esc.
    virtual int ask(QWidget* parent, const Question& question) = 0;
    /// A path, or empty when given up. `filter` as in QFileDialog.
    virtual QString openFile(QWidget* parent, const QString& title, const QString& folder,
                             const QString& filter) = 0;
    virtual QString saveFile(QWidget* parent, const QString& title, const QString& path,
                             const QString& filter) = 0;
    virtual QString text(QWidget* parent, const QString& title, const QString& label,
                         const QString& start) = 0;
};

/// The real ones.
class WindowPrompts : public Prompts {
  public:
    int ask(QWidget* parent, const Question& question) override;
    QString openFile(QWidget* parent, const QString& title, const QString& folder,
                     const QString& filter) override;
    QString saveFile(QWidget* parent, const QString& title, const QString& path,
                     const QString& filter) override;
    QString text(QWidget* parent, const QString& title, const QString& label,
                 const QString& start) override;
};

/// Answers from a list and keeps what was asked. An unexpected prompt takes the way out and is
/// counted.
class ScriptedPrompts : public Prompts {
  public:
    void willTake(int button) { m_buttons.push_back(button); }
    void willChoose(const QString& pathOrText) { m_texts.push_back(pathOrText); }
    const QList<Question>& asked() const { return m_asked; }
    int unexpected() const { return m_unexpected; }
    int ask(QWidget* parent, const Question& question) override;
    QString openFile(QWidget* parent, const QString& title, const QString& folder,
                     const QString& filter) override;
    QString saveFile(QWidget* parent, const QString& title, const QString& path,
                     const QString& filter) override;
    QString text(QWidget* parent, const QString& title, const QString& label,
                 const QString& start) override;

  private:
    QString nextText();
    std::deque<int> m_buttons;
    std::deque<QString> m_texts;
    QList<Question> m_asked;
    int m_unexpected = 0;
};

/// The prompts in force: those of the window unless a stand-in was put in (tests). The caller owns
/// it; null takes it out.
Prompts& prompts();
void usePrompts(Prompts* standIn);

}  // namespace bw
