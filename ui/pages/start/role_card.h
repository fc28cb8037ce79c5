// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QKeySequence>
#include <QString>

class QVBoxLayout;

namespace bw {

class TextLabel;
class Button;

/// One role's card: icon, what the role is after, the state of things, and its ways in.
class RoleCard : public QWidget {
    Q_OBJECT

  public:
    RoleCard(const QString& icon, const QString& title, const QString& words,
             QWidget* parent = nullptr);
    /// A quiet line on how things stand ("2 machines, 12 jobs").
    TextLabel* state() const { return m_state; }
    Button* addDeed(const QString& text, const QString& icon, const QKeySequence& shownKey,
                    bool isFirst);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QVBoxLayout* m_column;
    TextLabel* m_state;
};

}  // namespace bw
