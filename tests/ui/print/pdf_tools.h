// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QString>
#include <QStringList>

namespace bw::test {

/// The PDF readers of poppler-utils, as judges from outside.
inline bool hasPdfTools() {
    return !QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty();
}
inline QString outputOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished(30000);
    return QString::fromUtf8(process.readAllStandardOutput());
}
/// All text of a PDF as it stands on the pages, a form feed after each.
inline QString textOf(const QString& path) {
    return outputOf(QStringLiteral("pdftotext"),
                    {QStringLiteral("-layout"), path, QStringLiteral("-")});
}
/// The same in the order in which it was painted: a wrapped text is in one piece.
inline QString paintedTextOf(const QString& path) {
    return outputOf(QStringLiteral("pdftotext"),
                    {QStringLiteral("-raw"), path, QStringLiteral("-")});
}
/// Without any blanks or line ends: what was wrapped is found again.
inline QString packed(QString text) {
    static const QRegularExpression blanks(QStringLiteral("\\s+"));
    return text.normalized(QString::NormalizationForm_KC).remove(blanks);
}
inline QString pdfInfo(const QString& path, const QString& key) {
    for (const QString& line : outputOf(QStringLiteral("pdfinfo"), {path}).split(u'\n')) {
        if (line.startsWith(key + u':')) return line.section(u':', 1).trimmed();
    }
    return {};
}
/// Names of fonts that are not embedded; the first lines are the head of the list.
inline QStringList fontsNotEmbedded(const QString& path, int* count) {
    QStringList out;
    const QStringList lines =
        outputOf(QStringLiteral("pdffonts"), {path}).split(u'\n', Qt::SkipEmptyParts);
    *count = static_cast<int>(lines.size()) - 2;
    for (const QString& line : lines.mid(2)) {
        const QStringList fields = line.split(u' ', Qt::SkipEmptyParts);
        // From the end: object id is two fields, before it uni, sub, emb.
        if (fields.size() < 5 || fields.at(fields.size() - 5) != QStringLiteral("yes"))
            out.append(line);
    }
    return out;
}

}  // namespace bw::test
