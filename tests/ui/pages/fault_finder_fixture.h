// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "core/store/farm_file.h"
#include "tests/ui/typing.h"
#include "ui/kit/messages.h"
#include "ui/kit/prompts.h"
#include "ui/shell/main_window.h"
#include "ui/undo/farm_session.h"

namespace bw::test {

using Qt::StringLiterals::operator""_s;

/// The program's window on a file, driven by keys alone but where a click is what is tried.
class FaultFinderTest : public testing::Test {
  protected:
    FaultFinderTest()
        : settings(folder.filePath(u"settings.ini"_s)), files(folder.path(), settings) {
        usePrompts(&script);
    }
    ~FaultFinderTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }
    void open(OpenedFarm farm) {
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(farm).value());
        window->resize(1280, 720);
        window->show();
        QApplication::setActiveWindow(window.get());
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    void openDemo() { open(files.openDemo()); }
    /// A key to whatever has the focus.
    void key(Qt::Key which, Qt::KeyboardModifiers with = Qt::NoModifier) {
        keyTo(window.get(), which, with);
    }
    void type(const char* text) { typeText(text); }
    void enter(const char* text) {
        type(text);
        key(Qt::Key_Return);
    }
    template <class W = QWidget>
    W* find(const QString& name) const {
        for (W* found : window->findChildren<W*>(name)) {
            if (found->isVisible()) return found;
        }
        return nullptr;
    }
    std::string label(const char* name) const {
        const auto* found = find<QLabel>(QString::fromLatin1(name));
        EXPECT_TRUE(found) << name;
        return found ? found->text().toStdString() : std::string();
    }
    std::string named(const char* name) const {
        const auto* found = find(QString::fromLatin1(name));
        EXPECT_TRUE(found) << name;
        return found ? found->accessibleName().toStdString() : std::string();
    }
    /// The digit of the answer that starts with a text.
    void choose(const QString& text) {
        settle();
        for (auto* row : window->findChildren<QAbstractButton*>()) {
            if (!row->isVisible() || !row->objectName().startsWith(u"finder.card.answer."_s) ||
                !row->text().startsWith(text))
                continue;
            const QString digit = row->accessibleName().section(u':', 0, 0);
            ASSERT_TRUE(digit.size() == 1 && digit[0].isDigit()) << digit.toStdString();
            QTest::keyClicks(QApplication::focusWidget(), digit);
            return settle();
        }
        FAIL() << "no answer " << text.toStdString();
    }
    /// F9, the complaint, and the three safety questions: clean water, two people, in the yard.
    void startCall(const QString& complaint) {
        key(Qt::Key_F9);
        ASSERT_EQ(window->currentPageId(), u"fault_finder"_s);
        ASSERT_EQ(label("finder.card.question"), "What does the caller say?");
        choose(complaint);
        choose(u"clean water"_s);
        choose(u"a second person"_s);
        choose(u"in the yard"_s);
        ASSERT_EQ(label("finder.card.question"), "Which machine is it?");
    }
    void startOnDemo(const QString& complaint, const QString& job, const QString& nozzle) {
        startCall(complaint);
        choose(u"Demo self-propelled 100 ft"_s);
        choose(job);
        choose(nozzle);
        ASSERT_TRUE(find(u"finder.numbers.speed"_s));
    }
    /// Enter through the four numbers of a call, some of them given. The focus starts on the
    /// target.
    void numbers(const char* speed, const char* rate, const char* flow, const char* pressure) {
        key(Qt::Key_Return);  // target as in the job
        enter(speed);
        enter(rate);
        enter(flow);
        enter(pressure);
        key(Qt::Key_Return);  // Next
    }
    /// Answers by what is asked, until the end: each given answer by check, else can't tell.
    void answerAll(const std::map<QString, QString>& answers) {
        for (int i = 0; i < 45 && !find(u"finder.end.title"_s); ++i) {
            bool given = false;
            for (const auto& [check, text] : answers) {
                const auto* row = find<QAbstractButton>(u"finder.card.answer."_s + text);
                if (inHand() != check || !row) continue;
                choose(row->text());
                given = true;
                break;
            }
            if (!given) cantTell();
        }
        ASSERT_TRUE(find(u"finder.end.title"_s));
    }
    /// Can't tell, until a check is in hand.
    void answerUntil(const QString& check) {
        for (int i = 0; i < 45 && inHand() != check; ++i) {
            ASSERT_FALSE(find(u"finder.end.title"_s)) << check.toStdString() << " was never asked";
            cantTell();
        }
    }
    /// A stranger's call (invented): US units, 90 ft, 20 in, size 04, 15 gal/ac, 7 mph, reads 17
    /// at 40 psi.
    void callersNumbers() {
        key(Qt::Key_Return);  // units: those of the machine in hand, US
        enter("90");
        key(Qt::Key_Return);  // number of nozzles
        enter("20");
        for (int i = 0; i < 40; ++i) {
            auto* sizes = qobject_cast<QComboBox*>(QApplication::focusWidget());
            ASSERT_TRUE(sizes);
            if (sizes->currentText().startsWith(u"Size 04 "_s)) break;
            key(Qt::Key_Down);
        }
        key(Qt::Key_Return);
        key(Qt::Key_Return);  // a meter
        key(Qt::Key_Return);  // not pulsed
        enter("15");
        enter("7");
        enter("17");
        key(Qt::Key_Return);  // shown flow
        enter("40");
        key(Qt::Key_Return);  // Next
    }
    /// All that the left column says.
    std::string leftColumn() const {
        QStringList all;
        const auto* sums = find(u"finder.call.sums"_s);
        if (!sums) return {};
        for (const auto* words : sums->parentWidget()->findChildren<QLabel*>()) {
            if (words->isVisible()) all.append(words->text());
        }
        return all.join(u' ').toStdString();
    }
    void cantTell() {
        if (qobject_cast<QLineEdit*>(QApplication::focusWidget()))
            key(Qt::Key_Return);
        else
            choose(u"can't do it"_s);
    }
    /// Short name of the check in hand, as on the way.
    QString inHand() const {
        const auto* node = find<QAbstractButton>(u"finder.way.inHand"_s);
        return node ? node->text() : QString();
    }
    std::string caution(const char* name) const {
        const auto* box = find<CautionBox>(QString::fromLatin1(name));
        EXPECT_TRUE(box) << name;
        return box ? box->text().toStdString() : std::string();
    }
    /// The newest case as it is stored in the file now.
    StoredCase stored() {
        const QString path = window->session().path();
        window.reset();
        auto again = files.open(path);
        EXPECT_TRUE(again);
        const auto& cases = again.value()->cases();
        EXPECT_FALSE(cases.empty());
        return *std::max_element(cases.begin(), cases.end(),
                                 [](const auto& a, const auto& b) { return a.id < b.id; });
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

}  // namespace bw::test
