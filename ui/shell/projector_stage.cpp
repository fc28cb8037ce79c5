// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/projector_stage.h"

#include <QActionEvent>
#include <QApplication>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/page.h"
#include "ui/kit/wall_parts.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// What scrolls: as wide and tall as the page wants at its least, and as it has at the desk.
class LargePage : public RolePanel {
  public:
    LargePage() : RolePanel(Role::Surface) {}
    QSize minimumSizeHint() const override {
        return RolePanel::minimumSizeHint().expandedTo(QSize(px(700), px(540)));
    }
};

}  // namespace

ProjectorStage::ProjectorStage(const QList<QAction*>& frameKeys, QWidget* parent)
    : RolePanel(Role::Surface, parent), m_frameKeys(frameKeys), m_keys(new KeyRow) {
    setObjectName(u"projector.stage"_s);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(14), px(8), px(14), px(8));
    column->setSpacing(px(5));
    m_place = new QVBoxLayout;
    column->addLayout(m_place, 1);
    auto* rule = new HairLine(Qt::Horizontal, Role::Ink);
    rule->setThickness(px(1));
    column->addWidget(rule);
    m_keys->setObjectName(u"projector.keys"_s);
    column->addWidget(m_keys);
    for (QAction* action : m_frameKeys)
        connect(action, &QAction::changed, this, &ProjectorStage::tellKeys);
    connect(qApp, &QApplication::focusChanged, this,
            [this](QWidget*, QWidget* now) { keepInSight(now); });
}

void ProjectorStage::clear() {
    if (!m_view) return;
    // A key of the view itself may be on its way through it.
    m_view->removeEventFilter(this);
    m_view->hide();
    m_place->removeWidget(m_view);
    m_view->deleteLater();
    m_view = nullptr;
    m_page = nullptr;
}

void ProjectorStage::setView(QWidget* view) {
    clear();
    m_view = view;
    m_place->addWidget(view, 1);
    view->installEventFilter(this);
    view->show();
    view->setFocus(Qt::OtherFocusReason);
    tellKeys();
}

void ProjectorStage::setPage(Page* page) {
    auto* content = new LargePage;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(new TextLabel(page->title(), TextSize::Verdict, Role::Ink, true));
    if (QWidget* tools = page->headerTools()) column->addWidget(tools);
    column->addWidget(page, 1);
    auto* scroll = new QScrollArea;
    scroll->setObjectName(u"projector.scroll"_s);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setWidget(content);
    setView(scroll);
    page->setFocus(Qt::OtherFocusReason);
    m_page = page;
    page->installEventFilter(this);
    tellKeys();
}

/// Fields that the focus walks to scroll into the picture.
void ProjectorStage::keepInSight(QWidget* now) {
    auto* scroll = qobject_cast<QScrollArea*>(m_view);
    if (m_page && scroll && now && m_page->isAncestorOf(now)) scroll->ensureWidgetVisible(now);
}

QList<QAction*> ProjectorStage::viewActions() const {
    if (m_page) return m_page->actions();
    return m_view ? m_view->actions() : QList<QAction*>();
}

/// An ordinary page has its keys on its buttons, and more of them than the foot has room for.
void ProjectorStage::tellKeys() {
    m_keys->setActions((m_page ? QList<QAction*>() : viewActions()) + m_frameKeys);
}

bool ProjectorStage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ActionAdded || event->type() == QEvent::ActionChanged ||
        event->type() == QEvent::ActionRemoved)
        tellKeys();
    return RolePanel::eventFilter(watched, event);
}

}  // namespace bw
