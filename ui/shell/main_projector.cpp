// SPDX-License-Identifier: GPL-3.0-or-later
// Projector view and the trainer's own window; the rest of the frame is in main_window.cpp.
#include <QGuiApplication>
#include <QMenu>
#include <QMenuBar>
#include <QScreen>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "core/store/farm_file.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/wall_parts.h"
#include "ui/shell/main_window.h"
#include "ui/shell/projector_stage.h"
#include "ui/shell/status_line.h"
#include "ui/shell/trainer_window.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Below this a screen is no projector's picture; the view then keeps to the window.
constexpr QSize kLeastScreen(1024, 700);

QString nameOf(UnitSystem units) {
    switch (units) {
        case UnitSystem::Metric:
            return MainWindow::tr("metric");
        case UnitSystem::Us:
            return MainWindow::tr("US");
        case UnitSystem::Uk:
            return MainWindow::tr("UK");
    }
    return {};
}

QString notesName(const QString& page, const QString& key) {
    return u"trainer.notes."_s + page + (key.isEmpty() ? QString() : u'.' + key);
}

}  // namespace

void MainWindow::buildWindowMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Window"));
    QAction* wall = command("projector.toggle", tr("&Projector view"), u"projector"_s,
                            QKeySequence(u"F11"_s), [this] { setProjector(!isProjector()); });
    wall->setIconText(tr("leave"));
    wall->setProperty(KeyRow::kKeyCap, tr("Esc"));
    menu->addAction(wall);
    menu->addAction(command("trainer.window", tr("&Notes and truth…"), {}, QKeySequence(u"F12"_s),
                            [this] { showTrainer(); }));
    menu->addSeparator();
    menu->addAction(command("projector.units", tr("&Units on the wall: metric, US, UK"), {},
                            QKeySequence(Qt::Key_U), [this] { nextUnits(); }));
    menu->addAction(command("projector.leave", tr("&Leave the projector view"), {},
                            QKeySequence(Qt::Key_Escape), [this] { setProjector(false); }));
    allowCommands();
}

/// File names and paths have no place on a wall, and a few keys have a meaning there alone.
void MainWindow::allowCommands() {
    for (QAction* action : m_actions->all()) {
        const QString id = action->objectName();
        if (id.startsWith(u"file."_s) && id != u"file.quit"_s) action->setEnabled(!isProjector());
        if (id.startsWith(u"projector."_s) && id != u"projector.toggle"_s)
            action->setEnabled(isProjector());
    }
}

void MainWindow::setFrameVisible(bool visible) {
    menuBar()->setVisible(visible);
    m_frame->setVisible(visible);
    m_status->setVisible(visible);
}

void MainWindow::setProjector(bool on) {
    if (on == isProjector()) return;
    if (auto* field = qobject_cast<FigureLine*>(focusWidget())) field->clearFocus();
    if (on) {
        m_stateAtDesk = windowState();
        m_stage = new ProjectorStage({m_actions->find(u"projector.units"_s),
                                      m_actions->find(u"help.keys"_s),
                                      m_actions->find(u"projector.toggle"_s)});
        setFrameVisible(false);
        static_cast<QVBoxLayout*>(centralWidget()->layout())->addWidget(m_stage, 1);
        const QSize whole = screen()->geometry().size();
        if (whole.width() >= kLeastScreen.width() && whole.height() >= kLeastScreen.height())
            setWindowState(windowState() | Qt::WindowFullScreen);
        theme().setProjector(wallBody(size()));
        fillWall();
    } else {
        clearWall();
        m_stage->hide();
        m_stage->deleteLater();
        m_stage = nullptr;
        m_session->setShownUnits({});
        theme().setProjector({});
        setFrameVisible(true);
        setWindowState(m_stateAtDesk);
        if (Page* page = currentPage()) page->setFocus(Qt::OtherFocusReason);
    }
    allowCommands();
    refreshFrame();
    placeTrainer();
}

/// A page that is made while the projector is on is made for the desk all the same.
Page* MainWindow::deskPageFor(const PageEntry& entry) {
    if (!isProjector()) return entry.make(*m_session);
    clearWall();
    theme().setProjector({});
    Page* page = entry.make(*m_session);
    theme().setProjector(wallBody(size()));
    return page;
}

void MainWindow::clearWall() {
    for (const auto& [id, page] : m_pages) page->leaveWall();
    if (m_stage) m_stage->clear();
}

/// The page's own arrangement; else another of its kind, made in large type.
void MainWindow::fillWall() {
    clearWall();
    Page* page = currentPage();
    if (!page) return;
    if (QWidget* view = page->goOnWall()) return m_stage->setView(view);
    Page* large = entry(m_currentPage)->make(*m_session);
    connect(large, &Page::goTo, this, &MainWindow::follow);
    connect(large, &Page::notice, this, &MainWindow::notify);
    m_stage->setPage(large);
}

void MainWindow::fitWall() {
    const int body = wallBody(size());
    if (QFontInfo(QGuiApplication::font()).pixelSize() == body) return;
    clearWall();
    theme().setProjector(body);
    fillWall();
}

void MainWindow::nextUnits() {
    constexpr std::array kOrder{UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk};
    const auto* now = std::find(kOrder.begin(), kOrder.end(), m_session->currentStyle().units);
    m_session->setShownUnits(now + 1 == kOrder.end() ? kOrder.front() : *(now + 1));
}

/// What is shown stands on the wall, in words and units.
void MainWindow::tellUnits() {
    const NumberStyle style = m_session->currentStyle();
    const QStringList units{unitOf<Speed>(style), unitOf<Pressure>(style), unitOf<AreaRate>(style)};
    m_actions->find(u"projector.units"_s)
        ->setIconText(tr("units: %1 (%2)").arg(nameOf(style.units), units.join(u", "_s)));
}

void MainWindow::showTrainer() {
    if (!m_trainer) {
        m_trainer = new TrainerWindow(this);
        for (const char* id : {"projector.toggle", "projector.leave", "trainer.window"})
            m_trainer->addAction(m_actions->find(QString::fromLatin1(id)));
        connect(m_trainer, &TrainerWindow::notesChanged, this,
                [this](const QString& key, const QString& text) {
                    static_cast<void>(m_session->file().setSetting(key, text));
                });
    }
    if (m_trainer->isVisible() || m_trainerWaits) {
        m_trainerWaits = false;
        return m_trainer->hide();
    }
    m_trainerWaits = true;
    tellTrainer();
    placeTrainer();
}

/// On another screen than the scene. Where there is no other, it waits while the wall has the
/// only one: what is on that is on the wall.
void MainWindow::placeTrainer() {
    if (!m_trainer || (!m_trainerWaits && !m_trainer->isVisible())) return;
    QScreen* own = screenForNotes(QGuiApplication::screens(), screen());
    m_trainerWaits = isProjector() && !own;
    if (m_trainerWaits) return m_trainer->hide();
    if (m_trainer->isVisible() && !isProjector()) return;
    if (own && m_trainer->screen() != own)
        m_trainer->move(own->availableGeometry().topLeft() + QPoint(40, 40));
    m_trainer->show();
}

void MainWindow::tellTrainer() {
    const Page* page = currentPage();
    if (!m_trainer || !page) return;
    const QString key = notesName(m_currentPage, page->notesKey());
    m_trainer->setNotes(key, page->title(), m_session->file().setting(key));
    m_trainer->setTruth(page->trainerTruth());
}

}  // namespace bw
