// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

#include "ui/shell/frame_services.h"

class QWidget;

namespace bw {

class MainWindow;

/// What the File menu does: asks for a path, opens, makes, copies, restores. When something fails
/// the file in hand stays open and a message says what happened, what is safe and what to do.
class FileDeeds : public QObject {
    Q_OBJECT

  public:
    FileDeeds(FileService& files, Settings& settings, MainWindow& window);
    void makeNew();
    void askOpen();
    bool open(const QString& path);
    void openDemo();
    /// Back from the demo to the file that was open last, or to the usual one.
    void leaveDemo();
    void saveCopy();
    void showBackups();
    /// Paths opened last, newest first, none that is gone.
    QStringList recent() const;
    void remember(const QString& path);

  private:
    bool take(OpenedFarm opened, const QString& path);
    void tell(const QString& title, const Problem& problem);
    QString sentence(const Problem& problem) const;

    FileService& m_files;
    Settings& m_settings;
    MainWindow& m_window;
};

}  // namespace bw
