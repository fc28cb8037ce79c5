// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/logging.h"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QMutex>
#include <atomic>
#include <cstdio>

namespace bw {

using namespace Qt::StringLiterals;

namespace {

// A message handler is a plain function: what it writes to cannot be passed in.
QFile& logFile() {
    static QFile file;
    return file;
}
std::atomic<int>& warnings() {
    static std::atomic<int> count{0};
    return count;
}

void write(QtMsgType type, const QMessageLogContext& context, const QString& text) {
    static QMutex mutex;
    const QMutexLocker lock(&mutex);
    const bool isHarmless = text.contains(u"propagateSizeHints"_s);
    if (isHarmless) return;
    if (type != QtDebugMsg && type != QtInfoMsg) ++warnings();
    const QByteArray line = qFormatLogMessage(type, context, text).toUtf8() + '\n';
    std::fputs(line.constData(), stderr);
    if (!logFile().isOpen()) return;
    logFile().write(QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toUtf8() + ' ' + line);
    logFile().flush();
}

}  // namespace

void logTo(const QString& folder) {
    constexpr qint64 kMostBytes = 1'000'000;
    const QString path = QDir(folder).filePath(u"boomwright.log"_s);
    if (QFile::exists(path) && QFile(path).size() > kMostBytes) {
        QFile::remove(path + u".old"_s);
        QFile::rename(path, path + u".old"_s);
    }
    logFile().close();
    logFile().setFileName(path);
    [[maybe_unused]] const bool isOpen = logFile().open(QIODevice::Append | QIODevice::Text);
    qInstallMessageHandler(write);
}

int warningCount() {
    return warnings();
}

}  // namespace bw
