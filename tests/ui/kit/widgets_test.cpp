// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QSignalSpy>
#include <QStandardItemModel>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/prompts.h"
#include "ui/kit/section.h"
#include "ui/kit/span_bar.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

TEST(ChoiceBoxWheel, IsIgnoredUnlessFocused) {
    ChoiceBox box;
    box.addItems({u"one"_s, u"two"_s});
    box.show();
    const QPointF at(5, 5);
    QWheelEvent turn(at, box.mapToGlobal(at), {}, QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                     Qt::NoScrollPhase, false);
    QApplication::sendEvent(&box, &turn);
    EXPECT_EQ(box.currentIndex(), 0);
    EXPECT_FALSE(turn.isAccepted());
    box.addItem(u"three"_s, 3);
    QSignalSpy changes(&box, &QComboBox::currentIndexChanged);
    EXPECT_EQ(box.setCurrentData(3), 2);
    EXPECT_EQ(changes.count(), 0);
}

TEST(SegmentedButtonsKeys, ChooseByKeyAndMouse) {
    QWidget window;
    auto* row = new QVBoxLayout(&window);
    auto* choice = new SegmentedButtons;
    choice->addChoice(u"Pressure"_s, QKeySequence(u"Alt+1"_s));
    choice->addChoice(u"Rate"_s, QKeySequence(u"Alt+2"_s));
    row->addWidget(choice);
    window.show();
    QApplication::setActiveWindow(&window);
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    EXPECT_EQ(choice->currentIndex(), 0);
    QSignalSpy changes(choice, &SegmentedButtons::currentIndexChanged);
    QTest::keyClick(&window, Qt::Key_2, Qt::AltModifier);
    EXPECT_EQ(choice->currentIndex(), 1);
    QTest::mouseClick(choice->button(0), Qt::LeftButton);
    EXPECT_EQ(changes.count(), 2);
}

TEST(CautionBoxRules, GrowsWithItsTextAndIsHeard) {
    QWidget window;
    auto* column = new QVBoxLayout(&window);
    auto* box = new CautionBox;
    column->addWidget(box);
    column->addStretch();
    box->setTexts(cautionTexts({u"C1"_s, u"C2"_s}));
    window.resize(900, 400);
    window.show();
    const int wide = box->heightForWidth(900), narrow = box->heightForWidth(300);
    EXPECT_GT(narrow, wide);
    EXPECT_GE(box->height(), wide - 2) << "never cut off";
    EXPECT_TRUE(box->text().startsWith(u"Caution. Stop first."_s));
    EXPECT_TRUE(box->accessibleName().contains(u"wet with the product"_s));
    box->setTexts({});
    EXPECT_TRUE(box->isHidden());
}

TEST(CautionTexts, AllThirtyAreThere) {
    for (int i = 1; i <= 30; ++i) {
        const QString text = cautionText(u"C%1"_s.arg(i));
        EXPECT_FALSE(text.startsWith(u"&lt;"_s)) << i;
        EXPECT_GT(text.size(), 30) << i;
    }
    EXPECT_TRUE(cautionText(u"C31"_s).startsWith(u"&lt;"_s));
}

TEST(SectionFolding, ByKeyKeepsHeaderAndHidesBody) {
    Section section(u"Boom"_s);
    auto* inside = new QPushButton(u"inside"_s);
    section.body()->addWidget(inside);
    section.show();
    section.header()->setFocus();
    QTest::keyClick(section.header(), Qt::Key_Space);
    EXPECT_TRUE(section.isFolded());
    EXPECT_FALSE(inside->isVisible());
    QTest::mouseClick(section.header(), Qt::LeftButton);
    EXPECT_TRUE(inside->isVisible());
}

TEST(EvidenceLinks, AreGivenBackAndTextIsEscaped) {
    EvidenceColumn column;
    EvidenceRow row;
    row.icon = u"pump"_s;
    row.strong = u"under <2 bar>"_s;
    row.linkText = u"Test"_s;
    row.link = u"yard:y1"_s;
    column.setVerdict(u"Holds"_s, {}, Tone::Ok);
    column.setSections({{u"Rests on"_s, {row}}});
    column.resize(316, 500);
    column.show();
    QSignalSpy links(&column, &EvidenceColumn::linkActivated);
    bool found = false;
    for (auto* label : column.findChildren<QLabel*>()) {
        if (!label->text().contains(u"yard:y1"_s)) continue;
        found = true;
        EXPECT_TRUE(label->text().contains(u"&lt;2 bar&gt;"_s));
        label->setFocus();
        QTest::keyClick(label, Qt::Key_Tab);
        Q_EMIT label->linkActivated(u"yard:y1"_s);
    }
    EXPECT_TRUE(found);
    EXPECT_EQ(links.count(), 1);
    EXPECT_EQ(column.verdict()->title(), u"Holds"_s);
}

QStandardItemModel* table(QObject* parent) {
    auto* model = new QStandardItemModel(3, 3, parent);
    for (int r = 0; r < 3; ++r) {
        for (int c = 0; c < 3; ++c)
            model->setItem(r, c, new QStandardItem(QString::number(r * 10 + c)));
    }
    model->item(0, 0)->setData(true, GroupRole);
    return model;
}

TEST(DataTableKeys, CopyPasteDeleteFill) {
    DataTable view;
    view.setModel(table(&view));
    view.show();
    EXPECT_EQ(view.columnSpan(0, 0), 3) << "a group row spans";
    QApplication::clipboard()->setText(u"5\t6"_s);
    QSignalSpy pasted(&view, &DataTable::pasted), deleted(&view, &DataTable::deletePressed),
        filled(&view, &DataTable::fillDownPressed);
    view.setCurrentIndex(view.model()->index(1, 1));
    QTest::keyClick(&view, Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(pasted.count(), 1);
    EXPECT_EQ(pasted.first().first().toString(), u"5\t6"_s);
    QTest::keyClick(&view, Qt::Key_Delete);
    QTest::keyClick(&view, Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(deleted.count(), 1);
    EXPECT_EQ(filled.count(), 1);
    QTest::keyClick(&view, Qt::Key_Down, Qt::ShiftModifier);
    QTest::keyClick(&view, Qt::Key_Right, Qt::ShiftModifier);
    QTest::keyClick(&view, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QApplication::clipboard()->text(), u"11\t12\n21\t22\n"_s);
}

TEST(SpanBarDrawing, PaintsTheHoldingPartInOk) {
    SpanBar bar;
    Span span;
    span.from = 0;
    span.to = 10;
    span.low = 4;
    span.high = 8;
    span.slow = 5;
    span.usual = 6;
    span.fast = 7;
    span.holds = u"holds 150 L/ha"_s;
    bar.setRoom(0, 0);
    bar.setSpan(span);
    bar.resize(500, spanHeight());
    const QImage image = bar.grab().toImage();
    EXPECT_EQ(image.pixelColor(300, px(20)), color(Role::Ok));
    EXPECT_NE(image.pixelColor(100, px(20)), color(Role::Ok));
    EXPECT_NE(image.pixelColor(450, px(20)), color(Role::Ok));
    EXPECT_TRUE(bar.accessibleDescription().contains(u"150 L/ha"_s));
}

TEST(OriginWords, SayWhereAValueCameFrom) {
    EXPECT_EQ(originWord(Origin::Measured), u"measured"_s);
    EXPECT_EQ(originWord(Origin::Handbook), u"from the handbook"_s);
    EXPECT_EQ(originWord(Origin::Assumed), u"assumed"_s);
    EXPECT_EQ(originWord({}), u"not known"_s);
}

TEST(ScriptedAnswers, UnexpectedQuestionsTakeTheWayOut) {
    ScriptedPrompts script;
    usePrompts(&script);
    script.willTake(0);
    EXPECT_EQ(prompts().ask(nullptr, {u"t"_s, u"x"_s, {}, {u"yes"_s, u"no"_s}, false}), 0);
    EXPECT_EQ(prompts().ask(nullptr, {u"t"_s, u"x"_s, {}, {u"yes"_s, u"no"_s}, false}), 1);
    EXPECT_EQ(script.unexpected(), 1);
    usePrompts(nullptr);
}

}  // namespace
}  // namespace bw
