// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/simulation/trace_ring.h"
#include "core/units/format.h"
#include "ui/kit/palette.h"

namespace bw {

class TextLabel;

/// The figures that a class reads off: what the display shows, what comes on the ground, pressure
/// and speed.
class ReadOuts : public QWidget {
    Q_OBJECT

  public:
    explicit ReadOuts(QWidget* parent = nullptr);
    /// `reading`: gives the spread; nothing: not told. `other`: a second run's last step.
    void show(const TracePoint& now, const std::optional<RunReading>& reading,
              const TracePoint* other, const NumberStyle& style);
    /// A question mark in place of every figure.
    void hideFigures();

  private:
    struct Field {
        TextLabel* figure = nullptr;
        TextLabel* beside = nullptr;
        TextLabel* other = nullptr;  ///< of the second run; hidden without one
    };
    Field addField(int row, int column, const char* name, const QString& caption, Role role,
                   bool isBig);

    Field m_display, m_ground, m_pressure, m_speed;
};

}  // namespace bw
