// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <map>
#include <memory>

#include "ui/kit/actions.h"
#include "ui/kit/palette.h"
#include "ui/shell/frame_services.h"

class QHBoxLayout;
class QMenu;
class QStackedWidget;

namespace bw {

class FileDeeds;
class NoticeBar;
class ProjectorStage;
class Rail;
class StatusLine;
class TextLabel;
class TrainerWindow;

/// The frame: menus, rail, header, notices, the page in front, status line. Pages are made on their
/// first visit and thrown away when another file is opened.
class MainWindow : public QMainWindow {
    Q_OBJECT

  public:
    MainWindow(FrameServices services, std::unique_ptr<FarmSession> session,
               QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Takes another file; the earlier one is closed.
    void setSession(std::unique_ptr<FarmSession> session);
    FarmSession& session() { return *m_session; }
    /// Shows a page by id; false if there is none of that name.
    bool showPage(const QString& pageId);
    QString currentPageId() const { return m_currentPage; }
    Page* currentPage() const;
    /// Starts a new call in the fault finder, if the program has one.
    void newCall();
    /// A message that stays until dismissed.
    void notify(const QString& text, bool isError = false);
    Actions& actions() { return *m_actions; }
    NoticeBar& notices() { return *m_notices; }
    QStringList pageIds() const;
    /// Projector view: the page in front alone, for a wall, over the whole screen; where that is
    /// smaller than a projector's picture, over the window.
    void setProjector(bool on);
    bool isProjector() const { return m_stage != nullptr; }
    /// The trainer's own window; null until it was first asked for.
    TrainerWindow* trainerWindow() const { return m_trainer; }
    /// All commands in force: the frame's and those of the page in front.
    QList<QAction*> commands() const;

  protected:
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

  private:
    void buildFrame();
    QWidget* buildHeader();
    void buildMenus();
    void buildFileMenu();
    void buildEditMenu();
    void buildViewMenu();
    void buildGoMenu();
    void buildWindowMenu();
    void buildHelpMenu();
    void buildCorner();
    void fillPageMenu();
    void connectSession();
    void dropPages();
    void follow(const QString& target);
    void markPagesStale();
    void refreshFrame();
    void setFoldedByChoice(bool folded);
    void applyFold();
    void setThemeChoice(ThemeChoice choice);
    void setDecimalMark(char mark);
    void restoreWindow();
    void tellAboutFile();
    char chosenMark() const;
    const PageEntry* entry(const QString& pageId) const;
    Page* pageFor(const PageEntry& entry);
    Page* deskPageFor(const PageEntry& entry);
    void setFrameVisible(bool visible);
    void clearWall();
    void fillWall();
    void fitWall();
    void allowCommands();
    void nextUnits();
    void tellUnits();
    void showTrainer();
    void placeTrainer();
    void tellTrainer();
    QAction* command(const char* id, const QString& text, const QString& icon,
                     const QKeySequence& key, std::function<void()> act);

    FrameServices m_services;
    std::unique_ptr<FarmSession> m_session;
    Actions* m_actions;
    FileDeeds* m_deeds;
    Rail* m_rail = nullptr;
    TextLabel* m_title = nullptr;
    QHBoxLayout* m_headerRow = nullptr;
    QStackedWidget* m_tools = nullptr;
    NoticeBar* m_notices = nullptr;
    QStackedWidget* m_stack = nullptr;
    StatusLine* m_status = nullptr;
    QWidget* m_frame = nullptr;         ///< all but menus and status line
    ProjectorStage* m_stage = nullptr;  ///< while the projector view is on
    Qt::WindowStates m_stateAtDesk;
    TrainerWindow* m_trainer = nullptr;
    bool m_trainerWaits = false;  ///< for its screen, while the wall has the only one
    QMenu* m_pageMenu = nullptr;
    std::map<QString, Page*> m_pages;
    std::map<QString, QWidget*> m_pageTools;
    QString m_currentPage;
    bool m_isFoldedByChoice = false;
    std::size_t m_notesTold = 0;
};

}  // namespace bw
