// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/app_context.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "app/page_list.h"
#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

QString dataFolder(const CommandLine& line) {
    const QString usual = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
    const QString folder = QDir(line.dataDir.isEmpty() ? usual : line.dataDir).absolutePath();
    QDir().mkpath(folder);
    return folder;
}

namespace {

QString settingsPath(const CommandLine& line, const QString& folder) {
    return line.dataDir.isEmpty() ? QString() : QDir(folder).filePath(u"settings.ini"_s);
}

}  // namespace

AppContext::AppContext(const CommandLine& line)
    : m_folder(dataFolder(line)),
      m_settings(settingsPath(line, m_folder)),
      m_files(m_folder, m_settings) {
    theme().setChoice(m_settings.theme());
    auto session = firstSession(line);
    m_window = std::make_unique<MainWindow>(FrameServices{m_files, m_settings, makePageList()},
                                            std::move(session));
    for (const Problem& trouble : m_troubles) m_window->notify(sentenceOf(trouble), true);
}

std::unique_ptr<FarmSession> AppContext::taken(OpenedFarm opened) {
    if (opened) return std::move(opened).value();
    m_troubles.push_back(opened.problem());
    return nullptr;
}

/// The file asked for, else the last one, else the usual one; if none can be had, one in memory, so
/// that the program always stands and says what is wrong.
std::unique_ptr<FarmSession> AppContext::firstSession(const CommandLine& line) {
    std::unique_ptr<FarmSession> session;
    if (line.isDemo) session = taken(m_files.openDemo());
    if (!session && !line.file.isEmpty())
        session = taken(m_files.open(QFileInfo(line.file).absoluteFilePath()));
    const QStringList recent = m_settings.recentFiles();
    if (!session && !recent.isEmpty() && QFileInfo::exists(recent.first()))
        session = taken(m_files.open(recent.first()));
    const QString usual = m_files.usualPath();
    if (!session)
        session = taken(QFileInfo::exists(usual) ? m_files.open(usual) : m_files.create(usual));
    if (session) return session;
    m_troubles.push_back(warning("file_unkept"));
    auto unkept = m_files.openUnkept();
    if (!unkept) qFatal("SQLite is not there: %s", unkept.problem().code.c_str());
    return std::move(unkept).value();
}

}  // namespace bw
