// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/chart_panel.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QMimeData>
#include <QTest>
#include <limits>

#include "ui/kit/chart_view.h"
#include "ui/kit/hatch.h"

namespace bw {
namespace {

ChartData straightLine() {
    ChartData data;
    data.x = {0, 10, {}, {}, QStringLiteral("km/h")};
    data.y = {0, 8, {}, QStringLiteral("Pressure, bar"), {}};
    ChartCurve curve;
    curve.name = QStringLiteral("03");
    curve.points = {{0, 0}, {10, 8}};
    curve.width = 4;
    data.curves.push_back(curve);
    data.name = QStringLiteral("Pressure against speed");
    data.summary = QStringLiteral("One curve.");
    return data;
}

bool isNear(const QColor& a, const QColor& b) {
    return std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) +
               std::abs(a.blue() - b.blue()) <
           40;
}

TEST(ChartTicks, AreRoundAndInside) {
    EXPECT_EQ(niceTicks(0, 8, 7), (std::vector<double>{0, 2, 4, 6, 8}));
    EXPECT_EQ(niceTicks(4, 18, 7), (std::vector<double>{4, 6, 8, 10, 12, 14, 16, 18}));
    for (const double t : niceTicks(-0.31, 0.29, 6)) EXPECT_TRUE(t >= -0.31 && t <= 0.29) << t;
    EXPECT_TRUE(niceTicks(1, 1).empty());
    EXPECT_TRUE(niceTicks(0, std::numeric_limits<double>::infinity()).empty());
    const auto [from, to] = niceRange(0.3, 7.2);
    EXPECT_LE(from, 0.3);
    EXPECT_GE(to, 7.2);
}

TEST(ChartThinning, KeepsEndsAndExtremesOfEachColumn) {
    std::vector<QPointF> points;
    for (int i = 0; i <= 20000; ++i) points.emplace_back(i / 20000.0, std::sin(i * 0.5));
    points[7777].setY(42.0);
    const auto thin = thinned(points, 0, 1, 300);
    EXPECT_LE(thin.size(), 1204u);
    EXPECT_EQ(thin.front(), points.front());
    EXPECT_EQ(thin.back(), points.back());
    const auto highest =
        std::max_element(thin.begin(), thin.end(), [](auto& a, auto& b) { return a.y() < b.y(); });
    EXPECT_DOUBLE_EQ(highest->y(), 42.0);
    EXPECT_TRUE(
        std::is_sorted(thin.begin(), thin.end(), [](auto& a, auto& b) { return a.x() < b.x(); }));
}

TEST(ChartThinning, NonFinitePointsPartACurve) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto runs = finiteRuns({{0, 0}, {1, nan}, {2, 2}, {3, 3}, {4, inf}});
    ASSERT_EQ(runs.size(), 2u);
    EXPECT_EQ(runs[1].size(), 2u);
}

TEST(ChartPanelMap, GoesToPixelsAndBack) {
    ChartPanel panel;
    panel.resize(600, 400);
    panel.setData(straightLine());
    panel.show();
    const ChartMap map = panel.map();
    EXPECT_NEAR(map.valueX(map.x(7.3)), 7.3, 1e-9);
    EXPECT_NEAR(map.valueY(map.y(2.1)), 2.1, 1e-9);
    EXPECT_DOUBLE_EQ(map.x(0), map.plot().left());
    EXPECT_DOUBLE_EQ(map.y(8), map.plot().top());
    EXPECT_EQ(map.box(-5, 20, -5, 20), map.plot()) << "clipped to the plot";
}

TEST(ChartPanelDrawing, CurvesAndHooksLandWhereTheMapSays) {
    ChartPanel panel;
    panel.setData(straightLine());
    panel.setUnderlay([](QPainter& painter, const ChartMap& map) {
        painter.fillRect(map.columns(6, 8), map.color(Role::AccentTint));
    });
    ChartMap seen({}, {}, {}, Look::Light, 1);
    panel.setOverlay([&seen](QPainter&, const ChartMap& map) { seen = map; });
    for (const Look look : {Look::Light, Look::Dark}) {
        const QImage image = panel.image({600, 400}, look);
        EXPECT_EQ(seen.look(), look);
        EXPECT_TRUE(
            isNear(image.pixelColor(seen.point({5, 4}).toPoint()), curveStyle(1, look).color));
        EXPECT_TRUE(isNear(image.pixelColor(seen.point({6.7, 1}).toPoint()),
                           color(Role::AccentTint, look)));
        EXPECT_TRUE(
            isNear(image.pixelColor(seen.point({2.7, 7.1}).toPoint()), color(Role::Raised, look)));
    }
}

TEST(ChartPanelCursor, DragsAndWalksWithTheKeys) {
    ChartPanel panel;
    panel.resize(600, 400);
    panel.setData(straightLine());
    panel.setCursorRange(2, 9, 0.5);
    panel.setCursor(5);
    QObject::connect(&panel, &ChartPanel::cursorMoved, &panel,
                     [&panel](double x) { panel.setCursor(x); });
    panel.show();
    QApplication::setActiveWindow(&panel);
    ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
    auto* view = panel.findChild<ChartView*>();
    view->setFocus();
    QTest::keyClick(view, Qt::Key_Right);
    EXPECT_DOUBLE_EQ(*panel.cursor(), 5.5);
    QTest::keyClick(view, Qt::Key_Home);
    EXPECT_DOUBLE_EQ(*panel.cursor(), 2.0);
    QTest::keyClick(view, Qt::Key_Left);
    EXPECT_DOUBLE_EQ(*panel.cursor(), 2.0) << "never outside";
    const ChartMap map = panel.map();
    const auto at = [&map](double x) {
        return QPoint(qRound(map.x(x)), qRound(map.plot().center().y()));
    };
    QTest::mousePress(view->viewport(), Qt::LeftButton, {}, at(2));
    QTest::mouseMove(view->viewport(), at(7));
    QTest::mouseRelease(view->viewport(), Qt::LeftButton, {}, at(7));
    EXPECT_NEAR(*panel.cursor(), 7.0, 0.26);
}

TEST(ChartPanelAccess, SaysItsNameAndCopiesItsTable) {
    ChartPanel panel;
    panel.setData(straightLine());
    auto* view = panel.findChild<ChartView*>();
    EXPECT_EQ(view->accessibleName(), QStringLiteral("Pressure against speed"));
    EXPECT_EQ(view->accessibleDescription(), QStringLiteral("One curve."));
    panel.resize(300, 200);
    panel.copy();
    EXPECT_TRUE(QApplication::clipboard()->text().contains(QStringLiteral("\t10\t8")));
    EXPECT_TRUE(QApplication::clipboard()->mimeData()->hasImage());
}

TEST(Hatch, CoversItsAreaAndNothingElse) {
    for (const Hatch hatch : {Hatch::Rising, Hatch::Falling, Hatch::Upright, Hatch::Dots}) {
        QImage image(120, 120, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintHatch(painter, QRectF(20, 20, 80, 80), hatch, QColor(Qt::black), QColor(Qt::yellow));
        painter.end();
        int lines = 0;
        for (int i = 0; i < 120 * 120; ++i) {
            const int x = i % 120, y = i / 120;
            const bool inside = x >= 20 && x < 100 && y >= 20 && y < 100;
            const QColor c = image.pixelColor(x, y);
            if (inside && c.red() < 200) ++lines;
            if (inside) continue;
            EXPECT_EQ(c, QColor(Qt::white)) << x << "," << y;
        }
        EXPECT_GT(lines, 60) << static_cast<int>(hatch);
        EXPECT_LT(lines, 3000) << static_cast<int>(hatch);
    }
}

}  // namespace
}  // namespace bw
