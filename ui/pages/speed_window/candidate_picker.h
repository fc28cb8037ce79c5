// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <vector>

class QLineEdit;
class QListWidget;
class QListWidgetItem;

namespace bw {

/// A list that drops down to take candidates in and out: own nozzles first, then the sizes of the
/// standard. Typing narrows it, Enter or Space takes the nozzle in or out, Esc closes.
class CandidatePicker : public QFrame {
    Q_OBJECT

  public:
    struct Entry {
        QString name;
        QString code;
        bool isSizeOnly = false;
        bool isTaken = false;
    };
    explicit CandidatePicker(QWidget* parent = nullptr);
    void setEntries(const std::vector<Entry>& entries);
    /// Drops down below a widget.
    void openBelow(QWidget& anchor);

  Q_SIGNALS:
    void taken(const QString& nozzle);
    void putBack(const QString& nozzle);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void narrow(const QString& text);
    void toggle(QListWidgetItem* item);
    void moveBy(int rows);

    QLineEdit* m_find;
    QListWidget* m_list;
};

}  // namespace bw
