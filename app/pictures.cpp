// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures.h"

#include <QApplication>
#include <QDir>
#include <QPixmap>

#include "ui/kit/palette.h"
#include "ui/shell/main_window.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Layouts settle over a few rounds: text that wraps takes its height only after its width is
/// known.
void settle() {
    constexpr int kRounds = 6;
    for (int i = 0; i < kRounds; ++i) {
        QApplication::sendPostedEvents();
        QApplication::processEvents();
    }
}

bool grabTo(MainWindow& window, const QDir& folder, const QString& name, const QString& look) {
    if (QWidget* focus = QApplication::focusWidget()) focus->clearFocus();
    settle();
    const QString size = u"%1x%2"_s.arg(window.width()).arg(window.height());
    return window.grab().save(folder.filePath(u"%1-%2-%3.png"_s.arg(name, look, size)));
}

/// The page as it comes up, then the further states that it names.
bool drawPage(MainWindow& window, const QString& id, const QString& look, const QDir& folder) {
    window.showPage(id);
    bool written = grabTo(window, folder, id, look);
    Page* page = window.currentPage();
    for (const QString& state : page ? page->pictureStates() : QStringList()) {
        page->showState(state);
        written = grabTo(window, folder, id + u'_' + state, look) && written;
    }
    return written;
}

/// The page on a wall: its states, then its views that a key takes. A picture like the one before
/// is not kept twice.
bool drawWall(MainWindow& window, const QString& id, const QDir& folder) {
    window.showPage(id);
    QImage last;
    bool written = true;
    const auto keep = [&](const QString& name) {
        settle();
        const QImage now = window.grab().toImage();
        if (now != last) written = grabTo(window, folder, name, u"projector"_s) && written;
        last = now;
    };
    keep(id);
    Page* page = window.currentPage();
    if (!page || !page->wall()) return written;
    for (const QString& state : page->pictureStates()) {
        page->showState(state);
        keep(id + u'_' + state);
    }
    for (QAction* action : page->wall()->actions()) {
        if (!action->isCheckable()) continue;
        action->trigger();
        keep(id + u'_' + action->objectName().section(u'.', -1));
    }
    return written;
}

bool drawWalls(MainWindow& window, const QDir& folder) {
    bool written = true;
    for (const QSize& size : {QSize(1280, 720), QSize(1024, 768)}) {
        window.resize(size);
        window.setProjector(true);
        for (const QString& id : window.pageIds())
            written = drawWall(window, id, folder) && written;
        window.setProjector(false);
    }
    return written;
}

}  // namespace

bool drawPictures(MainWindow& window, const QString& folder) {
    if (!QDir().mkpath(folder)) return false;
    bool allWritten = true;
    window.show();
    for (const QSize& size : {QSize(1280, 720), QSize(1920, 1080)}) {
        for (const ThemeChoice choice : {ThemeChoice::Light, ThemeChoice::Dark}) {
            theme().setChoice(choice);
            window.resize(size);
            settle();
            const QString look = choice == ThemeChoice::Dark ? u"dark"_s : u"light"_s;
            for (const QString& id : window.pageIds())
                allWritten = drawPage(window, id, look, QDir(folder)) && allWritten;
        }
    }
    return drawWalls(window, QDir(folder)) && allWritten;
}

void visitPages(MainWindow& window) {
    window.show();
    for (const QString& id : window.pageIds()) {
        window.showPage(id);
        settle();
    }
}

}  // namespace bw
