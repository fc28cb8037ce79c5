// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QScrollArea>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "app/app_context.h"
#include "core/model/machine_fields.h"
#include "ui/kit/metrics.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_edit.h"

namespace bw::test {

/// The whole program on an empty file or on the demo season, with the machine page in front, driven
/// by keys and mouse alone.
class MachinePageTest : public testing::Test {
  protected:
    void start(bool isDemo) {
        usePrompts(&script);
        CommandLine line;
        line.dataDir = folder.path();
        line.isDemo = isDemo;
        program = std::make_unique<AppContext>(line);
        window().resize(1280, 720);
        window().show();
        QApplication::setActiveWindow(&window());
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window()));
        key(Qt::Key_1, Qt::ControlModifier);
        ASSERT_EQ(window().currentPageId(), QStringLiteral("machine"));
    }
    ~MachinePageTest() override {
        program.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }

    MainWindow& window() { return program->window(); }
    const Machine& stored() {
        const auto* machine = window().session().machine(window().session().currentMachine());
        EXPECT_NE(machine, nullptr);
        static const Machine none;
        return machine ? *machine : none;
    }

    /// A widget that a person can see, by its object name.
    QWidget* seen(const char* name) {
        for (QWidget* widget : window().findChildren<QWidget*>(QLatin1String(name))) {
            if (widget->isVisible()) return widget;
        }
        ADD_FAILURE() << "not to be seen: " << name;
        return nullptr;
    }
    bool isSeen(const char* name) {
        const auto all = window().findChildren<QWidget*>(QLatin1String(name));
        return std::any_of(all.begin(), all.end(), [](QWidget* w) { return w->isVisible(); });
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* target = QApplication::focusWidget();
        QTest::keyClick(target ? target : &window(), key, modifiers);
    }
    void click(const char* name) {
        if (QWidget* widget = seen(name)) clickOn(*widget);
    }
    /// Scrolls to it first, as a person would with the wheel.
    static void clickOn(QWidget& widget) {
        QCoreApplication::processEvents();
        for (QWidget* up = widget.parentWidget(); up; up = up->parentWidget()) {
            if (auto* area = qobject_cast<QScrollArea*>(up)) area->ensureWidgetVisible(&widget);
        }
        QTest::mouseClick(&widget, Qt::LeftButton);
    }
    /// Takes a line in hand with the mouse and writes over what it holds.
    void write(const char* name, const char* text, bool isEntered = true) {
        auto* line = qobject_cast<QLineEdit*>(seen(name));
        ASSERT_NE(line, nullptr) << name;
        clickOn(*line);
        EXPECT_TRUE(line->hasFocus()) << name;
        QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, QString::fromUtf8(text));
        if (isEntered) QTest::keyClick(line, Qt::Key_Return);
    }
    /// Takes a choice by keys: opens the list, walks to the item that begins so, Enter.
    void choose(const char* name, const char* start) {
        auto* box = qobject_cast<QComboBox*>(seen(name));
        ASSERT_NE(box, nullptr) << name;
        box->setFocus(Qt::TabFocusReason);
        pick(*box, start);
    }
    static void pick(QComboBox& box, const char* start) {
        const int wanted = box.findText(QString::fromUtf8(start), Qt::MatchStartsWith);
        ASSERT_GE(wanted, 0) << start;
        QTest::keyClick(&box, Qt::Key_Down, Qt::AltModifier);
        QAbstractItemView* list = box.view();
        ASSERT_TRUE(list->isVisible()) << start;
        QTest::keyClick(list, Qt::Key_Home);
        for (int i = 0; i < box.count() && list->currentIndex().row() != wanted; ++i)
            QTest::keyClick(list, Qt::Key_Down);
        QTest::keyClick(list, Qt::Key_Return);
        comeBack(*box.window());
    }
    /// The offscreen platform has no window manager to give the focus back when a popup closes.
    static void comeBack(QWidget& window) {
        QCoreApplication::processEvents();
        QApplication::setActiveWindow(&window);
    }
    QString shown(const char* name) {
        QWidget* widget = seen(name);
        if (auto* line = qobject_cast<FigureLine*>(widget)) {
            const QString unit = line->unitText();
            return unit.isEmpty() ? line->text() : line->text() + QLatin1Char(' ') + unit;
        }
        if (auto* line = qobject_cast<QLineEdit*>(widget)) return line->text();
        if (auto* box = qobject_cast<QComboBox*>(widget)) return box->currentText();
        if (auto* label = qobject_cast<QLabel*>(widget)) return label->text();
        return widget ? widget->accessibleName() : QString();
    }
    /// All text to be seen in a field's row.
    QString rowText(const char* name) {
        QString text;
        QWidget* row = seen((std::string(name) + ".row").c_str());
        if (!row) return text;
        for (auto* label : row->findChildren<QLabel*>()) {
            if (label->isVisible()) text += label->text() + QLatin1Char('\n');
        }
        return text;
    }
    QString textOf(const char* name) {
        QString text;
        QWidget* widget = seen(name);
        if (!widget) return text;
        for (auto* label : widget->findChildren<QLabel*>()) {
            if (!label->isHidden()) text += label->text() + QLatin1Char('\n');
        }
        return text;
    }
    QString focusName() {
        QWidget* widget = QApplication::focusWidget();
        return widget ? widget->objectName() : QString();
    }

    QTemporaryDir folder;
    ScriptedPrompts script;
    std::unique_ptr<AppContext> program;
};

}  // namespace bw::test
