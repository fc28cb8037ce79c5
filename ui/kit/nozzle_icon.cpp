// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/nozzle_icon.h"

#include <QPainter>

#include "ui/kit/chips.h"

namespace bw {

QIcon nozzleIcon(const QString& sizeCode) {
    constexpr double kSharp = 2.0;  ///< drawn twice as fine, for screens of high density
    const QSizeF size = nozzleChipSize(sizeCode);
    QPixmap pixmap((size * kSharp).toSize());
    pixmap.setDevicePixelRatio(kSharp);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintNozzleChip(painter, QRectF(QPointF(), size), sizeCode, color(Role::Ink),
                    color(Role::Raised));
    return QIcon(pixmap);
}

}  // namespace bw
