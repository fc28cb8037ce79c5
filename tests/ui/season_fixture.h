// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "app/farm_files.h"
#include "core/store/farm_file.h"
#include "tests/support/builders.h"
#include "ui/kit/messages.h"
#include "ui/kit/prompts.h"
#include "ui/pages/season/season_page.h"
#include "ui/shell/main_window.h"

namespace bw::test {

/// Stands where a page of another name would be: says that it was reached.
class ReachedPage : public Page {
  public:
    ReachedPage(FarmSession& session, QString name) : Page(session), m_name(std::move(name)) {}
    QString title() const override { return m_name; }
    void refresh() override {}

  private:
    QString m_name;
};

/// The frame with the season page on a small invented farm: a metric machine "Trailed" with two
/// jobs, a US machine "Self-propelled" without any, three nozzles. The machines have 24 nozzles on
/// 0.5 m, no losses and no limits: at 150 L/ha one km/h needs 0.125 L/min from each nozzle.
class SeasonTest : public testing::Test {
  protected:
    SeasonTest()
        : settings(folder.filePath(QStringLiteral("settings.ini"))),
          files(folder.path(), settings) {
        usePrompts(&script);
    }
    ~SeasonTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }

    static Nozzle own(const char* name, const char* family, const char* code, double flow) {
        Nozzle n = build::nozzle(build::lpm(flow));
        n.name = name;
        n.family = family;
        n.sizeCode = code;
        n.pressureMin = Sourced<Pressure>(build::bar(1));
        n.pressureMax = Sourced<Pressure>(build::bar(6));
        n.droplets =
            Sourced<std::vector<DropletBand>>({{build::bar(1), build::bar(2), DropletCategory::VC},
                                               {build::bar(2), build::bar(6), DropletCategory::C}});
        return n;
    }
    static Job job(const char* name, double rate, double slow, double usual, double fast) {
        Job j = build::job(build::lha(rate), build::kmh(slow), build::kmh(usual), build::kmh(fast));
        j.name = name;
        j.area = Sourced<Area>(make<Area>(40, Unit::Hectare));
        return j;
    }
    /// The starting file, before anything is done on screen.
    virtual std::vector<RecordChange> records() const {
        Machine metric = build::machine(), us = build::machine();
        metric.name = "Trailed";
        us.name = "Self-propelled";
        us.units = UnitSystem::Us;
        Nozzle untested = own("Untested 03", "untested", "03", 1.2);
        untested.droplets.reset();
        return {added(StoredMachine{1, 0, metric}),
                added(StoredMachine{2, 0, us}),
                added(StoredNozzle{1, own("Small 02", "small", "02", 0.8)}),
                added(StoredNozzle{2, own("Fit 03", "fit", "03", 1.2)}),
                added(StoredNozzle{3, untested}),
                added(StoredJob{1, 1, 0, job("Cereals", 150, 8, 10, 12)}),
                added(StoredJob{2, 1, 1, job("Beet", 160, 8, 9, 11)})};
    }
    void open() {
        auto file = FarmFile::inMemory().value();
        EXPECT_TRUE(file->apply(records()));
        window = std::make_unique<MainWindow>(FrameServices{files, settings, pages()},
                                              std::make_unique<FarmSession>(std::move(file)));
        window->resize(1600, 900);
        window->show();
        QApplication::setActiveWindow(window.get());
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
        table = window->findChild<QTableView*>(QStringLiteral("season.jobs.table"));
        matrix = window->findChild<QTableView*>(QStringLiteral("season.matrix.table"));
        ASSERT_TRUE(table && matrix);
    }
    void SetUp() override { open(); }

    static std::vector<PageEntry> pages() {
        const auto reached = [](const QString& id, int number) {
            return PageEntry{id,
                             id,
                             QStringLiteral("window"),
                             {},
                             QKeySequence(QStringLiteral("Ctrl+%1").arg(number)),
                             [id](FarmSession& s) -> Page* { return new ReachedPage(s, id); }};
        };
        return {{QStringLiteral("season"),
                 QStringLiteral("Season"),
                 QStringLiteral("season"),
                 {},
                 QKeySequence(QStringLiteral("Ctrl+3")),
                 [](FarmSession& s) -> Page* { return new SeasonPage(s); }},
                reached(QStringLiteral("machine"), 1),
                reached(QStringLiteral("speed_window"), 4)};
    }

    // What is seen.
    int column(const char* heading) const {
        const auto* model = table->model();
        for (int i = 0; i < model->columnCount(); ++i) {
            if (model->headerData(i, Qt::Horizontal).toString() == QLatin1String(heading)) return i;
        }
        ADD_FAILURE() << "no column " << heading;
        return 0;
    }
    /// The row in which a text stands in the first column; of several the first.
    int row(const QString& name) const {
        for (int i = 0; i < table->model()->rowCount(); ++i) {
            if (shown(i, "Job") == name) return i;
        }
        ADD_FAILURE() << "no row " << name.toStdString();
        return 0;
    }
    QString shown(int atRow, const char* heading) const {
        return table->model()->index(atRow, column(heading)).data().toString();
    }
    QString shown(const char* name, const char* heading) const {
        return shown(row(QString::fromUtf8(name)), heading);
    }
    QStringList names() const {
        QStringList out;
        for (int i = 0; i < table->model()->rowCount(); ++i) out << shown(i, "Job");
        return out;
    }
    QString message() const {
        return window->findChild<QLabel*>(QStringLiteral("season.table.message"))->text();
    }
    QStringList notices() const { return window->notices().texts(); }
    QStringList footTexts() const {
        QStringList out;
        const auto* foot = window->findChild<QWidget*>(QStringLiteral("season.foot"));
        for (const auto* label : foot->findChildren<QLabel*>()) out << label->text();
        return out;
    }

    // What a person does.
    void click(int atRow, const char* heading) {
        const QRect cell = table->visualRect(table->model()->index(atRow, column(heading)));
        QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, cell.center());
    }
    void click(const char* name, const char* heading) {
        click(row(QString::fromUtf8(name)), heading);
    }
    void shiftClick(int atRow, const char* heading) {
        const QRect cell = table->visualRect(table->model()->index(atRow, column(heading)));
        QTest::mouseClick(table->viewport(), Qt::LeftButton, Qt::ShiftModifier, cell.center());
    }
    /// Keys go where the focus is, as they do from a keyboard.
    static void press(int key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    static void type(const char* text) {
        const QString keys = QString::fromUtf8(text);
        // The first key opens the field, the others go into it.
        for (const QChar c : keys) QTest::keyClicks(QApplication::focusWidget(), QString(c));
    }
    static void paste(const char* text) {
        QGuiApplication::clipboard()->setText(QString::fromUtf8(text));
        press(Qt::Key_V, Qt::ControlModifier);
    }
    void typeInto(const char* name, const char* heading, const char* text) {
        click(name, heading);
        type(text);
        press(Qt::Key_Return);
    }
    /// Jobs as the farm file holds them.
    std::vector<Job> stored(RecordId machine = 1) const {
        std::vector<Job> out;
        for (const auto& job : window->session().jobsOf(machine)) out.push_back(job.job);
        return out;
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
    QTableView* table = nullptr;
    QTableView* matrix = nullptr;
};

}  // namespace bw::test
