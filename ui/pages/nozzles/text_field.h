// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <QWidget>

namespace bw {

class TextLabel;

/// A line of text with room for its problem below. Commits on Enter, Tab and leaving; Esc restores.
class TextField : public QWidget {
    Q_OBJECT

  public:
    explicit TextField(QWidget* parent = nullptr);
    ~TextField() override;
    QLineEdit* line() const { return m_line; }
    /// Shows the stored text, unless one is being edited.
    void setStored(const QString& text);
    /// Shows the stored text again in place of a refused entry: another record is in hand.
    void forgetTyped();
    /// Says what is wrong with the text being edited; empty: nothing.
    void setProblem(const QString& sentence);
    QString problem() const;

  Q_SIGNALS:
    void committed(const QString& text);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void commit();
    QLineEdit* m_line;
    TextLabel* m_problem;
    QString m_stored;
};

}  // namespace bw
