// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QString>
#include <QWidget>

class QVBoxLayout;

namespace bw {

class TextLabel;
class Button;

/// The sign of a role, drawn from the marks of its page: spans, the feed line, the lit window.
class RolePicture : public QWidget {
    Q_OBJECT

  public:
    enum class Kind { Plan, Fix, Teach };
    explicit RolePicture(Kind kind, QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Kind m_kind;
};

/// One role's card: picture, what the role is after, the state of things, and its ways in.
class RoleCard : public QWidget {
    Q_OBJECT

  public:
    RoleCard(RolePicture::Kind kind, const QString& title, const QString& words,
             QWidget* parent = nullptr);
    /// A quiet line on how things stand ("2 machines, 12 jobs").
    TextLabel* state() const { return m_state; }
    Button* addDeed(const QString& text, const QString& icon, const QKeySequence& shownKey,
                    bool isFirst);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    QVBoxLayout* m_column;
    TextLabel* m_state;
};

}  // namespace bw
