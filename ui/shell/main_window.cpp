// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/main_window.h"

#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLocale>
#include <QMimeData>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "core/store/farm_file.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/shell/file_deeds.h"
#include "ui/shell/projector_stage.h"
#include "ui/shell/rail.h"
#include "ui/shell/status_line.h"
#include "ui/shell/trainer_window.h"

namespace bw {

using namespace Qt::StringLiterals;

MainWindow::MainWindow(FrameServices services, std::unique_ptr<FarmSession> session,
                       QWidget* parent)
    : QMainWindow(parent),
      m_services(std::move(services)),
      m_actions(new Actions(this)),
      m_deeds(new FileDeeds(m_services.files, m_services.settings, *this)) {
    setObjectName(u"mainWindow"_s);
    setAcceptDrops(true);
    setMinimumSize(px(900), px(560));
    m_isFoldedByChoice = !m_services.settings.windowState(u"rail_folded"_s).isEmpty();
    buildFrame();
    buildMenus();
    restoreWindow();
    connect(&theme(), &Theme::changed, this, &MainWindow::markPagesStale);
    setSession(std::move(session));
}

MainWindow::~MainWindow() {
    // The look and the type are the program's: they stay as the desk had them.
    setProjector(false);
    // Pages refer to the session: they go first.
    dropPages();
}

void MainWindow::buildFrame() {
    auto* central = new RolePanel(Role::Surface);
    m_frame = central;
    auto* row = new QHBoxLayout(central);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_rail = new Rail(m_services.pages);
    row->addWidget(m_rail);
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    row->addLayout(column, 1);
    m_notices = new NoticeBar;
    m_stack = new QStackedWidget;
    column->addWidget(buildHeader());
    column->addWidget(m_notices);
    column->addWidget(m_stack, 1);
    m_status = new StatusLine;
    auto* whole = new QWidget;
    auto* rows = new QVBoxLayout(whole);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    rows->addWidget(central, 1);
    rows->addWidget(m_status);
    setCentralWidget(whole);
    connect(m_rail, &Rail::pageChosen, this, &MainWindow::showPage);
}

QWidget* MainWindow::buildHeader() {
    auto* header = new RolePanel(Role::Surface);
    header->setEdges(Qt::BottomEdge);
    header->setFixedHeight(px(52));
    m_headerRow = new QHBoxLayout(header);
    m_headerRow->setContentsMargins(px(16), 0, px(12), 0);
    m_headerRow->setSpacing(px(18));
    m_title = new TextLabel({}, TextSize::Title, Role::Ink, true);
    m_title->setObjectName(u"header.title"_s);
    m_tools = new QStackedWidget;
    m_headerRow->addWidget(m_title);
    m_headerRow->addWidget(m_tools, 1);
    return header;
}

void MainWindow::setSession(std::unique_ptr<FarmSession> session) {
    const QString page = m_currentPage;
    dropPages();
    m_session = std::move(session);
    m_session->setDecimalMark(chosenMark());
    connectSession();
    m_deeds->remember(m_session->path());
    m_notesTold = 0;
    tellAboutFile();
    m_status->setFile(m_session->path(), m_services.files.isThrowAway(m_session->path()));
    if (page.isEmpty() || !showPage(page))
        showPage(m_services.pages.empty() ? QString() : m_services.pages.front().id);
    refreshFrame();
}

void MainWindow::connectSession() {
    FarmSession* session = m_session.get();
    for (const auto signal : {&FarmSession::seasonChanged, &FarmSession::casesChanged,
                              &FarmSession::selectionChanged, &FarmSession::styleChanged}) {
        connect(session, signal, this, [this] {
            markPagesStale();
            refreshFrame();
        });
    }
    connect(session, &FarmSession::saved, this, [this] {
        m_status->setSaved(m_services.files.timeOfDay());
        tellAboutFile();
    });
    connect(session, &FarmSession::failed, this, [this](const Problem& problem) {
        notify(qs(m_session->sentences().of(problem, m_session->currentStyle())), true);
    });
    QUndoStack* undo = &session->undoStack();
    connect(undo, &QUndoStack::indexChanged, this, &MainWindow::refreshFrame);
}

/// What the file has to tell and has not told yet: read-only, on a network drive, brought up to
/// date, records set aside, no backup.
void MainWindow::tellAboutFile() {
    const auto& notes = m_session->problems();
    for (; m_notesTold < notes.size(); ++m_notesTold) {
        const Problem& note = notes[m_notesTold];
        notify(qs(m_session->sentences().of(note, {})), note.severity == Severity::Error);
    }
}

void MainWindow::dropPages() {
    if (m_trainer) m_trainer->setNotes({}, {}, {});
    clearWall();
    // A figure still being typed goes into the old file, while its page is whole.
    if (auto* field = qobject_cast<FigureLine*>(focusWidget())) field->clearFocus();
    for (auto& [id, page] : m_pages) {
        page->disconnect(this);
        delete page;
    }
    for (auto& [id, tools] : m_pageTools) delete tools;
    m_pages.clear();
    m_pageTools.clear();
    m_currentPage.clear();
}

const PageEntry* MainWindow::entry(const QString& pageId) const {
    for (const auto& candidate : m_services.pages) {
        if (candidate.id == pageId) return &candidate;
    }
    return nullptr;
}

QStringList MainWindow::pageIds() const {
    QStringList ids;
    for (const auto& page : m_services.pages) ids.append(page.id);
    return ids;
}

Page* MainWindow::pageFor(const PageEntry& entry) {
    if (const auto known = m_pages.find(entry.id); known != m_pages.end()) return known->second;
    Page* page = deskPageFor(entry);
    m_pages[entry.id] = page;
    connect(page, &Page::goTo, this, &MainWindow::follow);
    connect(page, &Page::notice, this, &MainWindow::notify);
    connect(page, &Page::truthChanged, this, &MainWindow::tellTrainer);
    m_stack->addWidget(page);
    QWidget* tools = page->headerTools();
    if (!tools) tools = new QWidget;
    m_pageTools[entry.id] = tools;
    m_tools->addWidget(tools);
    return page;
}

Page* MainWindow::currentPage() const {
    const auto known = m_pages.find(m_currentPage);
    return known == m_pages.end() ? nullptr : known->second;
}

bool MainWindow::showPage(const QString& pageId) {
    const PageEntry* wanted = entry(pageId);
    if (!wanted) return false;
    // A figure still being typed is committed before its page goes out of sight.
    if (auto* field = qobject_cast<FigureLine*>(focusWidget())) field->clearFocus();
    Page* page = pageFor(*wanted);
    m_currentPage = pageId;
    m_tools->setCurrentWidget(m_pageTools[pageId]);
    m_stack->setCurrentWidget(page);
    m_title->setText(page->title());
    m_rail->setCurrent(pageId);
    // Keys go to the page at once, unless the rail is being walked.
    if (!m_rail->isAncestorOf(focusWidget())) page->setFocus(Qt::OtherFocusReason);
    fillPageMenu();
    if (isProjector()) fillWall();
    refreshFrame();
    tellTrainer();
    return true;
}

/// A page's wish: another page, or a command. A command may close the file and with it the page
/// that asks, so it waits until the page has returned.
void MainWindow::follow(const QString& target) {
    if (showPage(target.section(u'#', 0, 0))) {
        if (target.contains(u'#')) currentPage()->takeInHand(target.section(u'#', 1));
        return;
    }
    if (QAction* action = m_actions->find(target))
        QMetaObject::invokeMethod(action, &QAction::trigger, Qt::QueuedConnection);
}

void MainWindow::newCall() {
    if (!showPage(u"fault_finder"_s)) return;
    for (QAction* action : currentPage()->actions()) {
        if (action->objectName() == u"finder.newCall"_s) action->trigger();
    }
}

void MainWindow::notify(const QString& text, bool isError) {
    m_notices->add(text, isError);
}

QList<QAction*> MainWindow::commands() const {
    QList<QAction*> all(m_actions->all().begin(), m_actions->all().end());
    if (m_stage)
        all.append(m_stage->viewActions());
    else if (const Page* page = currentPage())
        all.append(page->actions());
    return all;
}

void MainWindow::markPagesStale() {
    // A page may put another in front while it recomputes: walk over a copy.
    const auto pages = m_pages;
    for (const auto& [id, page] : pages) page->markStale();
    if (m_stage && m_stage->page()) m_stage->page()->markStale();
    tellTrainer();
}

void MainWindow::refreshFrame() {
    m_status->follow(*m_session);
    m_actions->find(u"file.leaveDemo"_s)
        ->setEnabled(!isProjector() && m_services.files.isThrowAway(m_session->path()));
    if (const Page* page = currentPage()) m_status->setHint(page->hint());
    const QUndoStack& undo = m_session->undoStack();
    QAction* back = m_actions->find(u"edit.undo"_s);
    QAction* forth = m_actions->find(u"edit.redo"_s);
    back->setEnabled(undo.canUndo());
    back->setText(undo.canUndo() ? tr("&Undo “%1”").arg(undo.undoText()) : tr("&Undo"));
    forth->setEnabled(undo.canRedo());
    forth->setText(undo.canRedo() ? tr("&Redo “%1”").arg(undo.redoText()) : tr("&Redo"));
    if (isProjector()) tellUnits();
    setWindowTitle(isProjector() ? tr("Boomwright") : tr("%1 · Boomwright").arg(m_title->text()));
}

void MainWindow::setFoldedByChoice(bool folded) {
    m_isFoldedByChoice = folded;
    m_services.settings.setWindowState(u"rail_folded"_s, folded ? QByteArray("yes") : QByteArray());
    applyFold();
}

void MainWindow::applyFold() {
    constexpr int kNarrow = 1100;
    m_rail->setFolded(m_isFoldedByChoice || width() < px(kNarrow));
}

void MainWindow::setThemeChoice(ThemeChoice choice) {
    theme().setChoice(choice);
    m_services.settings.setTheme(choice);
}

void MainWindow::setDecimalMark(char mark) {
    m_services.settings.setDecimalMark(mark);
    m_session->setDecimalMark(mark);
}

/// The user's mark, else that of the desktop's language.
char MainWindow::chosenMark() const {
    const char own = QLocale().decimalPoint() == u","_s ? ',' : '.';
    return m_services.settings.decimalMark().value_or(own);
}

/// Where it stood last, if its title bar still lies on a screen; else in the middle of the first.
void MainWindow::restoreWindow() {
    const QRect screen = QGuiApplication::primaryScreen()->availableGeometry();
    resize(QSize(px(1280), px(720)).boundedTo(screen.size() - QSize(20, 40)));
    move(screen.center() - rect().center());
    const QRect usual = geometry();
    if (!restoreGeometry(m_services.settings.windowState(u"frame"_s))) return;
    const QRect grip(normalGeometry().left() + 40, normalGeometry().top(),
                     std::max(1, normalGeometry().width() - 80), 30);
    bool isReachable = false;
    for (const QScreen* s : QGuiApplication::screens())
        isReachable = isReachable || s->availableGeometry().intersects(grip);
    if (!isReachable) setGeometry(usual);
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (auto* field = qobject_cast<FigureLine*>(focusWidget())) field->clearFocus();
    setProjector(false);
    if (m_trainer) m_trainer->close();
    m_services.settings.setWindowState(u"frame"_s, saveGeometry());
    QMainWindow::closeEvent(event);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    applyFold();
    if (isProjector()) fitWall();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.first().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
    const auto urls = event->mimeData()->urls();
    if (urls.size() != 1 || !urls.first().isLocalFile()) return;
    event->acceptProposedAction();
    m_deeds->open(urls.first().toLocalFile());
}

}  // namespace bw
