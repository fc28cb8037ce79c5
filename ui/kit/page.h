// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QString>
#include <QStringList>
#include <QWidget>

namespace bw {

class FarmSession;

/// One page of the rail. A hidden page only marks itself stale; it recomputes when shown.
/// Commands of its own are added with addPageAction (ui/kit/actions.h): they stand in the page's
/// menu and in the list of keys. The fault finder's "finder.newCall" is what the frame's New call
/// (F9) triggers after showing the page.
class Page : public QWidget {
    Q_OBJECT

  public:
    explicit Page(FarmSession& session, QWidget* parent = nullptr)
        : QWidget(parent), m_session(session) {}

    virtual QString title() const = 0;
    /// Widgets for the page's header bar (machine, job in hand, at most two buttons); may be null.
    virtual QWidget* headerTools() { return nullptr; }
    /// Recomputes everything from the session. Called when shown stale, or at once when visible.
    virtual void refresh() = 0;
    /// Called by the frame whenever data, selection, units or theme changed.
    void markStale() {
        m_stale = true;
        if (isVisible() || m_wall) refreshNow();
    }
    /// A text for the status line's right side (what the keys do here).
    virtual QString hint() const { return {}; }
    /// Further states worth a picture (boomwright --pictures), in words for a file name.
    virtual QStringList pictureStates() const { return {}; }
    virtual void showState(const QString& state) { Q_UNUSED(state) }

    /// Puts the hand on a field, by its key ("limits.pressure_floor"); pages without such fields
    /// pass it over.
    virtual void takeInHand(const QString& fieldKey) { Q_UNUSED(fieldKey) }

    // Projector view (F11). The frame asks for the page's own arrangement; without one it shows the
    // page in large type. Names of customers, farms and operators, notes, and names that were typed
    // by hand have no place on a wall.

    /// Makes the arrangement anew, at the projector's type and look, and fills it; the frame
    /// deletes it. While it stands the page is hidden, and refresh() comes as if it were in front.
    QWidget* goOnWall() {
        m_wall = makeWallView();
        if (m_wall) refreshNow();
        return m_wall;
    }
    /// The frame takes it down.
    void leaveWall() { m_wall = nullptr; }
    /// Where it stands; null: the page is not on the wall, or has no arrangement of its own.
    QWidget* wall() const { return m_wall; }
    /// What the trainer sees in a window of their own: what is true behind what the wall shows.
    /// Rich text; empty: nothing. Announce a change with truthChanged.
    virtual QString trainerTruth() const { return {}; }
    /// Notes are kept by page, or by what this names on it (a lesson).
    virtual QString notesKey() const { return {}; }

  Q_SIGNALS:
    /// trainerTruth() or notesKey() is another now.
    void truthChanged();
    /// Asks the frame to show another page ("machine", "nozzles", "season", "speed_window",
    /// "fault_finder"; "machine#limits.pressure_floor" with a field in hand) or to do one of its
    /// commands ("call.new", "file.demo").
    void goTo(const QString& pageId);
    /// A message for the notice bar, that stays until dismissed.
    void notice(const QString& text, bool isError);

  protected:
    /// A widget with this page's idea for a wall. Its actions (addPageAction on it) work while it
    /// stands and are listed on the wall's foot: key and icon text. Null: none.
    virtual QWidget* makeWallView() { return nullptr; }
    FarmSession& session() { return m_session; }
    const FarmSession& session() const { return m_session; }
    void showEvent(QShowEvent* event) override {
        QWidget::showEvent(event);
        if (m_stale) refreshNow();
    }

  private:
    void refreshNow() {
        m_stale = false;
        refresh();
    }
    FarmSession& m_session;
    QPointer<QWidget> m_wall;
    bool m_stale = true;
};

}  // namespace bw
