// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/farm_files.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTime>

#include "core/store/demo_file.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString ending() {
    return QString::fromUtf16(kFarmFileEnding);
}

OpenedFarm sessionOf(Result<std::unique_ptr<FarmFile>> file) {
    if (!file) return file.problem();
    return std::make_unique<FarmSession>(std::move(file).value());
}

/// "farm restored.boomwright", "farm restored 2.boomwright" … the first that is free.
QString freeName(const QFileInfo& beside) {
    const QString stem = QDir(beside.path()).filePath(beside.completeBaseName() + u" restored"_s);
    QString path = stem + ending();
    for (int i = 2; QFileInfo::exists(path); ++i)
        path = stem + u' ' + QString::number(i) + ending();
    return path;
}

}  // namespace

FarmFiles::FarmFiles(QString folder, const Settings& settings)
    : m_folder(std::move(folder)), m_settings(settings) {}

FarmFileOptions FarmFiles::options() const {
    FarmFileOptions options;
    options.backupFolder = m_settings.backupFolder();
    return options;
}

OpenedFarm FarmFiles::open(const QString& path) {
    return sessionOf(FarmFile::open(path, options()));
}

OpenedFarm FarmFiles::create(const QString& path) {
    QDir().mkpath(QFileInfo(path).path());
    return sessionOf(FarmFile::create(path, options()));
}

OpenedFarm FarmFiles::openDemo() {
    auto folder = std::make_unique<QTemporaryDir>();
    if (!folder->isValid()) return sessionOf(demoFarmFileInMemory());
    FarmFileOptions noBackups;
    noBackups.backUpDaily = false;
    auto opened =
        sessionOf(createDemoFarmFile(folder->filePath(u"demo season"_s + ending()), noBackups));
    m_throwAway.push_back(std::move(folder));
    return opened;
}

OpenedFarm FarmFiles::openUnkept() {
    return sessionOf(FarmFile::inMemory());
}

bool FarmFiles::isThrowAway(const QString& path) const {
    if (path.isEmpty()) return true;
    const auto holds = [&path](const auto& folder) {
        // An open file says where it really is, behind links.
        return path.startsWith(QFileInfo(folder->path()).canonicalFilePath() + u'/');
    };
    return std::any_of(m_throwAway.begin(), m_throwAway.end(), holds);
}

QString FarmFiles::usualPath() const {
    return QDir(m_folder).filePath(u"farm"_s + ending());
}

QString FarmFiles::backupFolder(const QString& path) const {
    if (!m_settings.backupFolder().isEmpty()) return m_settings.backupFolder();
    const QFileInfo file(path);
    return QDir(file.path()).filePath(file.completeBaseName() + u" backups"_s);
}

OpenedFarm FarmFiles::restore(const QString& backup, const QString& path) {
    const QString copy = freeName(QFileInfo(path));
    if (!QFile::copy(backup, copy))
        return error("file_not_opened", {},
                     {{"file", copy.toStdString()}, {"detail", std::string("copy")}});
    QFile::setPermissions(copy, QFile::permissions(copy) | QFile::WriteOwner | QFile::ReadOwner);
    return open(copy);
}

QString FarmFiles::timeOfDay() const {
    return QTime::currentTime().toString(u"HH:mm"_s);
}

}  // namespace bw
