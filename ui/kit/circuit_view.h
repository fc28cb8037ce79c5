// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <QWidget>
#include <vector>

#include "core/model/machine.h"

class QPainter;

namespace bw {

/// One part of the drawn circuit.
struct CircuitPart {
    QString id;        ///< "pump"
    QRectF box;        ///< in units of the drawing
    QString firstKey;  ///< the field that a click takes in hand
    QString name;      ///< "Pump"
};

/// What is known at the chosen speed, in words; empty: not known.
struct CircuitReadings {
    QString boomFlow;
    QString sensorPressure;
    QString nozzle;
    QString suctionLoss;  ///< losses with their minus sign
    QString pumpOutlet;
    QString pumpFlow;
    QString agitation;
    QString bypass;
    QString valveLoss;
    QString lineLoss;
    QString meterLoss;
    QString restrictorLoss;
    QString sectionLoss;
};

/// The part that a field belongs to; empty: none is drawn.
QString partOfField(const Machine& machine, const QString& key);

/// The circuit of a machine as far as its profile tells it: a part that is not fitted is not drawn,
/// one that is not known is dashed. A click takes the part's first field in hand.
class CircuitView : public QWidget {
    Q_OBJECT

  public:
    explicit CircuitView(QWidget* parent = nullptr);
    void setMachine(const Machine& machine);
    void setReadings(const CircuitReadings& readings);
    /// The part of this field gets a ring.
    void setFieldInHand(const QString& key);
    /// Where a part is drawn, in the widget's pixels; empty if it is not.
    QRectF partRect(const QString& id) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

  Q_SIGNALS:
    void partTaken(const QString& fieldKey);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    bool event(QEvent* event) override;

  private:
    double drawingScale() const;
    QPointF origin() const;
    const CircuitPart* partAt(QPointF pixel) const;
    void layOut();
    QString readingOf(const QString& id) const;
    void describe();
    void layOutSections();
    void add(const QString& id, const QRectF& box, const QString& key, const QString& name);
    const CircuitPart* part(const QString& id) const;

    void paintPipes(QPainter& painter) const;
    void paintReturns(QPainter& painter) const;
    void paintTankSide(QPainter& painter) const;
    void paintLine(QPainter& painter) const;
    void paintSections(QPainter& painter) const;
    void paintSection(QPainter& painter, std::size_t index) const;
    void paintTags(QPainter& painter) const;
    void paintPumpTags(QPainter& painter) const;
    void paintLosses(QPainter& painter) const;
    void paintRing(QPainter& painter) const;

    Machine m_machine;
    CircuitReadings m_readings;
    QString m_inHand;
    std::vector<CircuitPart> m_parts;
    std::vector<QRectF> m_sections;  ///< one box a section, true to width
};

}  // namespace bw
