// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <optional>

#include "core/model/origin.h"

class QMenu;

namespace bw {

/// Origin mark and word of a value, as a button: it opens a menu of the origins. With the focus, M,
/// H and A choose at once.
class OriginButton : public QAbstractButton {
    Q_OBJECT

  public:
    explicit OriginButton(QWidget* parent = nullptr);
    /// Nothing: the value is unknown, and so is where it came from. `field` names it for screen
    /// readers.
    void setOrigin(std::optional<Origin> origin, const QString& date, const QString& field);
    std::optional<Origin> origin() const { return m_origin; }
    void openMenu();
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  Q_SIGNALS:
    void originChosen(bw::Origin origin);
    void unknownChosen();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void choose(Origin origin);
    std::optional<Origin> m_origin;
    QString m_date;
    QMenu* m_menu;
};

}  // namespace bw
