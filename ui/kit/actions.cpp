// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/actions.h"

#include <QWidget>

#include "ui/kit/icons.h"

namespace bw {
namespace {

QAction* makeAction(QObject* owner, const ActionInfo& info, std::function<void()> act) {
    auto* action = new QAction(icon(info.icon), info.text, owner);
    action->setObjectName(info.id);
    action->setShortcut(info.key);
    if (!info.tip.isEmpty()) action->setStatusTip(info.tip);
    QObject::connect(action, &QAction::triggered, owner, [act = std::move(act)] { act(); });
    return action;
}

}  // namespace

QAction* addPageAction(QWidget* page, const ActionInfo& info, std::function<void()> act) {
    QAction* action = makeAction(page, info, std::move(act));
    action->setShortcutContext(Qt::WindowShortcut);
    page->addAction(action);
    return action;
}

Actions::Actions(QWidget* window) : QObject(window), m_window(window) {}

QAction* Actions::add(const ActionInfo& info, std::function<void()> act) {
    QAction* action = makeAction(this, info, std::move(act));
    m_window->addAction(action);
    m_all.push_back(action);
    return action;
}

QAction* Actions::find(const QString& id) const {
    for (QAction* action : m_all) {
        if (action->objectName() == id) return action;
    }
    return nullptr;
}

QStringList keyConflicts(const QList<QAction*>& actions) {
    QStringList conflicts;
    for (qsizetype i = 0; i < actions.size(); ++i) {
        for (qsizetype j = i + 1; j < actions.size(); ++j) {
            for (const QKeySequence& key : actions[i]->shortcuts()) {
                if (actions[j]->shortcuts().contains(key))
                    conflicts.append(actions[i]->objectName() + QStringLiteral(" + ") +
                                     actions[j]->objectName() + QStringLiteral(": ") +
                                     key.toString());
            }
        }
    }
    return conflicts;
}

}  // namespace bw
