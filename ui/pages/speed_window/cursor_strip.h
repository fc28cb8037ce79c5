// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/kit/metrics.h"
#include "ui/pages/speed_window/window_study.h"

class QBoxLayout;

namespace bw {

class DropletChips;

/// What happens at the cursor's speed: read-outs with big figures, the droplets, the other
/// candidates at the same speed, and below in words how that stands and what it makes of the dose.
class CursorStrip : public QWidget {
    Q_OBJECT

  public:
    explicit CursorStrip(QWidget* parent = nullptr);
    /// Shows the study's nozzle in hand at a speed. Asks each model for one point.
    void show(const WindowStudy& study, const Sentences& sentences, Speed speed);
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct ReadOut {
        QWidget* box;
        TextLabel* caption;
        TextLabel* figure;
        TextLabel* unit;
    };
    static ReadOut addReadOut(const QString& name, const QString& caption);
    void arrange();
    int widest(const ReadOut& out) const;
    void setWordLines(int lines);
    static void fill(ReadOut& out, const QString& figure, const QString& unit);
    void showRate(const WindowStudy& study, const OperatingPoint& point);
    void showDroplets(const OperatingPoint& point);
    void showOthers(const WindowStudy& study, Speed speed);
    void showWords(const WindowStudy& study, const Sentences& sentences,
                   const OperatingPoint& point);

    std::vector<ReadOut> m_outs;  ///< in the order of their captions
    QBoxLayout* m_top;
    QBoxLayout* m_row;
    bool m_isNarrow = false;
    TextLabel* m_dropletWords;
    DropletChips* m_droplets;
    TextLabel* m_words;
    class OtherNozzles* m_others;
};

}  // namespace bw
