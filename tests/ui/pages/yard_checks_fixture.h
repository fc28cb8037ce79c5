// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QListWidget>
#include <QRegularExpression>
#include <QScrollArea>

#include "tests/ui/pages/fault_finder_fixture.h"

namespace bw::test {

/// The program's window with the yard checks in front, on the demo season.
class YardChecksTest : public FaultFinderTest {
  protected:
    void openYard() {
        openDemo();
        key(Qt::Key_7, Qt::ControlModifier);
        ASSERT_EQ(window->currentPageId(), u"yard_checks"_s);
        settle();
    }
    FarmSession& session() { return window->session(); }
    const Machine& machine() { return *session().machine(session().currentMachine()); }

    /// Takes a machine by keys in the header.
    void takeMachine(const QString& name) {
        auto* box = find<QComboBox>(u"yard.header.machine"_s);
        ASSERT_TRUE(box);
        const int wanted = box->findText(name);
        ASSERT_GE(wanted, 0) << name.toStdString();
        box->setFocus(Qt::TabFocusReason);
        QTest::keyClick(box, Qt::Key_Home);
        for (int i = 0; i < box->count() && box->currentIndex() != wanted; ++i)
            QTest::keyClick(box, Qt::Key_Down);
        settle();
        ASSERT_EQ(box->currentIndex(), wanted);
        ASSERT_EQ(machine().name, name.toStdString());
    }
    QListWidgetItem* line(const QString& title) {
        auto* list = find<QListWidget>(u"yard.list"_s);
        EXPECT_TRUE(list);
        const auto found =
            list ? list->findItems(title, Qt::MatchExactly) : QList<QListWidgetItem*>();
        EXPECT_EQ(found.size(), 1) << title.toStdString();
        return found.isEmpty() ? nullptr : found.first();
    }
    /// A click on a check of the list, and Enter into it.
    void takeCheck(const QString& title) {
        auto* list = find<QListWidget>(u"yard.list"_s);
        auto* item = line(title);
        ASSERT_TRUE(list && item);
        list->scrollToItem(item);
        QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                          list->visualItemRect(item).center());
        settle();
        QTest::keyClick(list, Qt::Key_Return);
        settle();
    }
    /// Scrolls to a widget and clicks it.
    void click(const char* name) {
        QWidget* widget = find(QString::fromLatin1(name));
        ASSERT_TRUE(widget) << name;
        for (QWidget* up = widget->parentWidget(); up; up = up->parentWidget()) {
            if (auto* area = qobject_cast<QScrollArea*>(up)) area->ensureWidgetVisible(widget);
        }
        settle();
        QTest::mouseClick(widget, Qt::LeftButton);
        settle();
    }
    /// Writes over what a field holds.
    void write(const char* name, const char* text) {
        click(name);
        key(Qt::Key_A, Qt::ControlModifier);
        enter(text);
    }
    std::string textOf(const char* name) const {
        const auto* field = find<QLineEdit>(QString::fromLatin1(name));
        EXPECT_TRUE(field) << name;
        return field ? field->text().toStdString() : std::string();
    }
    /// All words beneath a widget that can be seen.
    std::string words(const char* name) const {
        const auto* box = find(QString::fromLatin1(name));
        EXPECT_TRUE(box) << name;
        QStringList all;
        if (box) {
            for (const auto* part : box->findChildren<QLabel*>()) {
                if (part->isVisible()) all << part->text();
            }
        }
        static const QRegularExpression tags(u"<[^>]*>"_s);
        return all.join(u' ').remove(tags).toStdString();
    }
    /// The records of the file, read again from disk.
    std::vector<StoredYardRecord> storedRecords() {
        const QString path = session().path();
        window.reset();
        auto again = files.open(path);
        EXPECT_TRUE(again);
        return again.value()->yardRecords();
    }
};

}  // namespace bw::test
