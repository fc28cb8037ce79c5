// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/quantity_edit.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "core/units/quantity.h"
#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

/// A field for pressure in bar, and a second widget to go to.
class QuantityEditTest : public testing::Test {
  protected:
    QuantityEditTest() {
        auto* column = new QVBoxLayout(&window);
        field = new QuantityEdit(Dimension::Pressure, Unit::Bar);
        field->setLabel(QStringLiteral("Floor"));
        other = new QLineEdit;
        column->addWidget(field);
        column->addWidget(other);
        QObject::connect(field, &QuantityEdit::committed, &window,
                         [this](AnyQuantity quantity, const QString& typed) {
                             ++commits;
                             committed = toUnit(quantity, Unit::Bar);
                             committedText = typed;
                         });
        QObject::connect(field, &QuantityEdit::refused, &window,
                         [this](const QString& code) { codes.append(code); });
        window.show();
        QApplication::setActiveWindow(&window);
        field->setFocus();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }

    void type(const char* text) {
        QTest::keyClick(field->line(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(field->line(), Qt::Key_Delete);
        QTest::keyClicks(field->line(), QString::fromUtf8(text));
    }
    void enter(const char* text) {
        type(text);
        QTest::keyClick(field->line(), Qt::Key_Return);
    }

    int commits = 0;
    double committed = 0;
    QString committedText;
    QStringList codes;
    QWidget window;  // last: it commits what is pending when it goes
    QuantityEdit* field;
    QLineEdit* other;
};

TEST_F(QuantityEditTest, EitherDecimalMarkIsUnderstood) {
    enter("12.5");
    EXPECT_DOUBLE_EQ(committed, 12.5);
    enter("12,5");
    EXPECT_EQ(commits, 2);
    EXPECT_DOUBLE_EQ(committed, 12.5);
    EXPECT_FALSE(field->hasProblem());
}

TEST_F(QuantityEditTest, ReaderOfCommasMayTypeEither) {
    field->setDecimalMark(',');
    enter("12.5");
    EXPECT_DOUBLE_EQ(committed, 12.5);
    EXPECT_EQ(field->line()->text(), QStringLiteral("12,5"));
    enter("2,8");
    EXPECT_DOUBLE_EQ(committed, 2.8);
    enter("1.250");
    EXPECT_TRUE(field->hasProblem());
    EXPECT_EQ(commits, 2);
}

TEST_F(QuantityEditTest, GroupMarkIsRefusedAndTheOldValueKeptAndNamed) {
    enter("2.8");
    enter("1,250");
    EXPECT_EQ(commits, 1);
    EXPECT_TRUE(field->hasProblem());
    EXPECT_TRUE(field->problemText().contains(QStringLiteral("Kept until mended: 2.8 bar")))
        << field->problemText().toStdString();
    EXPECT_FALSE(field->problemText().contains(QLatin1Char('<')));
    EXPECT_EQ(field->line()->text(), QStringLiteral("1,250"))
        << "what was typed stays to be mended";
    EXPECT_DOUBLE_EQ(toUnit(*field->quantity(), Unit::Bar), 2.8);
}

TEST_F(QuantityEditTest, LettersAndWrongUnitsAreRefusedWithTheirReason) {
    for (const char* text : {"abc", "12x5", "3 km/h", "2 gal", "-1"}) enter(text);
    EXPECT_EQ(commits, 0);
    const QStringList wanted{QStringLiteral("number_letters"), QStringLiteral("unit_unknown"),
                             QStringLiteral("unit_wrong_kind"), QStringLiteral("unit_gallon_which"),
                             QStringLiteral("value_under_zero")};
    EXPECT_EQ(codes, wanted) << codes.join(QLatin1Char(' ')).toStdString();
}

TEST_F(QuantityEditTest, UnitTypedStaysInTheTextAndABareNumberHasTheFieldsUnit) {
    enter("40 psi");
    // 40 psi in bar: 1 psi = 6894.757293168 Pa (NIST SP 811, 2008).
    EXPECT_NEAR(committed, 40 * 6894.757293168 / 1e5, 1e-9);
    EXPECT_EQ(committedText, QStringLiteral("40 psi"));
    EXPECT_EQ(field->line()->text(), QStringLiteral("40 psi"));
    EXPECT_EQ(field->line()->unitText(), QStringLiteral("= 2.76 bar"));
    type("3");
    EXPECT_EQ(field->line()->unitText(), QStringLiteral("bar")) << "the old value's says nothing";
    QTest::keyClick(field->line(), Qt::Key_Return);
    EXPECT_DOUBLE_EQ(committed, 3.0) << "a bare number has the field's unit";
    enter("41 psi");
    EXPECT_NEAR(committed, 41 * 6894.757293168 / 1e5, 1e-9);
    enter("-2");
    EXPECT_EQ(field->line()->unitText(), QStringLiteral("bar"));
    EXPECT_TRUE(field->problemText().contains(QStringLiteral("Kept until mended: 41 psi.")))
        << field->problemText().toStdString();
    enter("2.8 bar");
    EXPECT_DOUBLE_EQ(committed, 2.8);
    EXPECT_EQ(field->line()->unitText(), QStringLiteral("bar"));
}

TEST_F(QuantityEditTest, WhatWasTypedIsShownUnrounded) {
    enter("2.8123456");
    EXPECT_EQ(field->line()->text(), QStringLiteral("2.8123456"));
    field->setQuantity(anyQuantity(Pressure::fromSi(281234.56)));
    EXPECT_EQ(field->line()->text(), QStringLiteral("2.81")) << "computed values are rounded";
}

TEST_F(QuantityEditTest, EscRestoresAndCommitsNothing) {
    enter("2.8");
    type("9");
    QTest::keyClick(field->line(), Qt::Key_Escape);
    EXPECT_EQ(field->line()->text(), QStringLiteral("2.8"));
    QTest::keyClick(field->line(), Qt::Key_Return);
    EXPECT_EQ(commits, 1);
    type("x");
    QTest::keyClick(field->line(), Qt::Key_Return);
    EXPECT_TRUE(field->hasProblem());
    QTest::keyClick(field->line(), Qt::Key_Escape);
    EXPECT_FALSE(field->hasProblem());
}

TEST_F(QuantityEditTest, TabAndLossOfFocusCommit) {
    type("3");
    QTest::keyClick(field->line(), Qt::Key_Tab);
    EXPECT_EQ(commits, 1);
    EXPECT_DOUBLE_EQ(committed, 3.0);
    QTest::mouseClick(field->line(), Qt::LeftButton);
    type("4");
    QTest::mouseClick(other, Qt::LeftButton);
    other->setFocus();
    EXPECT_DOUBLE_EQ(committed, 4.0);
    EXPECT_EQ(commits, 2) << "once each";
}

TEST_F(QuantityEditTest, WheelIsLeftToThePage) {
    enter("2.8");
    const QPointF at(10, 10);
    QWheelEvent turn(at, field->line()->mapToGlobal(at), {}, QPoint(0, 120), Qt::NoButton,
                     Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(field->line(), &turn);
    EXPECT_FALSE(turn.isAccepted());
    EXPECT_EQ(field->line()->text(), QStringLiteral("2.8"));
    EXPECT_EQ(commits, 1);
}

TEST_F(QuantityEditTest, EmptyMeansUnknownWhereThatIsAllowed) {
    enter("2.8");
    QSignalSpy cleared(field, &QuantityEdit::cleared);
    enter("");
    EXPECT_EQ(cleared.count(), 1);
    EXPECT_FALSE(field->quantity().has_value());
    field->setOptional(false);
    enter("2");
    enter("");
    EXPECT_TRUE(field->hasProblem());
    EXPECT_TRUE(field->quantity().has_value());
}

TEST_F(QuantityEditTest, BoundsAreToldInTheUnitTyped) {
    field->setBounds(anyQuantity(Pressure::fromSi(1e5)), anyQuantity(Pressure::fromSi(8e5)));
    enter("9");
    EXPECT_TRUE(field->problemText().contains(QStringLiteral("8 bar")))
        << field->problemText().toStdString();
    enter("8");
    EXPECT_FALSE(field->hasProblem());
    EXPECT_EQ(commits, 1);
}

TEST_F(QuantityEditTest, OnceCommittedUndoIsTheProgramsAgain) {
    int undone = 0;
    QAction undo;
    undo.setShortcut(QKeySequence(QStringLiteral("Ctrl+Z")));
    QObject::connect(&undo, &QAction::triggered, &window, [&undone] { ++undone; });
    window.addAction(&undo);
    type("2.8");
    QTest::keyClick(field->line(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undone, 0) << "letters first";
    enter("2.8");
    QTest::keyClick(field->line(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undone, 1);
    EXPECT_EQ(field->line()->text(), QStringLiteral("2.8"));
}

TEST_F(QuantityEditTest, SameTextAgainIsNoEdit) {
    enter("2.8");
    enter("2.8");
    EXPECT_EQ(commits, 1);
}

TEST_F(QuantityEditTest, TextInHandIsNotOverwritten) {
    type("7");
    field->setQuantity(anyQuantity(Pressure::fromSi(3e5)));
    EXPECT_EQ(field->line()->text(), QStringLiteral("7"));
    QTest::keyClick(field->line(), Qt::Key_Return);
    EXPECT_DOUBLE_EQ(committed, 7.0);
}

TEST_F(QuantityEditTest, ScreenReadersHearNameUnitAndProblem) {
    EXPECT_EQ(field->line()->accessibleName(), QStringLiteral("Floor, bar"));
    enter("abc");
    EXPECT_EQ(field->line()->accessibleDescription(), field->problemText());
}

TEST(QuantityEditSentences, EveryProblemOfTheParserHasWords) {
    for (const char* code :
         {"number_missing", "number_letters", "number_group_mark", "number_decimal_comma",
          "number_not_finite", "unit_unknown", "unit_gallon_which", "unit_wrong_kind",
          "unit_missing", "value_too_small", "value_too_large"}) {
        EXPECT_TRUE(shippedSentences().has("problem." + std::string(code))) << code;
    }
}

}  // namespace
}  // namespace bw
