// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QWidget>
#include <optional>

#include "core/model/nozzle.h"
#include "core/model/origin.h"
#include "ui/kit/palette.h"

class QPainter;

namespace bw {

/// Sizes of chips from the body font: droplet chip about 20 × 18 px (wider for two letters),
/// nozzle chip 30 × 18 px.
QSizeF dropletChipSize(DropletCategory category);
QSizeF nozzleChipSize(const QString& sizeCode);

/// Round chip in the category's colour with its letters and an ink outline.
void paintDropletChip(QPainter& painter, const QRectF& box, DropletCategory category,
                      const QColor& outline);
/// Cap with cut lower corners in the colour of the size with its code; without a code or colour of
/// the standard on the raised role.
void paintNozzleChip(QPainter& painter, const QRectF& box, const QString& sizeCode,
                     const QColor& outline, const QColor& plain);
/// Full disc measured, half disc handbook, dashed ring assumed; a ring with ? for unknown.
void paintOriginMark(QPainter& painter, const QRectF& box, std::optional<Origin> origin, Look look);
/// A curve's marker about a point, filled with `fill`.
void paintMarker(QPainter& painter, QPointF at, Marker marker, double size, const QColor& line,
                 const QColor& fill);

/// The same with the colours of a look (the one in use unless given), centred on a point.
void paintDropletChip(QPainter& painter, QPointF centre, DropletCategory category,
                      std::optional<Look> look = {});
void paintNozzleChip(QPainter& painter, QPointF centre, const QString& sizeCode,
                     std::optional<Look> look = {});

/// "measured", "from the handbook", "assumed", "not known": short word for beside the mark.
QString originWord(std::optional<Origin> origin);
QString letters(DropletCategory category);

class NozzleChip : public QWidget {
    Q_OBJECT

  public:
    explicit NozzleChip(const QString& sizeCode = {}, QWidget* parent = nullptr);
    void setSizeCode(const QString& sizeCode);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString m_code;
};

/// One or more droplet categories in a row.
class DropletChips : public QWidget {
    Q_OBJECT

  public:
    explicit DropletChips(std::vector<DropletCategory> categories = {}, QWidget* parent = nullptr);
    void setCategories(std::vector<DropletCategory> categories);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    std::vector<DropletCategory> m_categories;
};

/// Origin mark and its word.
class OriginMark : public QWidget {
    Q_OBJECT

  public:
    explicit OriginMark(QWidget* parent = nullptr);
    void setOrigin(std::optional<Origin> origin, const QString& date = {});
    std::optional<Origin> origin() const { return m_origin; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString words() const;
    std::optional<Origin> m_origin;
    QString m_date;
};

/// An icon as a widget, tinted by a role.
class IconLabel : public QWidget {
    Q_OBJECT

  public:
    explicit IconLabel(const QString& name, Role role = Role::Ink, int pixelsAtTwelve = 20,
                       QWidget* parent = nullptr);
    void setIcon(const QString& name, Role role);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString m_name;
    Role m_role;
    int m_pixels;
};

}  // namespace bw
