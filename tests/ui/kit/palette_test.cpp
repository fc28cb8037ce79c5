// SPDX-License-Identifier: GPL-3.0-or-later
// Contrast as WCAG 2.1 defines it (success criteria 1.4.3: text 4.5; 1.4.6: 7; 1.4.11: edges 3).
#include "ui/kit/palette.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QSignalSpy>
#include <set>

#include "ui/kit/metrics.h"

namespace bw {
namespace {

struct Ground {
    std::string name;
    QColor color;
};

/// Everything that words may stand on, the plot under the veil among it.
std::vector<Ground> grounds(Look look) {
    const auto c = [look](Role role) { return color(role, look); };
    return {{"surface", c(Role::Surface)},
            {"raised", c(Role::Raised)},
            {"sunken", c(Role::Sunken)},
            {"job band", c(Role::AccentTint)},
            {"limit tint", c(Role::LimitTint)},
            {"caution fill", c(Role::CautionFill)},
            {"unchecked tint", c(Role::UncheckedTint)},
            {"veiled plot", blended(c(Role::Veil), c(Role::Raised))}};
}

class EveryLook : public testing::TestWithParam<Look> {
  protected:
    double textNeeds() const { return GetParam() == Look::Projector ? 7.0 : 4.5; }
    double edgeNeeds() const { return GetParam() == Look::Projector ? 7.0 : 3.0; }
};

TEST_P(EveryLook, TextRolesReadOnEveryGround) {
    for (const Role role :
         {Role::Ink, Role::Quiet, Role::Accent, Role::Focus, Role::Ok, Role::Caution, Role::Limit,
          Role::Target, Role::Measured, Role::Unchecked, Role::Disabled}) {
        for (const auto& ground : grounds(GetParam())) {
            EXPECT_GE(contrast(color(role, GetParam()), ground.color), textNeeds())
                << "role " << static_cast<int>(role) << " on " << ground.name;
        }
    }
    EXPECT_GE(contrast(color(Role::OnAccent, GetParam()), color(Role::Accent, GetParam())),
              textNeeds());
}

TEST_P(EveryLook, EdgesStandOutFromEveryGround) {
    for (const auto& ground : grounds(GetParam())) {
        EXPECT_GE(contrast(color(Role::Edge, GetParam()), ground.color), edgeNeeds())
            << ground.name;
    }
}

TEST_P(EveryLook, CurvesReadOnThePlotAndCarryDashAndMarker) {
    std::set<QString> forms;
    for (int number = 1; number <= kCurveCount; ++number) {
        const CurveStyle style = curveStyle(number, GetParam());
        for (const auto& ground : grounds(GetParam())) {
            EXPECT_GE(contrast(style.color, ground.color), textNeeds()) << number << ground.name;
        }
        QString form = QString::number(static_cast<int>(style.marker)) + QLatin1Char(':');
        for (const double d : style.dash) form += QString::number(d) + QLatin1Char(' ');
        forms.insert(form);
    }
    EXPECT_EQ(forms.size(), static_cast<std::size_t>(kCurveCount)) << "told apart without hue";
}

INSTANTIATE_TEST_SUITE_P(Looks, EveryLook,
                         testing::Values(Look::Light, Look::Dark, Look::Projector, Look::Print));

TEST(Palette, LettersReadOnEveryChip) {
    for (int i = 0; i <= static_cast<int>(DropletCategory::UC); ++i) {
        const QColor fill = dropletColor(static_cast<DropletCategory>(i));
        EXPECT_GE(contrast(inkOn(fill), fill), 4.5) << i;
    }
    for (const char* code : {"01", "015", "02", "025", "03", "035", "04", "05", "06", "08", "10",
                             "15", "20", "0050", "0067", "0075"}) {
        const auto fill = nozzleColor(QLatin1String(code));
        ASSERT_TRUE(fill.has_value()) << code;
        EXPECT_GE(contrast(inkOn(*fill), *fill), 4.5) << code;
    }
    EXPECT_FALSE(nozzleColor(QStringLiteral("07")).has_value());
}

TEST(Palette, ContrastOfBlackAndWhiteIsTwentyOne) {
    EXPECT_NEAR(contrast(QColor(Qt::black), QColor(Qt::white)), 21.0, 1e-9);
    EXPECT_NEAR(contrast(QColor(Qt::white), QColor(Qt::white)), 1.0, 1e-9);
}

TEST(Theme, SwitchesWithoutRestartAndTellsWidgets) {
    theme().setChoice(ThemeChoice::Light);
    TextLabel label(QStringLiteral("x"), TextSize::Body, Role::Accent);
    QSignalSpy changes(&theme(), &Theme::changed);
    theme().setChoice(ThemeChoice::Dark);
    EXPECT_EQ(changes.count(), 1);
    EXPECT_EQ(theme().look(), Look::Dark);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), color(Role::Surface, Look::Dark));
    EXPECT_EQ(label.palette().color(QPalette::WindowText), color(Role::Accent, Look::Dark));
    theme().setChoice(ThemeChoice::Light);
    EXPECT_EQ(label.palette().color(QPalette::WindowText), color(Role::Accent, Look::Light));
}

TEST(Theme, SystemFollowsTheDesktopThatWasThereAtTheStart) {
    // Off screen the desktop is light.
    theme().setChoice(ThemeChoice::Dark);
    theme().setChoice(ThemeChoice::System);
    EXPECT_EQ(theme().look(), Look::Light);
    theme().setChoice(ThemeChoice::Light);
}

}  // namespace
}  // namespace bw
