// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "app/farm_files.h"
#include "ui/kit/actions.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_edit.h"
#include "ui/pages/start/start_page.h"
#include "ui/shell/main_window.h"

namespace bw::test {

/// A page that counts what the frame does to it.
class CountingPage : public Page {
  public:
    CountingPage(FarmSession& session, QString name)
        : Page(session),
          m_name(std::move(name)),
          field(new QuantityEdit(Dimension::Speed, Unit::KilometrePerHour, this)) {
        addPageAction(this,
                      {m_name + QStringLiteral(".act"),
                       QStringLiteral("Act"),
                       {},
                       QKeySequence(QStringLiteral("Ins")),
                       {}},
                      [this] { ++acts; });
        if (m_name == QStringLiteral("fault_finder"))
            addPageAction(
                this, {QStringLiteral("finder.newCall"), QStringLiteral("New call"), {}, {}, {}},
                [this] { ++calls; });
    }
    QString title() const override { return m_name.toUpper(); }
    void refresh() override { ++refreshes; }
    QString hint() const override { return QStringLiteral("hint of ") + m_name; }
    int refreshes = 0;
    int acts = 0;
    int calls = 0;

  private:
    QString m_name;

  public:
    QuantityEdit* field;
};

/// The frame with the start page and three counting ones, on files in a folder of its own.
class FrameTest : public testing::Test {
  protected:
    FrameTest()
        : settings(folder.filePath(QStringLiteral("settings.ini"))),
          files(folder.path(), settings) {
        usePrompts(&script);
        window = std::make_unique<MainWindow>(FrameServices{files, settings, pages()},
                                              files.openUnkept().value());
        window->show();
        QApplication::setActiveWindow(window.get());
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    ~FrameTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }

    static std::vector<PageEntry> pages() {
        const auto counting = [](const QString& id, const QString& group, int number) {
            return PageEntry{id,
                             id,
                             QStringLiteral("window"),
                             group,
                             QKeySequence(QStringLiteral("Ctrl+%1").arg(number)),
                             [id](FarmSession& s) -> Page* { return new CountingPage(s, id); }};
        };
        std::vector<PageEntry> list;
        const QStringList ids{QStringLiteral("machine"), QStringLiteral("season"),
                              QStringLiteral("fault_finder")};
        list.push_back({QStringLiteral("start"),
                        QStringLiteral("Start"),
                        QStringLiteral("start"),
                        {},
                        QKeySequence(QStringLiteral("Ctrl+0")),
                        [ids](FarmSession& s) -> Page* { return new StartPage(s, ids); }});
        list.push_back(counting(ids[0], QStringLiteral("Plan"), 1));
        list.push_back(counting(ids[1], QStringLiteral("Plan"), 3));
        list.push_back(counting(ids[2], QStringLiteral("Fix"), 6));
        return list;
    }
    CountingPage* page() const { return dynamic_cast<CountingPage*>(window->currentPage()); }
    void press(const char* key) {
        const QKeySequence sequence(QString::fromLatin1(key));
        const auto combination = sequence[0];
        QTest::keyClick(window.get(), combination.key(), combination.keyboardModifiers());
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

}  // namespace bw::test
