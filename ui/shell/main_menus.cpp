// SPDX-License-Identifier: GPL-3.0-or-later
// The menus of the frame; the rest of it is in main_window.cpp.
#include <QActionGroup>
#include <QDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMenu>
#include <QMenuBar>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/shell/file_deeds.h"
#include "ui/shell/help_dialogs.h"
#include "ui/shell/main_window.h"

namespace bw {

using namespace Qt::StringLiterals;

QAction* MainWindow::command(const char* id, const QString& text, const QString& icon,
                             const QKeySequence& key, std::function<void()> act) {
    return m_actions->add({QString::fromLatin1(id), text, icon, key, {}}, std::move(act));
}

void MainWindow::buildMenus() {
    menuBar()->setNativeMenuBar(false);
    buildFileMenu();
    buildEditMenu();
    buildViewMenu();
    buildGoMenu();
    m_pageMenu = menuBar()->addMenu(tr("&Page"));
    buildWindowMenu();
    buildHelpMenu();
    buildCorner();
}

void MainWindow::buildFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    menu->addAction(command("file.new", tr("&New farm file…"), u"file"_s, QKeySequence::New,
                            [this] { m_deeds->makeNew(); }));
    menu->addAction(command("file.open", tr("&Open…"), u"open"_s, QKeySequence::Open,
                            [this] { m_deeds->askOpen(); }));
    QMenu* recent = menu->addMenu(tr("Open &recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] {
        recent->clear();
        for (const QString& path : m_deeds->recent()) {
            recent->addAction(QFileInfo(path).fileName() + u"   "_s + QFileInfo(path).path(), this,
                              [this, path] { m_deeds->open(path); });
        }
        if (recent->isEmpty()) recent->addAction(tr("None yet"))->setEnabled(false);
    });
    menu->addAction(command("file.demo", tr("Look at the &demo season"), {}, {},
                            [this] { m_deeds->openDemo(); }));
    menu->addAction(command("file.leaveDemo", tr("&Leave the demo season"), {}, {},
                            [this] { m_deeds->leaveDemo(); }));
    menu->addSeparator();
    menu->addAction(command("file.copy", tr("Save a &copy as…"), u"save"_s,
                            QKeySequence(u"Ctrl+Shift+S"_s), [this] { m_deeds->saveCopy(); }));
    menu->addAction(command("file.backups", tr("&Backups…"), u"clock"_s, {},
                            [this] { m_deeds->showBackups(); }));
    menu->addSeparator();
    menu->addAction(
        command("file.quit", tr("&Quit"), {}, QKeySequence(u"Ctrl+Q"_s), [this] { close(); }));
}

void MainWindow::buildEditMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Edit"));
    menu->addAction(command("edit.undo", tr("&Undo"), u"undo"_s, QKeySequence(u"Ctrl+Z"_s),
                            [this] { m_session->undoStack().undo(); }));
    QAction* redo = command("edit.redo", tr("&Redo"), u"redo"_s, QKeySequence(u"Ctrl+Y"_s),
                            [this] { m_session->undoStack().redo(); });
    redo->setShortcuts({QKeySequence(u"Ctrl+Y"_s), QKeySequence(u"Ctrl+Shift+Z"_s)});
    menu->addAction(redo);
}

void MainWindow::buildViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    auto* looks = new QActionGroup(this);
    const auto addLook = [&](const char* id, const QString& text, ThemeChoice choice) {
        QAction* action = command(id, text, {}, {}, [this, choice] { setThemeChoice(choice); });
        action->setCheckable(true);
        action->setChecked(theme().choice() == choice);
        looks->addAction(action);
        menu->addAction(action);
    };
    addLook("view.light", tr("&Light"), ThemeChoice::Light);
    addLook("view.dark", tr("&Dark"), ThemeChoice::Dark);
    addLook("view.system", tr("Like the &system"), ThemeChoice::System);
    menu->addSeparator();
    QAction* fold =
        command("view.foldRail", tr("&Fold the rail"), u"fold"_s, QKeySequence(u"Ctrl+B"_s), [] {});
    fold->setCheckable(true);
    fold->setChecked(m_isFoldedByChoice);
    connect(fold, &QAction::toggled, this, &MainWindow::setFoldedByChoice);
    menu->addAction(fold);
    menu->addSeparator();
    auto* marks = new QActionGroup(this);
    const bool comma = chosenMark() == ',';
    for (const char mark : {'.', ','}) {
        QAction* action =
            command(mark == '.' ? "view.point" : "view.comma",
                    mark == '.' ? tr("Decimal &point, 12.5") : tr("Decimal &comma, 12,5"), {}, {},
                    [this, mark] { setDecimalMark(mark); });
        action->setCheckable(true);
        action->setChecked(comma == (mark == ','));
        marks->addAction(action);
        menu->addAction(action);
    }
}

void MainWindow::buildGoMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Go"));
    for (const auto& page : m_services.pages) {
        const QString id = page.id;
        menu->addAction(m_actions->add({u"go."_s + id, page.title, page.icon, page.key, {}},
                                       [this, id] { showPage(id); }));
    }
    if (!entry(u"fault_finder"_s)) return;
    menu->addSeparator();
    menu->addAction(command("call.new", tr("&New call"), u"phone"_s, QKeySequence(u"F9"_s),
                            [this] { newCall(); }));
}

void MainWindow::fillPageMenu() {
    m_pageMenu->clear();
    const Page* page = currentPage();
    QList<QAction*> own = page ? page->actions() : QList<QAction*>();
    own.removeIf([](const QAction* action) { return action->text().isEmpty(); });
    m_pageMenu->setTitle(m_title->text());
    m_pageMenu->addActions(own);
    m_pageMenu->menuAction()->setVisible(!own.isEmpty());
}

void MainWindow::buildHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    QAction* keys = command("help.keys", tr("&Keys"), u"help"_s, QKeySequence(u"Ctrl+F1"_s),
                            [this] { makeKeysDialog(commands(), this)->open(); });
    keys->setIconText(tr("keys"));
    menu->addAction(keys);
    menu->addAction(command("help.about", tr("&About Boomwright"), {}, {},
                            [this] { makeAboutDialog(this)->open(); }));
}

void MainWindow::buildCorner() {
    if (!entry(u"fault_finder"_s)) return;
    auto* corner = new QWidget;
    auto* row = new QHBoxLayout(corner);
    row->setContentsMargins(0, px(2), px(8), px(2));
    auto* call = new Button(tr("New call"), u"phone"_s);
    call->setObjectName(u"frame.newCall"_s);
    call->setKey(QKeySequence(u"F9"_s), false);
    call->setCompact(true);
    call->setFocusPolicy(Qt::NoFocus);
    row->addWidget(call);
    connect(call, &QAbstractButton::clicked, this, &MainWindow::newCall);
    menuBar()->setCornerWidget(corner);
}

}  // namespace bw
