// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QtCharts/QChart>
#include <QtCharts/QChartView>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <memory>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "core/store/farm_file.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/kit_style.h"
#include "ui/pages/cause_effect/cause_effect_page.h"
#include "ui/shell/main_window.h"

/// How long a redraw takes while something is dragged on the Speed window page, beside a bare Qt
/// Charts window with as many points, and a frame of the running loop. Software rendering,
/// 1280×720. A 60 Hz frame is 16.7 ms.
namespace bw {
namespace {

using namespace Qt::StringLiterals;

/// The demo season's first job on a page, drawn.
class Stage {
  public:
    explicit Stage(const QString& page = u"speed_window"_s)
        : m_settings(m_folder.filePath(u"settings.ini"_s)), m_files(m_folder.path(), m_settings) {
        m_window = std::make_unique<MainWindow>(FrameServices{m_files, m_settings, makePageList()},
                                                std::move(m_files.openDemo()).value());
        m_window->resize(1280, 720);
        m_window->show();
        m_window->showPage(page);
        draw();
    }
    ChartPanel* chart() const {
        return m_window->findChild<ChartPanel*>(u"speedWindow.chart.pressure"_s);
    }
    CauseEffectPage* loop() const { return m_window->findChild<CauseEffectPage*>(); }
    /// All that waits, layouts and paint events, until the picture stands.
    void draw() {
        for (int i = 0; i < 3; ++i) QApplication::processEvents();
    }

  private:
    QTemporaryDir m_folder;
    Settings m_settings;
    FarmFiles m_files;
    std::unique_ptr<MainWindow> m_window;
};

void CursorDragged(benchmark::State& state) {
    Stage stage;
    ChartPanel* chart = stage.chart();
    double x = 10.0;
    for (auto _ : state) {
        x = x > 16.0 ? 10.0 : x + 0.1;
        Q_EMIT chart->cursorMoved(x);
        stage.draw();
    }
}
BENCHMARK(CursorDragged)->Unit(benchmark::kMillisecond);

void FloorDragged(benchmark::State& state) {
    Stage stage;
    ChartPanel* chart = stage.chart();
    double y = 18.0;
    for (auto _ : state) {
        y = y > 40.0 ? 18.0 : y + 1.0;
        Q_EMIT chart->levelMoved(y);
        stage.draw();
    }
}
BENCHMARK(FloorDragged)->Unit(benchmark::kMillisecond);

/// One frame of the running loop: steps of a 60th of a second times the factor, all charts redrawn;
/// every fifteenth frame the figures and the sentence too. 0: traces, 1: traces with a second run
/// of 300 s at 20 times.
void LoopFrame(benchmark::State& state) {
    Stage stage(u"cause_effect"_s);
    double now = 0.0;
    stage.loop()->setClock([&now] { return now; });
    if (state.range(0) == 1) {
        stage.loop()->findChild<QComboBox*>(u"causeEffect.bar.beside"_s)->activated(2);
        stage.loop()->findChild<QAbstractButton*>(u"causeEffect.bar.x20"_s)->click();
    }
    for (int i = 0; i < 400; ++i) {
        now += 0.25;
        stage.loop()->tick();
    }
    stage.draw();
    for (auto _ : state) {
        now += 1.0 / 60;
        stage.loop()->tick();
        stage.draw();
    }
}
BENCHMARK(LoopFrame)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

/// As many curves and points, one of them replaced a frame; nothing else in the window.
void BareQtCharts(benchmark::State& state) {
    Stage stage;
    const ChartData data = stage.chart()->data();
    auto* chart = new QChart;
    auto* x = new QValueAxis;
    auto* y = new QValueAxis;
    x->setRange(data.x.from, data.x.to);
    y->setRange(data.y.from, data.y.to);
    chart->addAxis(x, Qt::AlignBottom);
    chart->addAxis(y, Qt::AlignLeft);
    std::vector<QLineSeries*> series;
    for (const auto& curve : data.curves) {
        auto* line = new QLineSeries;
        line->replace(QList<QPointF>(curve.points.begin(), curve.points.end()));
        chart->addSeries(line);
        line->attachAxis(x);
        line->attachAxis(y);
        series.push_back(line);
    }
    QChartView view(chart);
    view.resize(stage.chart()->size());
    view.show();
    stage.draw();
    bool isUp = false;
    for (auto _ : state) {
        isUp = !isUp;
        QList<QPointF> points = series.back()->points();
        for (QPointF& p : points) p.ry() += isUp ? 0.5 : -0.5;
        series.back()->replace(points);
        stage.draw();
    }
}
BENCHMARK(BareQtCharts)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace bw

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    bw::dressApplication(true);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
