// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

namespace bw {

/// What the program was asked to do.
struct CommandLine {
    QString file;     ///< farm file to open; empty: the last one
    QString dataDir;  ///< where settings, log and the usual farm file live; empty: the usual place
    QString picturesDir;  ///< draw every page into this folder and end; empty: no
    bool isDemo = false;  ///< open a throw-away copy of the demo season
    bool exitAfterStartup = false;
    bool wantsHelp = false;
    bool wantsVersion = false;
    QString error;  ///< what could not be understood; empty: nothing

    /// Nobody sits in front: pictures and the start-up check need no display.
    bool isUnattended() const { return !picturesDir.isEmpty() || exitAfterStartup; }
};

/// Reads the arguments after the program's name.
CommandLine readCommandLine(const QStringList& arguments);
QString helpText();

}  // namespace bw
