// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

namespace bw {

/// The boom as one line: a fan per nozzle, a bracket per section with what it gets as a part of its
/// need. A section is switched by a click, or by ← → and Space.
class SectionStrip : public QWidget {
    Q_OBJECT

  public:
    explicit SectionStrip(QWidget* parent = nullptr);
    void setSections(const std::vector<int>& nozzles);
    void setOn(const std::vector<bool>& isOn);
    /// Parts of the need, section by section; empty: not told.
    void setShares(const std::vector<double>& shares);
    /// Where a section is drawn.
    QRectF sectionRect(int section) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void toggled(int section);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void paintSection(QPainter& painter, std::size_t index) const;
    QString words(std::size_t index) const;
    void describe();

    std::vector<int> m_nozzles;
    std::vector<bool> m_isOn;
    std::vector<double> m_shares;
    int m_current = 0;
};

}  // namespace bw
