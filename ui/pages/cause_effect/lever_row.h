// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSlider>
#include <QWidget>
#include <optional>

#include "core/units/format.h"
#include "core/units/unit.h"

namespace bw {

class QuantityEdit;
class TextLabel;
class IconButton;

/// A slider of the kit's look with a tick where the value stands in the profile. A click takes the
/// handle there.
class LeverTrack : public QSlider {
    Q_OBJECT

  public:
    explicit LeverTrack(QWidget* parent = nullptr);
    void setHome(std::optional<int> home);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

  private:
    double placeOf(int value) const;
    int valueAt(double x) const;
    std::optional<int> m_home;
};

/// One lever: its name, a field that takes any unit, and a slider under both.
class LeverRow : public QWidget {
    Q_OBJECT

  public:
    /// `name` is the object name of the row; slider and field get ".slider" and ".field".
    LeverRow(const QString& name, const QString& label, Dimension dimension, Unit unit,
             QWidget* parent = nullptr);
    void setStyle(const NumberStyle& style, Unit unit);
    /// Ends and step of the slider, in the unit shown; the field takes more.
    void setRange(double from, double to, double step);
    void setHome(std::optional<AnyQuantity> home);
    void setValue(std::optional<AnyQuantity> value);
    std::optional<AnyQuantity> value() const;
    /// An empty field is "none", a quiet word in its place.
    void setOptional(const QString& noneWord);
    void setBounds(double least, double most);  ///< in the unit shown, both allowed
    /// A button at the right that takes the row away.
    void setRemovable(const QString& words);

  Q_SIGNALS:
    void moved(bw::AnyQuantity value);
    void cleared();
    void removeWished();

  private:
    AnyQuantity at(int tick) const;
    int tickOf(AnyQuantity value) const;

    Dimension m_dimension;
    Unit m_unit;
    double m_from = 0.0, m_step = 1.0;
    std::optional<AnyQuantity> m_home;
    TextLabel* m_label;
    QuantityEdit* m_field;
    LeverTrack* m_track;
    IconButton* m_remove;
};

}  // namespace bw
