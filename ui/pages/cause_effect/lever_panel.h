// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/units/format.h"
#include "ui/pages/cause_effect/run.h"

namespace bw {

class Button;
class ChoiceBox;
class LeverRow;
class SegmentedButtons;
class TextLabel;

/// The levers of speed, rate, sections, restrictor, limits and controller, and how the speed goes.
class LeverPanel : public QWidget {
    Q_OBJECT

  public:
    explicit LeverPanel(QWidget* parent = nullptr);
    /// Another machine or job: ranges and the values as entered.
    void setRun(const Run& run, const NumberStyle& style);
    void setLevers(const Run& run);
    /// The readout of the loop's stability; empty: none.
    void setStability(const QString& words);

  Q_SIGNALS:
    void changed(const bw::Levers& levers, const QString& words);
    void scriptChosen(bw::Script script, double share, const QString& words);

  private:
    LeverRow* addRow(const char* name, const QString& label, Dimension dimension, Unit unit);
    void addHead(const QString& text);
    void addDrive();
    void addSections();
    void addRestrictor();
    void connectRows();
    void tell(const QString& words);
    void tellScript();

    NumberStyle m_style;
    Levers m_levers;
    ChoiceBox* m_drive = nullptr;
    LeverRow* m_share = nullptr;
    LeverRow* m_speed = nullptr;
    LeverRow* m_target = nullptr;
    TextLabel* m_sections = nullptr;
    Button* m_allOn = nullptr;
    QWidget* m_restrictorRow = nullptr;
    SegmentedButtons* m_restrictor = nullptr;
    LeverRow* m_floor = nullptr;
    LeverRow* m_ceiling = nullptr;
    LeverRow* m_gain = nullptr;
    LeverRow* m_deadBand = nullptr;
    TextLabel* m_stability = nullptr;
};

}  // namespace bw
