// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/startup.h"

#include <QApplication>
#include <QTemporaryDir>
#include <cstdio>

#include "app/app_context.h"
#include "app/logging.h"
#include "app/pictures.h"
#include "ui/kit/kit_style.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kWrongUse = 2;

void print(std::FILE* stream, const QString& text) {
    std::fputs(text.toUtf8().constData(), stream);
}

bool hasDisplay() {
    return !qEnvironmentVariableIsEmpty("DISPLAY") ||
           !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
}

/// Unattended runs leave nothing behind and depend on nothing: a data folder of their own and,
/// unless a file is named, the demo season.
int runUnattended(CommandLine line) {
    const QTemporaryDir folder;
    if (line.dataDir.isEmpty()) line.dataDir = folder.path();
    line.isDemo = line.isDemo || line.file.isEmpty();
    logTo(line.dataDir);
    AppContext context(line);
    if (line.picturesDir.isEmpty()) {
        visitPages(context.window());
        return warningCount() == 0 ? 0 : 1;
    }
    if (drawPictures(context.window(), line.picturesDir)) return 0;
    print(stderr, u"boomwright: could not write to %1\n"_s.arg(line.picturesDir));
    return 1;
}

}  // namespace

int answerOnConsole(const CommandLine& line) {
    if (line.wantsHelp)
        print(stdout, helpText());
    else if (line.wantsVersion)
        print(stdout, u"boomwright %1\n"_s.arg(QString::fromLatin1(BW_VERSION)));
    else if (!line.error.isEmpty())
        print(stderr, u"boomwright: %1\n\n%2"_s.arg(line.error, helpText()));
    else
        return -1;
    return line.error.isEmpty() || line.wantsHelp || line.wantsVersion ? 0 : kWrongUse;
}

void preparePlatform(const CommandLine& line) {
    if (!qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) return;
    if (!line.picturesDir.isEmpty() || (line.exitAfterStartup && !hasDisplay()))
        qputenv("QT_QPA_PLATFORM", "offscreen");
}

int runProgram(const CommandLine& line) {
    dressApplication(line.isUnattended());
    if (line.isUnattended()) return runUnattended(line);
    logTo(dataFolder(line));
    AppContext context(line);
    context.window().show();
    return QApplication::exec();
}

}  // namespace bw
