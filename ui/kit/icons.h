// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIcon>
#include <QPixmap>
#include <QRectF>
#include <QString>

#include "core/window/limits.h"
#include "ui/kit/palette.h"

class QPainter;

namespace bw {

/// Names of icons are those of resources/icons without ".svg":
/// pages "machine" "nozzle" "season" "window" "cause" "finder" "yard" "records" "start";
/// stops "floor" "ceiling" "coarse" "fine" "nozzle_low" "nozzle_high" "meter" "pump" "relief"
/// "suction" "top_speed" "duty" "changeover" "outside"; acts "table" "copy" "print" "phone" "back"
/// "clock" "plus" "find" "projector" "minus" "edit" "delete" "open" "close" "down" "right" "undo"
/// "redo" "help" "theme" "check"; marks "caution" "unchecked" "drift".
QStringList iconNames();
/// Draws an icon into a square, in one colour.
void paintIcon(QPainter& painter, const QRectF& square, const QString& name, const QColor& tint);
QPixmap iconPixmap(const QString& name, const QColor& tint, int pixels,
                   double devicePixelRatio = 1.0);
/// An icon for actions and buttons; follows the theme when painted, the disabled role when
/// disabled.
QIcon icon(const QString& name, Role role = Role::Ink);

/// The icon that stands for what stops a window.
QString iconOf(Limit limit);

}  // namespace bw
