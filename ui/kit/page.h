// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

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
        if (isVisible()) refreshNow();
    }
    /// A text for the status line's right side (what the keys do here).
    virtual QString hint() const { return {}; }
    /// Further states worth a picture (boomwright --pictures), in words for a file name.
    virtual QStringList pictureStates() const { return {}; }
    virtual void showState(const QString& state) { Q_UNUSED(state) }

    /// Puts the hand on a field, by its key ("limits.pressure_floor"); pages without such fields
    /// pass it over.
    virtual void takeInHand(const QString& fieldKey) { Q_UNUSED(fieldKey) }

  Q_SIGNALS:
    /// Asks the frame to show another page ("machine", "nozzles", "season", "speed_window",
    /// "fault_finder"; "machine#limits.pressure_floor" with a field in hand) or to do one of its
    /// commands ("call.new", "file.demo").
    void goTo(const QString& pageId);
    /// A message for the notice bar, that stays until dismissed.
    void notice(const QString& text, bool isError);

  protected:
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
    bool m_stale = true;
};

}  // namespace bw
