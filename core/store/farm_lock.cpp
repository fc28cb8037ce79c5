// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/farm_lock.h"

#include <QDir>

#include "core/store/store_problem.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString holder(const QLockFile& lock) {
    qint64 process = 0;
    QString computer;
    QString program;
    if (!lock.getLockInfo(&process, &computer, &program)) return u"another program"_s;
    return u"%1 on %2 (process %3)"_s.arg(program, computer).arg(process);
}

}  // namespace

Result<std::unique_ptr<FarmLock>> FarmLock::take(const QString& path) {
    const QString lockPath = path + u".lock"_s;
    std::unique_ptr<FarmLock> out(new FarmLock(lockPath));
    out->m_file.setStaleLockTime(0);  // age says nothing: a program may stand open all week
    if (out->m_file.tryLock(0)) return out;
    return error("file_in_use", {},
                 {pathArgument("file", path),
                  {"who", holder(out->m_file).toStdString()},
                  {"lock", QDir::toNativeSeparators(lockPath).toStdString()}});
}

}  // namespace bw
