// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "core/model/nozzle.h"

namespace bw {

/// The other candidates at the cursor's speed, in a row: cap, pressure at the boom sensor, droplet
/// chip. Shows as many as there is room for; all of them stand in the tool tip and the name for
/// screen readers.
class OtherNozzles : public QWidget {
    Q_OBJECT

  public:
    struct Entry {
        QString code;
        QString name;
        QString pressure;  ///< "2.73 bar"
        std::optional<DropletCategory> droplets;
        bool isOff = false;  ///< the rate would not hold there
    };
    explicit OtherNozzles(QWidget* parent = nullptr);
    void setEntries(std::vector<Entry> entries);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double widthOf(const Entry& entry) const;
    std::vector<Entry> m_entries;
};

}  // namespace bw
