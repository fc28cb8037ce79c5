// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <vector>

#include "core/model/nozzle.h"

namespace bw {

/// Droplet classes typed as letters ("C, VC"), or picked from the chips that hang below the field.
class DropletEditor : public QLineEdit {
    Q_OBJECT

  public:
    explicit DropletEditor(QWidget* parent = nullptr);
    ~DropletEditor() override;

  protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void moveEvent(QMoveEvent* event) override;

  private:
    void placeChips();
    void toggle(DropletCategory category);
    void markChips();
    QWidget* m_chips;
};

}  // namespace bw
