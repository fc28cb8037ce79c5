// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <vector>

namespace bw {

/// One bar: a finding, its word, its share, and the causes of a group below its name.
struct CauseBar {
    QString name;
    QString members;
    QString word;
    double share = 0.0;
    bool isSomethingElse = false;  ///< dotted: nothing that the finder knows
    bool isStrong = false;
};

/// Most likely so far, as bars with words. Painted; its accessible name says it all.
class CauseBars : public QWidget {
    Q_OBJECT

  public:
    explicit CauseBars(QWidget* parent = nullptr);
    void setBars(std::vector<CauseBar> bars);
    const std::vector<CauseBar>& bars() const { return m_bars; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    /// Lays bar by bar from the top; paints if there is a painter. Returns the height.
    int lay(QPainter* painter, int width) const;
    std::vector<CauseBar> m_bars;
};

}  // namespace bw
