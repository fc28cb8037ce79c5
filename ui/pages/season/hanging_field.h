// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>

namespace bw {

/// A field with a panel that hangs below it, for picking with the mouse what could be typed. The
/// focus stays in the field.
class HangingField : public QLineEdit {
    Q_OBJECT

  public:
    explicit HangingField(QWidget* parent);
    ~HangingField() override;

  protected:
    /// What hangs; filled by the derived class.
    QWidget* hanging() const { return m_panel; }
    /// Under the field, or above it where there is more room; no higher than the room there is.
    void placePanel();
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void moveEvent(QMoveEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* m_panel;
};

}  // namespace bw
