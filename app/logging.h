// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace bw {

/// From here on messages go to a file in the folder as well as to the console. A file over 1 MB is
/// put aside as ".old" first. Without a writable folder they go to the console alone.
void logTo(const QString& folder);
/// Warnings and worse so far.
int warningCount();

}  // namespace bw
