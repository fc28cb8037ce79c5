// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QString>
#include <QStringList>
#include <functional>
#include <memory>
#include <vector>

#include "core/base/result.h"
#include "core/store/settings.h"
#include "ui/kit/page.h"
#include "ui/undo/farm_session.h"

namespace bw {

/// One page of the rail: its id (as in Page::goTo), words, icon, group heading, key and maker. A
/// page that is not in the list is absent from rail and menus.
struct PageEntry {
    QString id;
    QString title;
    QString icon;
    QString group;  ///< "Plan", "Teach", "Fix", "Keep"; empty: above all groups
    QKeySequence key;
    std::function<Page*(FarmSession&)> make;
};

using OpenedFarm = Result<std::unique_ptr<FarmSession>>;

/// Farm files as the frame needs them; the program fills it in.
class FileService {
  public:
    virtual ~FileService() = default;
    virtual OpenedFarm open(const QString& path) = 0;
    /// A new, empty file; an existing one is never overwritten.
    virtual OpenedFarm create(const QString& path) = 0;
    /// A throw-away copy of the demo season.
    virtual OpenedFarm openDemo() = 0;
    virtual bool isThrowAway(const QString& path) const = 0;
    /// Where farm files are kept unless the user says otherwise.
    virtual QString folder() const = 0;
    /// The file that is made at the first start.
    virtual QString usualPath() const = 0;
    virtual QString backupFolder(const QString& path) const = 0;
    /// Copies a backup beside the file under a free name and opens that. The file itself stays.
    virtual OpenedFarm restore(const QString& backup, const QString& path) = 0;
    /// Time of day for the status line, "14:32".
    virtual QString timeOfDay() const = 0;
};

/// Everything the frame is given.
struct FrameServices {
    FileService& files;
    Settings& settings;
    std::vector<PageEntry> pages;
};

}  // namespace bw
