// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QLabel>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "tests/ui/print/pdf_tools.h"
#include "ui/kit/prompts.h"
#include "ui/print/sheet_preview.h"
#include "ui/shell/main_window.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;
using testing::HasSubstr;

/// The program's window on the demo season; the print dialog by keys and mouse.
class PrintDialogTest : public testing::Test {
  protected:
    PrintDialogTest()
        : settings(folder.filePath(u"settings.ini"_s)), files(folder.path(), settings) {
        usePrompts(&script);
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(files.openDemo()).value());
        window->resize(1280, 720);
        window->show();
        activate(window.get());
        QTest::keyClick(window.get(), Qt::Key_4, Qt::ControlModifier);
        settle();
    }
    ~PrintDialogTest() override {
        usePrinterChooser({});
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }
    static void settle() {
        for (int i = 0; i < 4; ++i) QApplication::processEvents();
    }
    static void activate(QWidget* widget) {
        QApplication::setActiveWindow(widget);
        EXPECT_TRUE(QTest::qWaitForWindowActive(widget));
    }
    void openDialog() {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_P, Qt::ControlModifier);
        ASSERT_TRUE(QTest::qWaitFor([this] { return dialog() && dialog()->isVisible(); }));
        activate(dialog());
        settle();
    }
    QDialog* dialog() const { return window->findChild<QDialog*>(u"print"_s); }
    template <class W>
    W* find(const char* name) const {
        W* found = dialog()->findChild<W*>(QString::fromLatin1(name));
        EXPECT_TRUE(found && found->isVisible()) << name;
        return found;
    }
    void close() {
        QTest::keyClick(dialog(), Qt::Key_Escape);
        ASSERT_TRUE(QTest::qWaitFor([this] { return dialog() == nullptr; }));
        activate(window.get());
        settle();
    }
    std::string status() const {
        const auto* label = dialog()->findChild<QLabel*>(u"print.status"_s);
        return label && label->isVisible() ? label->text().toStdString() : std::string();
    }
    void key(Qt::Key k, Qt::KeyboardModifiers m = Qt::NoModifier) {
        QTest::keyClick(dialog()->focusWidget(), k, m);
        settle();
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

TEST_F(PrintDialogTest, TheCardOfTheJobInHandIsSavedAsPdfByKeysAlone) {
    if (!hasPdfTools()) GTEST_SKIP() << "poppler-utils are not installed";
    openDialog();
    EXPECT_TRUE(find<QComboBox>("print.sheet")->currentText().startsWith(u"Cab card of"_s));
    // The demo's first machine reads US units: Letter.
    EXPECT_EQ(find<QComboBox>("print.paper")->currentText(), u"Letter"_s);
    EXPECT_EQ(find<QLabel>("print.count")->text(), u"Page 1 of 1"_s);
    const QString path = folder.filePath(u"card.pdf"_s);
    script.willChoose(path);
    key(Qt::Key_S, Qt::ControlModifier);
    EXPECT_THAT(status(), HasSubstr("Saved: card.pdf"));
    EXPECT_THAT(textOf(path).toStdString(), HasSubstr("Not a spray record"));
    EXPECT_THAT(pdfInfo(path, u"Page size"_s).toStdString(), HasSubstr("792 x 612"));
    EXPECT_THAT(pdfInfo(path, u"Title"_s).toStdString(), HasSubstr("Cab card"));
    close();
}

TEST_F(PrintDialogTest, PaperIsRememberedForTheUnitsAndTheSheetTurns) {
    if (!hasPdfTools()) GTEST_SKIP() << "poppler-utils are not installed";
    openDialog();
    find<QComboBox>("print.paper")->setFocus(Qt::TabFocusReason);
    key(Qt::Key_End);
    EXPECT_EQ(find<QComboBox>("print.paper")->currentText(), u"Half letter"_s);
    QTest::mouseClick(find<QAbstractButton>("print.turn.upright"), Qt::LeftButton);
    const QString path = folder.filePath(u"half.pdf"_s);
    script.willChoose(path);
    key(Qt::Key_S, Qt::ControlModifier);
    EXPECT_THAT(pdfInfo(path, u"Page size"_s).toStdString(), HasSubstr("396 x 612"));
    close();
    openDialog();
    EXPECT_EQ(find<QComboBox>("print.paper")->currentText(), u"Half letter"_s);
    close();
}

TEST_F(PrintDialogTest, AllCardsAndTheTableOfJobs) {
    openDialog();
    EXPECT_FALSE(dialog()->findChild<QAbstractButton*>(u"print.csv"_s)->isVisible());
    find<QComboBox>("print.sheet")->setFocus(Qt::TabFocusReason);
    key(Qt::Key_Down);
    EXPECT_EQ(find<QComboBox>("print.sheet")->currentText(), u"Cab cards of all jobs"_s);
    EXPECT_EQ(find<QLabel>("print.count")->text(), u"Page 1 of 6"_s);
    find<SheetPreview>("print.preview")->setFocus(Qt::TabFocusReason);
    key(Qt::Key_PageDown);
    EXPECT_EQ(find<QLabel>("print.count")->text(), u"Page 2 of 6"_s);
    key(Qt::Key_End);
    EXPECT_EQ(find<QLabel>("print.count")->text(), u"Page 6 of 6"_s);
    find<QComboBox>("print.sheet")->setFocus(Qt::TabFocusReason);
    key(Qt::Key_Down);
    const QString path = folder.filePath(u"jobs"_s);  // gets its ending
    script.willChoose(path);
    QTest::mouseClick(find<QAbstractButton>("print.csv"), Qt::LeftButton);
    QFile csv(path + u".csv"_s);
    ASSERT_TRUE(csv.open(QIODevice::ReadOnly));
    const std::string text = csv.readAll().toStdString();
    EXPECT_THAT(text,
                HasSubstr("\r\n\"Stubble weeds, autumn\",8,Demo low-drift fan 04 (04 red),1"));
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 7);
    close();
}

TEST_F(PrintDialogTest, APathThatCannotBeWrittenIsToldAndThePreviewStays) {
    openDialog();
    script.willChoose(folder.filePath(u"nowhere/card.pdf"_s));
    script.willTake(0);
    key(Qt::Key_S, Qt::ControlModifier);
    ASSERT_EQ(script.asked().size(), 1);
    EXPECT_THAT(script.asked().first().text.toStdString(), HasSubstr("could not be written"));
    EXPECT_THAT(status(), HasSubstr("No PDF was saved"));
    EXPECT_TRUE(dialog()->isVisible());
    close();
}

TEST_F(PrintDialogTest, PrintsOnThePrinterThatWasChosen) {
    if (!hasPdfTools()) GTEST_SKIP() << "poppler-utils are not installed";
    const QString path = folder.filePath(u"printed.pdf"_s);
    bool mayPrint = false;
    usePrinterChooser([&](QPrinter& printer, QWidget*) {
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(path);
        return mayPrint;
    });
    openDialog();
    key(Qt::Key_P, Qt::ControlModifier);
    EXPECT_FALSE(QFile::exists(path));  // given up
    EXPECT_EQ(status(), "");
    mayPrint = true;
    key(Qt::Key_P, Qt::ControlModifier);
    EXPECT_THAT(status(), HasSubstr("Sent to the printer"));
    const std::string text = textOf(path).toStdString();
    EXPECT_THAT(text, HasSubstr("Stop and ring if"));
    EXPECT_THAT(text, HasSubstr("1 of 1"));
    EXPECT_THAT(pdfInfo(path, u"Page size"_s).toStdString(), HasSubstr("792 x 612"));
    close();
}

TEST_F(PrintDialogTest, EverythingHasANameAndIsReachedByTab) {
    openDialog();
    QStringList reached;
    for (int i = 0; i < 12; ++i) {
        if (QWidget* focus = dialog()->focusWidget()) {
            reached.append(focus->objectName());
            const auto* button = qobject_cast<QAbstractButton*>(focus);
            EXPECT_FALSE(focus->accessibleName().isEmpty() && (!button || button->text().isEmpty()))
                << focus->objectName().toStdString();
        }
        key(Qt::Key_Tab);
    }
    for (const char* name :
         {"print.preview", "print.sheet", "print.paper", "print.print", "print.pdf", "print.close"})
        EXPECT_TRUE(reached.contains(QLatin1StringView(name))) << name;
    close();
}

}  // namespace
}  // namespace bw::test
