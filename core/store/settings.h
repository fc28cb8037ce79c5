// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QSettings>
#include <QString>
#include <QStringList>
#include <optional>

namespace bw {

/// Light, dark, or whatever the rest of the desktop shows.
enum class ThemeChoice { System, Light, Dark };

/// What the user set for themselves, on this computer; the farm's own data stand in the farm file.
/// A value that is missing or makes no sense reads as its default.
class Settings {
  public:
    /// In an INI file of this path; empty: the usual place of the user's settings.
    explicit Settings(const QString& path = {});

    QString path() const { return m_settings.fileName(); }

    ThemeChoice theme() const;
    void setTheme(ThemeChoice theme);
    /// '.' or ','; absent: as the desktop's language has it.
    std::optional<char> decimalMark() const;
    void setDecimalMark(std::optional<char> mark);
    /// The start page's last role: "plan", "fix", "teach"; empty: none yet.
    QString role() const;
    void setRole(const QString& role);

    /// Farm files opened, newest first, at most ten, absolute paths.
    QStringList recentFiles() const;
    void addRecentFile(const QString& path);
    void removeRecentFile(const QString& path);
    /// Where backups go; empty: beside each farm file.
    QString backupFolder() const;
    void setBackupFolder(const QString& folder);

    /// Geometry and state of a window or splitter by name ("frame", "speed_window.split").
    QByteArray windowState(const QString& name) const;
    void setWindowState(const QString& name, const QByteArray& state);

    /// Writes at once; false if it could not be written.
    bool save();

  private:
    QSettings m_settings;
};

}  // namespace bw
