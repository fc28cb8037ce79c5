// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QFile>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "tests/support/builders.h"
#include "tests/ui/typing.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/prompts.h"
#include "ui/shell/main_window.h"
#include "ui/undo/farm_session.h"

namespace bw::test {

using Qt::StringLiterals::operator""_s;

/// A meter check on the first machine, invented: 405 shown for 400 known, 1.25 % too much.
inline YardRecord meterCheck(RecordId machine, const char* day) {
    YardRecord r;
    r.kind = YardKind::Check;
    r.check = "Y5";
    r.machineId = machine;
    r.machineName = "Demo trailed 28 m";
    r.started = std::string(day) + "T10:00:00";
    r.finished = std::string(day) + "T10:30:00";
    r.readings = {{"shown", 1, anyQuantity(make<Volume>(405, Unit::Litre)), "405"},
                  {"known", 1, anyQuantity(make<Volume>(400, Unit::Litre)), "400 L"}};
    r.choices = {{"entered", "no"}};
    r.notes = "Invented. Weighed on the yard scale.";
    return r;
}

/// An open spring list with two ticks, invented.
inline YardRecord springList(RecordId machine, const char* day) {
    YardRecord r;
    r.kind = YardKind::Checklist;
    r.check = "spring_start";
    r.machineId = machine;
    r.machineName = "Demo trailed 28 m";
    r.started = std::string(day) + "T07:00:00";
    r.ticks = {{"flush_leaks", day, "drip at section four"}, {"tank_lid", day, ""}};
    return r;
}

/// The program's window on a throw-away copy of the demo season (three catch tests of one set,
/// three cases, two customers), with a finished meter check and an open list beside them.
class RecordsTest : public testing::Test {
  protected:
    RecordsTest() : settings(folder.filePath(u"settings.ini"_s)), files(folder.path(), settings) {
        usePrompts(&script);
    }
    ~RecordsTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }
    void SetUp() override {
        auto farm = files.openDemo();
        ASSERT_TRUE(farm.isOk());
        auto session = std::move(farm).value();
        RecordId trailed = 0;
        for (const auto& stored : session->season().machines) {
            if (stored.machine.name == "Demo trailed 28 m") trailed = stored.id;
        }
        ASSERT_NE(trailed, 0);
        ASSERT_TRUE(session->saveYardRecord(0, meterCheck(trailed, "2026-03-09")).isOk());
        ASSERT_TRUE(session->saveYardRecord(0, springList(trailed, "2026-03-02")).isOk());
        show(std::move(session));
    }
    void show(std::unique_ptr<FarmSession> session) {
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(session));
        window->resize(1280, 720);
        window->show();
        QApplication::setActiveWindow(window.get());
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        key(Qt::Key_8, Qt::ControlModifier);
        ASSERT_EQ(window->currentPageId(), u"records"_s);
    }
    void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
        keyTo(window.get(), which, with);
    }
    void type(const char* text) { typeText(text); }
    void search(const char* text) {
        key(Qt::Key_F, Qt::ControlModifier);
        ASSERT_EQ(QApplication::focusWidget()->objectName(), u"records.filter.search"_s);
        type(text);
    }
    template <class W = QWidget>
    W* find(const char* name) const {
        for (W* found : window->findChildren<W*>(QString::fromLatin1(name))) {
            if (found->isVisible()) return found;
        }
        return nullptr;
    }
    void click(const char* name) {
        auto* button = find<QAbstractButton>(name);
        ASSERT_TRUE(button) << name;
        QTest::mouseClick(button, Qt::LeftButton);
        settle();
    }
    std::string label(const char* name) const {
        const auto* found = find<QLabel>(name);
        EXPECT_TRUE(found) << name;
        return found ? found->text().toStdString() : std::string();
    }
    /// All that is said within a visible widget.
    std::string said(const char* name) const {
        const auto* within = find<QWidget>(name);
        EXPECT_TRUE(within) << name;
        QStringList all;
        if (within) {
            for (const auto* words : within->findChildren<QLabel*>()) {
                if (words->isVisible()) all << words->text();
            }
        }
        return all.join(u'\n').toStdString();
    }
    /// A row of a table as it is seen, its cells with bars between.
    std::string row(const char* table, int at) const {
        const auto* view = find<QTableView>(table);
        EXPECT_TRUE(view) << table;
        QStringList cells;
        for (int i = 0; view && i < view->model()->columnCount(); ++i)
            cells << view->model()->index(at, i).data().toString();
        return cells.join(u'|').toStdString();
    }
    int rows(const char* table) const {
        const auto* view = find<QTableView>(table);
        return view ? view->model()->rowCount() : -1;
    }
    void clickRow(const char* table, int at, int column = 1) {
        auto* view = find<QTableView>(table);
        ASSERT_TRUE(view);
        const QRect cell = view->visualRect(view->model()->index(at, column));
        QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, cell.center());
        settle();
    }
    /// Steps a choice by the keyboard until it shows a text.
    void pick(const char* name, const QString& text) {
        auto* box = find<QComboBox>(name);
        ASSERT_TRUE(box) << name;
        box->setFocus(Qt::TabFocusReason);
        key(Qt::Key_Home);
        for (int i = 0; i < box->count() && box->currentText() != text; ++i) key(Qt::Key_Down);
        ASSERT_EQ(box->currentText(), text);
    }
    FarmSession& session() { return window->session(); }

    static constexpr const char* kTable = "records.list.table";
    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

}  // namespace bw::test
