// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QStringList>

class QListWidget;

namespace bw {

/// The daily copies of the open file; one can be taken back as a file of its own.
class BackupsDialog : public QDialog {
    Q_OBJECT

  public:
    explicit BackupsDialog(const QStringList& backups, QWidget* parent = nullptr);
    /// Path of the backup taken; empty if none.
    QString chosen() const;

  Q_SIGNALS:
    void folderWanted();

  private:
    QListWidget* m_list;
};

}  // namespace bw
