// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/backups_dialog.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QListWidget>
#include <QLocale>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

BackupsDialog::BackupsDialog(const QStringList& backups, QWidget* parent)
    : QDialog(parent), m_list(new QListWidget) {
    setWindowTitle(tr("Backups"));
    setMinimumSize(px(460), px(320));
    auto* column = new QVBoxLayout(this);
    const QString words =
        backups.isEmpty()
            ? tr("No backup of this file yet. One is made each day, before the first change.")
            : tr("A verified copy of each day. Taking one back makes a new file beside this one; "
                 "this one stays as it is.");
    column->addWidget((new TextLabel(words))->wrapped());
    column->addWidget(m_list, 1);
    m_list->setObjectName(u"backups.list"_s);
    for (const QString& path : backups) {
        const QFileInfo file(path);
        auto* item =
            new QListWidgetItem(file.fileName() + u"    "_s +
                                    QLocale().toString(file.lastModified(), QLocale::ShortFormat),
                                m_list);
        item->setData(Qt::UserRole, path);
    }
    m_list->setCurrentRow(0);
    auto* row = new QHBoxLayout;
    auto* folder = new Button(tr("Show the folder"), u"open"_s);
    auto* take = new Button(tr("Take this one back"), {}, Button::Kind::Primary);
    auto* close = new Button(tr("Close"));
    row->addWidget(folder);
    row->addStretch();
    row->addWidget(close);
    row->addWidget(take);
    column->addLayout(row);
    take->setObjectName(u"backups.take"_s);
    take->setEnabled(!backups.isEmpty());
    connect(folder, &QAbstractButton::clicked, this, &BackupsDialog::folderWanted);
    connect(take, &QAbstractButton::clicked, this, &QDialog::accept);
    connect(close, &QAbstractButton::clicked, this, &QDialog::reject);
}

QString BackupsDialog::chosen() const {
    return m_list->currentItem() ? m_list->currentItem()->data(Qt::UserRole).toString() : QString();
}

}  // namespace bw
