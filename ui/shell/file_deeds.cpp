// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/file_deeds.h"

#include <QDesktopServices>
#include <QDir>
#include <QFileInfo>
#include <QUrl>

#include "core/store/farm_file.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_format.h"
#include "ui/shell/backups_dialog.h"
#include "ui/shell/main_window.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString ending() {
    return QString::fromUtf16(kFarmFileEnding);
}
QString filter() {
    return QObject::tr("Farm files (*%1);;All files (*)").arg(ending());
}
QString withEnding(const QString& path) {
    return path.isEmpty() || path.endsWith(ending()) ? path : path + ending();
}

}  // namespace

FileDeeds::FileDeeds(FileService& files, Settings& settings, MainWindow& window)
    : QObject(&window), m_files(files), m_settings(settings), m_window(window) {}

void FileDeeds::makeNew() {
    const QString start = QDir(m_files.folder()).filePath(tr("farm") + ending());
    const QString path =
        withEnding(prompts().saveFile(&m_window, tr("New farm file"), start, filter()));
    if (!path.isEmpty()) take(m_files.create(path), path);
}

void FileDeeds::askOpen() {
    const QString path =
        prompts().openFile(&m_window, tr("Open farm file"), m_files.folder(), filter());
    if (!path.isEmpty()) open(path);
}

bool FileDeeds::open(const QString& path) {
    // The file in hand holds its own lock; opening it once more would be refused.
    if (QFileInfo(path) == QFileInfo(m_window.session().path())) return true;
    return take(m_files.open(path), path);
}

void FileDeeds::openDemo() {
    take(m_files.openDemo(), tr("demo season"));
}

void FileDeeds::leaveDemo() {
    if (!m_files.isThrowAway(m_window.session().path())) return;
    for (const QString& path : recent()) {
        if (take(m_files.open(path), path)) return;
    }
    const QString usual = m_files.usualPath();
    take(QFileInfo::exists(usual) ? m_files.open(usual) : m_files.create(usual), usual);
}

void FileDeeds::saveCopy() {
    const QFileInfo now(m_window.session().path());
    const QString folder = m_files.isThrowAway(now.filePath()) ? m_files.folder() : now.path();
    const QString start =
        QDir(folder).filePath(tr("%1 copy").arg(now.completeBaseName()) + ending());
    const QString path =
        withEnding(prompts().saveFile(&m_window, tr("Save a copy as"), start, filter()));
    if (path.isEmpty()) return;
    const auto copied = m_window.session().file().saveCopy(path);
    if (!copied) return tell(tr("No copy was saved"), copied.problem());
    const Question question{tr("Copy saved"),
                            tr("A copy is at %1.").arg(QDir::toNativeSeparators(path)),
                            tr("Go on working in the copy, or stay in the file that is open?"),
                            {tr("Open the copy"), tr("Stay here")},
                            false};
    if (prompts().ask(&m_window, question) == 0) open(path);
}

void FileDeeds::showBackups() {
    const QString path = m_window.session().path();
    BackupsDialog dialog(m_window.session().file().backups(), &m_window);
    connect(&dialog, &BackupsDialog::folderWanted, this, [this, path] {
        QDesktopServices::openUrl(QUrl::fromLocalFile(m_files.backupFolder(path)));
    });
    if (dialog.exec() == QDialog::Accepted && !dialog.chosen().isEmpty())
        take(m_files.restore(dialog.chosen(), path), dialog.chosen());
}

bool FileDeeds::take(OpenedFarm opened, const QString& path) {
    if (!opened) {
        const Question question{tr("“%1” was not opened").arg(QFileInfo(path).fileName()),
                                sentence(opened.problem()),
                                tr("It was left as it is. “%1” stays open, with everything saved.")
                                    .arg(QFileInfo(m_window.session().path()).fileName()),
                                {tr("Open another file"), tr("Go on here")},
                                true};
        if (prompts().ask(&m_window, question) == 0) askOpen();
        return false;
    }
    m_window.setSession(std::move(opened).value());
    return true;
}

QString FileDeeds::sentence(const Problem& problem) const {
    return qs(m_window.session().sentences().of(problem, {}));
}

void FileDeeds::tell(const QString& title, const Problem& problem) {
    prompts().ask(&m_window, {title,
                              sentence(problem),
                              tr("The file in hand stays open, with everything saved."),
                              {tr("Go on")},
                              true});
}

QStringList FileDeeds::recent() const {
    QStringList known = m_settings.recentFiles();
    known.removeIf([](const QString& path) { return !QFileInfo::exists(path); });
    return known;
}

void FileDeeds::remember(const QString& path) {
    if (!path.isEmpty() && !m_files.isThrowAway(path)) m_settings.addRecentFile(path);
}

}  // namespace bw
