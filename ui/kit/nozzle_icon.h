// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIcon>
#include <QString>

namespace bw {

/// The cap of a nozzle size as an icon for lists, in the colours of the look in use.
QIcon nozzleIcon(const QString& sizeCode);

}  // namespace bw
