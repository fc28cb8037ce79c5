// SPDX-License-Identifier: GPL-3.0-or-later
// The Nozzles page by keys and mouse, on a throw-away copy of the demo season.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QComboBox>
#include <QDateTime>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>

#include "app/app_context.h"
#include "app/command_line.h"
#include "ui/kit/metrics.h"
#include "ui/pages/nozzles/text_field.h"
#include "ui/shell/main_window.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

class NozzlesTest : public testing::Test {
  protected:
    void SetUp() override {
        CommandLine line;
        line.dataDir = folder.path();
        line.isDemo = true;
        program = std::make_unique<AppContext>(line);
        window = &program->window();
        window->resize(1280, 720);
        window->show();
        QApplication::setActiveWindow(window);
        ASSERT_TRUE(QTest::qWaitForWindowActive(window));
        QTest::keyClick(window, Qt::Key_2, Qt::ControlModifier);
        ASSERT_TRUE(QTest::qWaitFor([&] {
            return find<QTableView>("nozzles.list.table") &&
                   find<QTableView>("nozzles.list.table")->isVisible();
        }));
    }
    template <class T>
    T* find(const char* name) const {
        return window->findChild<T*>(QString::fromLatin1(name));
    }
    QLineEdit* line(const char* name) const { return find<QLineEdit>(name); }
    void type(const char* field, const char* text) {
        auto* edit = line(field);
        ASSERT_TRUE(edit && edit->isVisible()) << field;
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(edit, QString::fromUtf8(text));
        QTest::keyClick(edit, Qt::Key_Return);
    }
    const Nozzle* stored(const char* name) const { return window->session().nozzleNamed(name); }
    QString heading() const { return find<TextLabel>("nozzles.detail.heading")->text(); }

    QTemporaryDir folder;
    std::unique_ptr<AppContext> program;
    MainWindow* window = nullptr;
};

TEST_F(NozzlesTest, ANozzleFromNothingByKeysAlone) {
    QTest::keyClick(window->focusWidget() ? window->focusWidget() : window, Qt::Key_Insert);
    ASSERT_EQ(heading(), u"New nozzle"_s);
    type("nozzles.form.name.line", "Own fan 03");
    type("nozzles.form.flow.line", "1,18 L/min");
    type("nozzles.form.at.line", "3 bar");
    type("nozzles.form.pressure_min.line", "1 bar");
    type("nozzles.form.pressure_max.line", "6 bar");
    type("nozzles.form.droplets.line", "VC up to 1.6, C up to 3, M up to 6");
    const Nozzle* n = stored("Own fan 03");
    ASSERT_TRUE(n);
    EXPECT_NEAR(in(n->flow->value, Unit::LitrePerMinute), 1.18, 1e-12);
    EXPECT_EQ(n->flow->typed, "1,18 L/min");
    ASSERT_TRUE(n->droplets);
    ASSERT_EQ(n->droplets->value.size(), 3u);
    EXPECT_EQ(n->droplets->value[1].category, DropletCategory::C);
    EXPECT_NEAR(in(n->droplets->value[1].to, Unit::Bar), 3.0,
                1e-12);  // in the unit of the nozzle's own sheet
    EXPECT_EQ(heading(), u"Own fan 03"_s);
    for (int i = 0; i < 7; ++i) QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(stored("Own fan 03"));
    EXPECT_FALSE(stored("New nozzle"));
}

TEST_F(NozzlesTest, BadEntriesSayWhyAndChangeNothing) {
    const Nozzle before = *stored("Demo plain fan 03");
    type("nozzles.form.droplets.line", "Q up to 2");
    EXPECT_TRUE(find<TextField>("nozzles.form.droplets")->problem().contains(u"Q"_s));
    type("nozzles.form.droplets.line", "M up to 3, F up to 2");
    EXPECT_FALSE(find<TextField>("nozzles.form.droplets")->problem().isEmpty());
    type("nozzles.form.flow.line", "abc");
    type("nozzles.form.name.line", " ");
    EXPECT_FALSE(find<TextField>("nozzles.form.name")->problem().isEmpty());
    EXPECT_EQ(*stored("Demo plain fan 03"), before);
}

TEST_F(NozzlesTest, ARefusedEntryStaysWhileOtherFieldsAreFilled) {
    type("nozzles.form.droplets.line", "Q up to 2");
    type("nozzles.form.pressure_max.line", "abc");
    type("nozzles.form.pressure_min.line", "1.2 bar");
    EXPECT_NEAR(in(stored("Demo plain fan 03")->pressureMin->value, Unit::Bar), 1.2, 1e-12);
    EXPECT_EQ(line("nozzles.form.droplets.line")->text(), u"Q up to 2"_s);
    EXPECT_TRUE(find<TextField>("nozzles.form.droplets")->problem().contains(u"Q"_s));
    EXPECT_EQ(line("nozzles.form.pressure_max.line")->text(), u"abc"_s);
    // Another nozzle does not show what was refused for this one.
    auto* list = find<QTableView>("nozzles.list.table");
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Down);
    EXPECT_NE(heading(), u"Demo plain fan 03"_s);
    EXPECT_NE(line("nozzles.form.droplets.line")->text(), u"Q up to 2"_s);
    EXPECT_NE(line("nozzles.form.pressure_max.line")->text(), u"abc"_s);
}

TEST_F(NozzlesTest, WhatIsSetToMeasuredBearsTheDay) {
    window->session().setClock([] { return QDate(2031, 4, 5).startOfDay(); });
    const auto set = [&](const char* name, Qt::Key key) {
        auto* box = find<QComboBox>(name);
        ASSERT_TRUE(box && box->isVisible()) << name;
        box->setFocus();
        QTest::keyClick(box, key);
    };
    set("nozzles.form.flow.origin", Qt::Key_Home);  // measured comes first
    set("nozzles.form.droplets.origin", Qt::Key_Home);
    const Nozzle* n = stored("Demo plain fan 03");
    ASSERT_TRUE(n && n->flow && n->droplets);
    EXPECT_EQ(n->flow->origin, Origin::Measured);
    EXPECT_EQ(n->flow->date, "2031-04-05");
    EXPECT_EQ(n->droplets->origin, Origin::Measured);
    EXPECT_EQ(n->droplets->date, "2031-04-05");
    set("nozzles.form.droplets.origin", Qt::Key_End);
    EXPECT_EQ(stored("Demo plain fan 03")->droplets->origin, Origin::Assumed);
    EXPECT_EQ(stored("Demo plain fan 03")->droplets->date, "");
}

TEST_F(NozzlesTest, ASizeOfTheStandardIsReadOnlyAndCanBeCopied) {
    type("nozzles.tools.filter", "Size 04 (US");
    EXPECT_TRUE(heading().contains(u"a size, not a nozzle"_s)) << heading().toStdString();
    EXPECT_FALSE(line("nozzles.form.name.line")->isEnabled());
    auto* copy = find<QAbstractButton>("nozzles.tools.copy");
    QTest::mouseClick(copy, Qt::LeftButton);
    EXPECT_TRUE(stored("Size 04 (US record), copy"));
    EXPECT_TRUE(line("nozzles.form.name.line")->isEnabled());
}

TEST_F(NozzlesTest, PassageAndMaterialAreKeptAndTheMeshFollowsThePassage) {
    auto* notes = find<QWidget>("nozzles.detail.notes");
    const auto says = [&](const QString& words) {
        const auto labels = notes->findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
            return label->isVisible() && label->text().contains(words);
        });
    };
    ASSERT_TRUE(QTest::qWaitFor([&] { return says(u"For size 03 a strainer of 50 mesh"_s); }));
    type("nozzles.form.passage.line", "0,2 mm");
    auto* material = find<QComboBox>("nozzles.form.material");
    ASSERT_TRUE(material && material->isVisible());
    ASSERT_EQ(material->currentText(), u"not known"_s);
    material->setFocus();
    QTest::keyClick(material, Qt::Key_C);  // ceramic
    const Nozzle* n = stored("Demo plain fan 03");
    ASSERT_TRUE(n && n->passage && n->material);
    EXPECT_NEAR(in(n->passage->value, Unit::Millimetre), 0.2, 1e-12);
    EXPECT_EQ(n->material->value, NozzleMaterial::Ceramic);
    EXPECT_TRUE(QTest::qWaitFor([&] { return says(u"Its smallest passage is 0.008 in"_s); }));
    QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(stored("Demo plain fan 03")->material);
    EXPECT_EQ(material->currentText(), u"not known"_s);
    QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(stored("Demo plain fan 03")->passage);
    EXPECT_TRUE(QTest::qWaitFor([&] { return says(u"For size 03 a strainer of 50 mesh"_s); }));
}

TEST_F(NozzlesTest, RemoveAndTakeBack) {
    ASSERT_TRUE(stored("Demo plain fan 03"));
    QTest::mouseClick(find<QAbstractButton>("nozzles.tools.remove"), Qt::LeftButton);
    EXPECT_FALSE(stored("Demo plain fan 03"));
    QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(stored("Demo plain fan 03"));
}

}  // namespace
}  // namespace bw
