// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/machine_fields.h"

namespace bw {

/// "7 measured, 11 handbook, 6 assumed", each with its mark.
class OriginTally : public QWidget {
    Q_OBJECT

  public:
    explicit OriginTally(QWidget* parent = nullptr);
    void setCounts(const OriginCounts& counts);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QStringList words() const;
    OriginCounts m_counts;
};

}  // namespace bw
