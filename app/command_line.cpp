// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Takes "--name=value" or "--name value" into `target`; false if the argument is another.
bool takeValue(const QString& name, const QStringList& arguments, qsizetype& at, QString& target,
               QString& error) {
    const QString& argument = arguments[at];
    if (argument.startsWith(name + u'=')) {
        target = argument.mid(name.size() + 1);
    } else if (argument != name) {
        return false;
    } else if (at + 1 < arguments.size()) {
        target = arguments[++at];
    }
    if (target.isEmpty()) error = u"%1 needs a folder behind it"_s.arg(name);
    return true;
}

bool takeFlag(const QString& argument, CommandLine& line) {
    if (argument == u"--demo"_s)
        line.isDemo = true;
    else if (argument == u"--exit-after-startup"_s)
        line.exitAfterStartup = true;
    else if (argument == u"--help"_s || argument == u"-h"_s)
        line.wantsHelp = true;
    else if (argument == u"--version"_s)
        line.wantsVersion = true;
    else
        return false;
    return true;
}

}  // namespace

CommandLine readCommandLine(const QStringList& arguments) {
    CommandLine line;
    for (qsizetype i = 0; i < arguments.size(); ++i) {
        const QString& argument = arguments[i];
        if (takeFlag(argument, line)) continue;
        if (takeValue(u"--data-dir"_s, arguments, i, line.dataDir, line.error)) continue;
        if (takeValue(u"--pictures"_s, arguments, i, line.picturesDir, line.error)) continue;
        if (argument.startsWith(u'-'))
            line.error = u"unknown option %1"_s.arg(argument);
        else if (!line.file.isEmpty())
            line.error = u"only one farm file can be open: %1"_s.arg(argument);
        else
            line.file = argument;
    }
    return line;
}

QString helpText() {
    return u"Usage: boomwright [options] [farm file]\n"
           "\n"
           "  --demo                open a throw-away copy of the demo season\n"
           "  --data-dir DIR        keep settings, log and the usual farm file in DIR\n"
           "  --pictures DIR        draw every page of the demo season into DIR (PNG, light and "
           "dark,\n"
           "                        1280x720 and 1920x1080) and end; needs no display\n"
           "  --exit-after-startup  start, show every page once, and end: a check of an "
           "installation\n"
           "  --version             name and version\n"
           "  --help                this text\n"_s;
}

}  // namespace bw
