// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QDir>
#include <QMenuBar>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "tests/ui/shell/wall_probe.h"
#include "ui/kit/palette.h"
#include "ui/kit/prompts.h"
#include "ui/shell/main_window.h"

namespace bw::test {

using Qt::StringLiterals::operator""_s;

/// The program on the demo season (in a folder that bears a farm's name), driven by keys.
class ProjectorTest : public testing::Test {
  protected:
    ProjectorTest() : settings(folder.filePath(u"settings.ini"_s)), files(farmFolder(), settings) {
        usePrompts(&script);
        open(files.openDemo());
    }
    ~ProjectorTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
        EXPECT_FALSE(theme().isProjector());
    }
    void open(OpenedFarm farm) {
        window.reset();
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(farm).value());
        window->resize(1280, 720);
        window->show();
        activate();
    }
    void activate() {
        QApplication::setActiveWindow(window.get());
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        settle();
    }
    static void settle() {
        for (int i = 0; i < 6; ++i) {
            QApplication::sendPostedEvents();
            QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            QApplication::processEvents();
        }
    }
    void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QWidget* focus = QApplication::focusWidget();
        QTest::keyClick(focus && focus->isVisible() ? focus : window.get(), which, with);
        settle();
    }
    void type(const char* digits) {
        for (; *digits; ++digits) key(static_cast<Qt::Key>(*digits));
    }
    void showPage(int number) {
        key(static_cast<Qt::Key>(Qt::Key_0 + number), Qt::ControlModifier);
    }
    template <class W = QWidget>
    W* find(const char* name) const {
        for (W* found : window->findChildren<W*>(QString::fromLatin1(name))) {
            if (found->isVisible()) return found;
        }
        return nullptr;
    }
    std::string label(const char* name) const {
        const auto* found = find<QLabel>(name);
        EXPECT_TRUE(found) << name;
        return found ? found->text().toStdString() : std::string();
    }
    QImage picture() const {
        settle();
        return window->grab().toImage().convertToFormat(QImage::Format_RGB32);
    }
    QString farmFolder() const {
        const QString path = folder.filePath(u"Farm Quendelhof"_s);
        QDir().mkpath(path);
        return path;
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

}  // namespace bw::test
