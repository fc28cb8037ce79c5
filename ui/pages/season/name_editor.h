// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "ui/pages/season/hanging_field.h"

class QListWidget;

namespace bw {

/// A name out of many: typed in part, then picked from the list below by the arrows or the mouse.
class NameEditor : public HangingField {
    Q_OBJECT

  public:
    NameEditor(const QStringList& names, QWidget* parent);

  Q_SIGNALS:
    /// A name was picked with the mouse.
    void picked();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void narrow(const QString& text);
    void step(int by);
    QStringList m_names;
    QListWidget* m_list;
};

}  // namespace bw
