// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/nozzle.h"
#include "ui/pages/season/hanging_field.h"

namespace bw {

/// Droplet classes typed as letters ("C, VC"), or picked from the chips that hang below the field.
class DropletEditor : public HangingField {
    Q_OBJECT

  public:
    explicit DropletEditor(QWidget* parent = nullptr);

  private:
    void toggle(DropletCategory category);
    void markChips();
};

}  // namespace bw
