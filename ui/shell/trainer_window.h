// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QList>
#include <QWidget>

class QLabel;
class QPlainTextEdit;
class QScreen;
class QTextBrowser;
class QTimer;

namespace bw {

/// The screen for the trainer's window: another one than the scene's; null: there is none.
QScreen* screenForNotes(const QList<QScreen*>& screens, const QScreen* scene);

/// The trainer's own window: notes to a page or lesson, and the truth behind what the wall shows.
/// Always in the type of the desk.
class TrainerWindow : public QWidget {
    Q_OBJECT

  public:
    explicit TrainerWindow(QWidget* parent = nullptr);
    /// What the notes belong to, and how they read so far. Notes being typed are given out first.
    void setNotes(const QString& key, const QString& heading, const QString& text);
    void setTruth(const QString& richText);
    QString notesKey() const { return m_key; }
    /// Gives out what was typed since; called when hidden and a moment after typing, too.
    void keep();

  Q_SIGNALS:
    void notesChanged(const QString& key, const QString& text);
    /// Shown or hidden, by whatever way.
    void shownOrHidden();

  protected:
    void hideEvent(QHideEvent* event) override;
    void showEvent(QShowEvent* event) override;

  private:
    QString m_key;
    bool m_isTyped = false;
    QLabel* m_heading;
    QPlainTextEdit* m_notes;
    QTextBrowser* m_truth;
    QTimer* m_later;
};

}  // namespace bw
