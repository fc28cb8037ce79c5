// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/settings.h"

#include <QFileInfo>
#include <array>
#include <utility>

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr qsizetype kRecentFiles = 10;

const std::array<std::pair<ThemeChoice, QString>, 3> kThemes{{
    {ThemeChoice::System, u"system"_s},
    {ThemeChoice::Light, u"light"_s},
    {ThemeChoice::Dark, u"dark"_s},
}};

QString usualPlace() {
    const QSettings probe(QSettings::IniFormat, QSettings::UserScope, u"boomwright"_s,
                          u"boomwright"_s);
    return probe.fileName();
}

}  // namespace

Settings::Settings(const QString& path)
    : m_settings(path.isEmpty() ? usualPlace() : path, QSettings::IniFormat) {}

ThemeChoice Settings::theme() const {
    const QString word = m_settings.value(u"theme"_s).toString();
    for (const auto& [theme, name] : kThemes) {
        if (name == word) return theme;
    }
    return ThemeChoice::System;
}

void Settings::setTheme(ThemeChoice theme) {
    for (const auto& [t, name] : kThemes) {
        if (t == theme) m_settings.setValue(u"theme"_s, name);
    }
}

std::optional<char> Settings::decimalMark() const {
    const QString word = m_settings.value(u"decimal_mark"_s).toString();
    if (word == u"point"_s) return '.';
    if (word == u"comma"_s) return ',';
    return std::nullopt;
}

void Settings::setDecimalMark(std::optional<char> mark) {
    if (mark) {
        m_settings.setValue(u"decimal_mark"_s, *mark == ',' ? u"comma"_s : u"point"_s);
    } else {
        m_settings.remove(u"decimal_mark"_s);
    }
}

QString Settings::role() const {
    const QString role = m_settings.value(u"role"_s).toString();
    return QStringList{u"plan"_s, u"fix"_s, u"teach"_s}.contains(role) ? role : QString();
}

void Settings::setRole(const QString& role) {
    m_settings.setValue(u"role"_s, role);
}

QStringList Settings::recentFiles() const {
    return m_settings.value(u"recent_files"_s).toStringList();
}

void Settings::addRecentFile(const QString& path) {
    QStringList files = recentFiles();
    const QString absolute = QFileInfo(path).absoluteFilePath();
    files.removeAll(absolute);
    files.prepend(absolute);
    m_settings.setValue(u"recent_files"_s,
                        QStringList(files.first(std::min(files.size(), kRecentFiles))));
}

void Settings::removeRecentFile(const QString& path) {
    QStringList files = recentFiles();
    files.removeAll(QFileInfo(path).absoluteFilePath());
    m_settings.setValue(u"recent_files"_s, files);
}

QString Settings::backupFolder() const {
    return m_settings.value(u"backup_folder"_s).toString();
}

void Settings::setBackupFolder(const QString& folder) {
    m_settings.setValue(u"backup_folder"_s, folder);
}

QByteArray Settings::windowState(const QString& name) const {
    return m_settings.value(u"window/"_s + name).toByteArray();
}

void Settings::setWindowState(const QString& name, const QByteArray& state) {
    m_settings.setValue(u"window/"_s + name, state);
}

bool Settings::save() {
    m_settings.sync();
    return m_settings.status() == QSettings::NoError;
}

}  // namespace bw
