// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "app/command_line.h"
#include "app/farm_files.h"
#include "core/store/settings.h"
#include "ui/shell/main_window.h"

namespace bw {

/// Where settings, log and the usual farm file live; made if it is not there.
QString dataFolder(const CommandLine& line);

/// Everything the running program consists of, built in order and taken down before the application
/// object. The only place that knows it all.
class AppContext {
  public:
    explicit AppContext(const CommandLine& line);
    MainWindow& window() { return *m_window; }

  private:
    std::unique_ptr<FarmSession> firstSession(const CommandLine& line);
    /// The session, or nothing; a failure is kept to be told once the window stands.
    std::unique_ptr<FarmSession> taken(OpenedFarm opened);

    QString m_folder;
    Settings m_settings;
    FarmFiles m_files;
    std::vector<Problem> m_troubles;
    std::unique_ptr<MainWindow> m_window;
};

}  // namespace bw
