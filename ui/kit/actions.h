// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QKeySequence>
#include <QObject>
#include <QString>
#include <functional>
#include <vector>

namespace bw {

/// One command: id "area.verb", the words, icon, key, and what it does.
struct ActionInfo {
    QString id;
    QString text;
    QString icon;
    QKeySequence key;
    QString tip;
};

/// A command of a page. It works while the page (or a child) has the focus or is in front; the
/// frame lists it in the page's menu and in the list of keys. The action's object name is its id.
QAction* addPageAction(QWidget* page, const ActionInfo& info, std::function<void()> act);

/// Every command of the frame once; menus and the list of keys are made from it.
class Actions : public QObject {
    Q_OBJECT

  public:
    explicit Actions(QWidget* window);
    QAction* add(const ActionInfo& info, std::function<void()> act);
    QAction* find(const QString& id) const;
    const std::vector<QAction*>& all() const { return m_all; }

  private:
    QWidget* m_window;
    std::vector<QAction*> m_all;
};

/// Pairs of ids that share a key among these actions; empty: no conflict.
QStringList keyConflicts(const QList<QAction*>& actions);

}  // namespace bw
