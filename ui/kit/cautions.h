// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

namespace bw {

/// The text of a caution by its id ("C1" … "C30") from the one data file, for a CautionBox: HTML
/// with an optional bold lead ("High end:") before it. An unknown id yields the id in angle
/// brackets.
QString cautionText(const QString& id, const QString& lead = {});
QStringList cautionTexts(const QStringList& ids);

}  // namespace bw
