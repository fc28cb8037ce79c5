// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>

#include "app/command_line.h"
#include "app/startup.h"

int main(int argc, char** argv) {
    QStringList arguments;
    for (int i = 1; i < argc; ++i) arguments.append(QString::fromLocal8Bit(argv[i]));
    const bw::CommandLine line = bw::readCommandLine(arguments);
    if (const int answered = bw::answerOnConsole(line); answered >= 0) return answered;
    bw::preparePlatform(line);
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Boomwright"));
    QApplication::setApplicationVersion(QStringLiteral(BW_VERSION));
    return bw::runProgram(line);
}
