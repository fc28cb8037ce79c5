// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QHBoxLayout;

namespace bw {

class ChoiceBox;

/// Adds a captioned box of choices (machine, job, nozzle) to the tools of a page's header: as wide
/// as `width` at most (at a body of 12 px), giving way with the others where room is short.
ChoiceBox* addHeaderChoice(QHBoxLayout& row, const QString& objectName, const QString& caption,
                           int width);

}  // namespace bw
