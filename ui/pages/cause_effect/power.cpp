// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/power.h"

#include <QDir>
#include <QFile>

namespace bw {

using namespace Qt::StringLiterals;

bool isOnBattery() {
    const QDir supplies(u"/sys/class/power_supply"_s);
    bool hasMains = false, isFed = false;
    for (const QString& name : supplies.entryList(QDir::Dirs | QDir::NoDotAndDotDot)) {
        QFile type(supplies.filePath(name + u"/type"_s));
        QFile online(supplies.filePath(name + u"/online"_s));
        if (!type.open(QIODevice::ReadOnly) || type.readAll().trimmed() != "Mains") continue;
        hasMains = true;
        if (online.open(QIODevice::ReadOnly) && online.readAll().trimmed() == "1") isFed = true;
    }
    return hasMains && !isFed;
}

}  // namespace bw
