// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QList>
#include <QPointer>

#include "ui/kit/metrics.h"

class QVBoxLayout;

namespace bw {

class KeyRow;
class Page;

/// What stands on the wall instead of the frame: a page's own arrangement, or an ordinary page in
/// large type that scrolls; at the foot the keys.
class ProjectorStage : public RolePanel {
    Q_OBJECT

  public:
    explicit ProjectorStage(const QList<QAction*>& frameKeys, QWidget* parent = nullptr);
    /// Takes a page's arrangement; the earlier one goes.
    void setView(QWidget* view);
    /// Takes a page of its own in large type with its header tools (may be null).
    void setPage(Page* page);
    /// The page given to setPage; null: an arrangement stands.
    Page* page() const { return m_page; }
    void clear();
    /// Actions of what stands there.
    QList<QAction*> viewActions() const;
    void tellKeys();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void keepInSight(QWidget* now);
    QList<QAction*> m_frameKeys;
    QVBoxLayout* m_place;
    QPointer<QWidget> m_view;
    QPointer<Page> m_page;
    KeyRow* m_keys;
};

}  // namespace bw
