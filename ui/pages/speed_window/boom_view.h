// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "ui/pages/speed_window/boom_table.h"
#include "ui/pages/speed_window/window_study.h"

class QHBoxLayout;
class QStackedWidget;

namespace bw {

class BoomChart;
class Button;
class DataTable;
class QuantityEdit;
class SegmentedButtons;
class TextLabel;

/// Along the boom: how even its pipe feeds the nozzles, what each gets in a turn and across a
/// slope, at the page's speed. The result in a sentence, a bar per nozzle, the same as a table.
class BoomView : public QWidget {
    Q_OBJECT

  public:
    explicit BoomView(const Sentences& sentences, QWidget* parent = nullptr);
    /// Shows a study; the caller keeps it alive until the next one. Null: nothing.
    void setStudy(const WindowStudy* study);
    void showCursor(Speed speed);
    /// Chart and table change places.
    void toggleTable();
    /// Puts the picture, or the table where that is shown, on the clipboard.
    void copy();
    /// The cautions that go with what is shown.
    QStringList cautions() const;
    void showKind(StripKind kind);

  Q_SIGNALS:
    void speedChosen(bw::Speed speed);
    /// Another strip is shown: its cautions may be others.
    void changed();
    void linkActivated(const QString& link);

  private:
    QWidget* buildTools();
    QWidget* buildField(QuantityEdit* edit, const QString& name, const QString& label);
    QWidget* buildRadius();
    QWidget* buildSlope();
    QWidget* buildUnknown();
    void work();
    BoomStrip strip() const;
    void showStrip();
    void showNozzle(int number);
    StripKind kind() const;
    Length radius() const;
    void takeRadius(Length radius);
    void takeSlope(double percent);

    const Sentences& m_sentences;
    const WindowStudy* m_study = nullptr;
    Speed m_speed;
    std::optional<Length> m_radius;  ///< nothing: the boom's width
    double m_slope = 10.0;           ///< percent
    BoomStrip m_strip;
    int m_nozzle = 1;
    bool m_wantsTable = false;

    SegmentedButtons* m_kinds;
    QuantityEdit* m_speedEdit;
    QuantityEdit* m_radiusEdit;
    QuantityEdit* m_slopeEdit;
    QWidget* m_radiusRow = nullptr;
    QWidget* m_slopeRow = nullptr;
    TextLabel* m_title;
    TextLabel* m_text;
    QStackedWidget* m_stack;
    BoomChart* m_chart;
    DataTable* m_table;
    BoomTable* m_model;
    TextLabel* m_reading;
    TextLabel* m_unknownText = nullptr;
    Button* m_mend = nullptr;
};

}  // namespace bw
