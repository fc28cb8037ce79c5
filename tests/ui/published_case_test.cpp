// SPDX-License-Identifier: GPL-3.0-or-later
// A published case entered by hand on the screens, from an empty file to the chart.
// Iowa State University Extension, Integrated Crop Management News 844: a sprayer that goes from 12
// to 15 mph at 40 psi needs 63 psi (exact by the square law: 62.5).
#include <QHeaderView>
#include <QTableView>

#include "core/units/unit.h"
#include "tests/ui/machine_fixture.h"
#include "ui/kit/chart_panel.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

class PublishedCase : public test::MachinePageTest {
  protected:
    void SetUp() override { start(false); }

    /// What a window manager does when a list that dropped down has closed.
    void goTo(Qt::Key number) {
        QApplication::setActiveWindow(&window());
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window()));
        QTest::keyClick(&window(), number, Qt::ControlModifier);
        QApplication::processEvents();
    }

    void enterMachine() {
        key(Qt::Key_3);  // self-propelled
        choose("machine.header.units", "US");
        write("machine.name.name", "Published case");
        write("machine.boom.spacing", "20 in");
        write("machine.boom.sections", "20, 20, 20");
    }
    void enterNozzle() {
        goTo(Qt::Key_2);
        ASSERT_TRUE(QTest::qWaitFor([&] { return isSeen("nozzles.list.table"); }));
        click("nozzles.tools.add");
        write("nozzles.form.name.line", "Case nozzle");
        // 10 gal/ac at 12 mph on 20 in is 0.40404 gal/min (gal/min = gal/ac · mph · in / 5940): 40
        // psi by the case.
        write("nozzles.form.flow.line", "0.40404 gal/min");
        write("nozzles.form.at.line", "40 psi");
        write("nozzles.form.pressure_min.line", "15 psi");
        write("nozzles.form.pressure_max.line", "90 psi");
    }
    int column(const QTableView& table, const QString& heading) {
        for (int i = 0; i < table.model()->columnCount(); ++i) {
            if (table.model()->headerData(i, Qt::Horizontal).toString() == heading) return i;
        }
        ADD_FAILURE() << heading.toStdString();
        return 0;
    }
    void enterJob() {
        goTo(Qt::Key_3);
        ASSERT_TRUE(QTest::qWaitFor([&] { return isSeen("season.jobs.table"); }));
        auto* table = qobject_cast<QTableView*>(seen("season.jobs.table"));
        ASSERT_TRUE(table);
        int row = -1;
        for (int i = 0; i < table->model()->rowCount(); ++i) {
            if (table->model()->index(i, 0).data().toString().startsWith(u"New job"_s)) row = i;
        }
        ASSERT_GE(row, 0);
        const auto put = [&](const QString& heading, const QString& text) {
            const QModelIndex cell = table->model()->index(row, column(*table, heading));
            table->scrollTo(cell);
            QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                              table->visualRect(cell).center());
            for (const QChar c : text) QTest::keyClicks(QApplication::focusWidget(), QString(c));
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
            QApplication::processEvents();
        };
        put(u"Job"_s, u"From 12 to 15 mph"_s);
        put(u"Rate"_s, u"10"_s);
        put(u"Slow"_s, u"12"_s);
        put(u"Usual"_s, u"12"_s);
        put(u"Fast"_s, u"15"_s);
    }
};

TEST_F(PublishedCase, TwelveToFifteenMilesAnHourNeedsSixtyThreePsi) {
    enterMachine();
    enterNozzle();
    enterJob();
    ASSERT_EQ(window().session().season().jobs.size(), 1U);
    goTo(Qt::Key_4);
    ASSERT_TRUE(QTest::qWaitFor([&] { return isSeen("speedWindow.cursor.sensor"); }))
        << window().currentPageId().toStdString();
    // The cursor starts at the usual speed.
    EXPECT_EQ(shown("speedWindow.cursor.speed"), u"12"_s);
    EXPECT_EQ(shown("speedWindow.cursor.sensor"), u"40"_s);
    auto* chart = qobject_cast<ChartPanel*>(seen("speedWindow.chart.pressure"));
    ASSERT_TRUE(chart);
    const auto& points = chart->data().curves.front().points;
    EXPECT_FALSE(points.empty());
    QWidget* plot = chart->findChild<QWidget*>();
    plot->setFocus();
    for (int i = 0; i < 200 && shown("speedWindow.cursor.speed") != u"15"_s; ++i)
        QTest::keyClick(plot, Qt::Key_Right);
    EXPECT_EQ(shown("speedWindow.cursor.speed"), u"15"_s);
    EXPECT_EQ(shown("speedWindow.cursor.sensor"), u"62.5"_s);
}

}  // namespace
}  // namespace bw
