// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTemporaryDir>
#include <memory>
#include <vector>

#include "core/store/farm_file.h"
#include "core/store/settings.h"
#include "ui/shell/frame_services.h"

namespace bw {

/// Farm files of this computer for the frame: opening makes a session of them.
class FarmFiles : public FileService {
  public:
    /// `folder`: where the usual farm file lives; made when it is needed.
    FarmFiles(QString folder, const Settings& settings);

    OpenedFarm open(const QString& path) override;
    OpenedFarm create(const QString& path) override;
    OpenedFarm openDemo() override;
    /// A farm that lives in memory alone: the last resort when no file can be written.
    OpenedFarm openUnkept();
    bool isThrowAway(const QString& path) const override;
    QString folder() const override { return m_folder; }
    QString usualPath() const override;
    QString backupFolder(const QString& path) const override;
    OpenedFarm restore(const QString& backup, const QString& path) override;
    QString timeOfDay() const override;

  private:
    FarmFileOptions options() const;
    QString m_folder;
    const Settings& m_settings;
    std::vector<std::unique_ptr<QTemporaryDir>> m_throwAway;
};

}  // namespace bw
