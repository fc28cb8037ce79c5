// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>

namespace bw {

/// A line of text that tells when Esc is pressed in it and when it loses the focus. Undo and redo
/// pass to the page unless a text is being typed.
class ListLine : public QLineEdit {
    Q_OBJECT

  public:
    explicit ListLine(QWidget* parent = nullptr);

  Q_SIGNALS:
    void escaped();
    void focusLeft();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;
};

}  // namespace bw
