// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QList>

class QDialog;
class QWidget;

namespace bw {

/// Every command with its key, as a table. Made from the actions in force.
QDialog* makeKeysDialog(const QList<QAction*>& actions, QWidget* parent);
/// What this is, its licence, what it does not do, and the first-aid caution.
QDialog* makeAboutDialog(QWidget* parent);

}  // namespace bw
