// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/file_identity.h"

#include <QFile>
#include <QFileInfo>
#include <QStorageInfo>
#include <algorithm>
#include <array>

#include "core/store/store_problem.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

// Layout of the header: sqlite.org/fileformat2.html, section 1.3.
constexpr qint64 kHeaderBytes = 100;
constexpr int kFormatAt = 60;
constexpr int kApplicationIdAt = 68;
const QByteArray kMagic("SQLite format 3\0", 16);

Problem fileProblem(Problem problem, const QString& path) {
    problem.arguments.push_back(pathArgument("file", path));
    return problem;
}

/// A number of four bytes, highest first.
std::uint32_t numberAt(const QByteArray& header, int place) {
    std::uint32_t out = 0;
    for (int i = 0; i < 4; ++i) out = out << 8 | static_cast<unsigned char>(header[place + i]);
    return out;
}

/// What can be said before a byte is read.
Outcome checkThere(const QString& path) {
    const QFileInfo info(path);
    if (!QFileInfo(info.absolutePath()).isDir()) {
        return fileProblem(error("file_folder_missing"), path);
    }
    if (!info.exists()) return fileProblem(error("file_missing"), path);
    if (info.isDir()) return fileProblem(error("file_is_folder"), path);
    if (!info.isReadable()) return fileProblem(error("file_no_rights"), path);
    if (info.size() == 0) return fileProblem(error("file_empty"), path);
    return Done{};
}

}  // namespace

Result<FileIdentity> identify(const QString& path, int known) {
    if (auto there = checkThere(path); !there) return there.problem();
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return fileProblem(error("file_no_rights"), path);
    const QByteArray header = file.read(kHeaderBytes);
    if (header.size() < kHeaderBytes || !header.startsWith(kMagic)) {
        return fileProblem(error("file_not_database"), path);
    }
    const auto applicationId = numberAt(header, kApplicationIdAt);
    if (applicationId != kFarmApplicationId) return fileProblem(error("file_foreign"), path);
    FileIdentity out;
    out.format = static_cast<int>(numberAt(header, kFormatAt));
    const QFileInfo log(path + u"-wal"_s);
    out.hasLog = log.size() > 0;
    out.isAtRest = !log.exists() && !QFileInfo::exists(path + u"-journal"_s);
    if (out.format < 0) {
        const std::string detail = "its format is " + std::to_string(out.format);
        return fileProblem(error("file_damaged", {}, {{"detail", detail}}), path);
    }
    if (auto fits = checkFormat(path, out.format, known); !fits) return fits.problem();
    return out;
}

Outcome checkFormat(const QString& path, int format, int known) {
    if (format <= known) return Done{};
    return error("file_newer", {},
                 {pathArgument("file", path),
                  {"format", std::to_string(format)},
                  {"known", std::to_string(known)}});
}

Outcome checkCanCreate(const QString& path) {
    const QFileInfo info(path);
    const QFileInfo folder(info.absolutePath());
    if (!folder.isDir()) return fileProblem(error("file_folder_missing"), path);
    if (info.isDir()) return fileProblem(error("file_is_folder"), path);
    if (info.exists() || info.isSymLink()) return fileProblem(error("file_exists"), path);
    if (!folder.isWritable()) return fileProblem(error("file_no_rights"), path);
    return Done{};
}

bool isWritable(const QString& path) {
    const QFileInfo info(path);
    return info.isWritable() && QFileInfo(info.absolutePath()).isWritable();
}

bool isOnLocalDisk(const QString& path) {
    if (path.startsWith(u"//"_s) || path.startsWith(uR"(\\)"_s)) return false;
    const QByteArray type = QStorageInfo(QFileInfo(path).absolutePath()).fileSystemType().toLower();
    static const std::array<QByteArray, 9> kNetwork{"nfs",    "cifs", "smb",  "afs",  "ncp",
                                                    "webdav", "9p",   "fuse", "davfs"};
    if (type == "fuseblk") return true;  // disks of other systems, but in this computer
    return std::none_of(kNetwork.begin(), kNetwork.end(),
                        [&](const QByteArray& n) { return type.startsWith(n); });
}

}  // namespace bw
