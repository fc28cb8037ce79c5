// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCheckBox>
#include <QDialog>
#include <QDialogButtonBox>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QTimer>

#include "tests/ui/season_fixture.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::SeasonTest;

/// The choice of sets, by keys and mouse. Cereals and Beet both run on "Fit 03".
class SeasonChoiceTest : public SeasonTest {
  protected:
    QWidget* foot() const { return window->findChild<QWidget*>(u"season.choice"_s); }
    QString footText() const {
        QStringList out;
        for (const auto* label : foot()->findChildren<QLabel*>()) {
            if (label->isVisible()) out << label->text();
        }
        return out.join(u'\n');
    }
    void waitFor(const QString& words) {
        EXPECT_TRUE(QTest::qWaitFor([&] { return footText().contains(words); }, 5000))
            << words.toStdString() << " in\n"
            << footText().toStdString();
    }
    /// Runs `act` on the dialog that the key opens, then closes it by its first button.
    template <class Act>
    void inWishes(Act&& act) {
        QTimer::singleShot(0, window.get(), [&] {
            auto* dialog = window->findChild<QDialog*>(u"season.wishes"_s);
            ASSERT_TRUE(dialog);
            act(*dialog);
            QTest::mouseClick(dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok),
                              Qt::LeftButton);
        });
        press(Qt::Key_F5, Qt::ShiftModifier);
        QApplication::setActiveWindow(window.get());
    }
    static void tick(QDialog& dialog, const QString& name) {
        auto* box = dialog.findChild<QCheckBox*>(name);
        ASSERT_TRUE(box) << name.toStdString();
        QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
    }
};

TEST_F(SeasonChoiceTest, TheKeyChoosesTheFewestSetsAndSaysWhatEachIsFor) {
    press(Qt::Key_F5);
    waitFor(u"Trailed: 1 set holds 2 of 2 jobs"_s);
    EXPECT_TRUE(footText().contains(u"<b>Fit 03</b> · Cereals, Beet"_s));
    EXPECT_TRUE(footText().contains(u"80 ha"_s));
    EXPECT_TRUE(footText().contains(u"No job is left over"_s));
    EXPECT_TRUE(footText().contains(u"To buy: 24 nozzles"_s));
    EXPECT_TRUE(footText().contains(u"No price is entered for Fit 03"_s));
    EXPECT_TRUE(footText().contains(u"no set is left that holds it"_s)) << "without it";
}

TEST_F(SeasonChoiceTest, TheChoiceFollowsWhatIsChangedAndLeavesByItsKey) {
    press(Qt::Key_F5);
    waitFor(u"1 set holds 2 of 2 jobs"_s);
    // 400 L/ha at 10 km/h takes 3.33 L/min from each nozzle: more than any gives.
    typeInto("Cereals", "Rate", "400");
    waitFor(u"1 job is left over"_s);
    EXPECT_TRUE(footText().contains(u"<b>Cereals, 40 ha.</b>"_s));
    EXPECT_TRUE(footText().contains(u"would do"_s)) << "the smallest change is told";
    press(Qt::Key_Z, Qt::ControlModifier);
    waitFor(u"No job is left over"_s);
    press(Qt::Key_F5, Qt::ControlModifier);
    EXPECT_FALSE(foot()->isVisible());
    EXPECT_TRUE(window->findChild<QWidget*>(u"season.foot"_s)->isVisible());
}

TEST_F(SeasonChoiceTest, WishesAreHeededAndKept) {
    inWishes([&](QDialog& dialog) {
        tick(dialog, u"season.wishes.allow.Fit 03"_s);
        auto* spares = dialog.findChild<QSpinBox*>(u"season.wishes.spares"_s);
        spares->setFocus();
        spares->selectAll();
        QTest::keyClicks(spares, u"10"_s);
    });
    waitFor(u"<b>Untested 03</b> · Cereals, Beet"_s);
    EXPECT_FALSE(footText().contains(u"<b>Fit 03</b>"_s));
    inWishes([&](QDialog& dialog) {
        EXPECT_FALSE(dialog.findChild<QCheckBox*>(u"season.wishes.allow.Fit 03"_s)->isChecked());
        EXPECT_EQ(dialog.findChild<QSpinBox*>(u"season.wishes.spares"_s)->value(), 10);
        tick(dialog, u"season.wishes.allow.Fit 03"_s);
    });
    waitFor(u"To buy: 27 nozzles, 3 of them spares"_s);
    inWishes([&](QDialog& dialog) { tick(dialog, u"season.wishes.own1.Fit 03"_s); });
    waitFor(u"Nothing to buy: every set is owned."_s);
}

}  // namespace
}  // namespace bw
