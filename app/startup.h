// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line.h"

namespace bw {

/// Answers --help, --version and what was not understood on the console; -1 if there is more to do.
int answerOnConsole(const CommandLine& line);
/// Chooses the platform plug-in before the application object is made: none is needed to draw
/// pictures or to check the start, so these never ask for a display.
void preparePlatform(const CommandLine& line);
/// Builds the program, shows the window and runs, draws or checks. The exit code.
int runProgram(const CommandLine& line);

}  // namespace bw
