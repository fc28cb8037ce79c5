// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/palette.h"

#include <QApplication>
#include <QStyle>
#include <array>
#include <cmath>

namespace bw {
namespace {

struct RoleColors {
    Role role;
    QRgb light, dark, projector, print;
};

// In the order of Role; own palette, contrasts are tested (tests/ui/kit/palette_test.cpp).
constexpr std::array<RoleColors, kRoleCount> kColors{{
    {Role::Surface, 0xFFF0EEE8, 0xFF151A1D, 0xFFFFFFFF, 0xFFFFFFFF},
    {Role::Raised, 0xFFFCFBF8, 0xFF1D2428, 0xFFFFFFFF, 0xFFFFFFFF},
    {Role::Sunken, 0xFFE3E0D7, 0xFF0F1315, 0xFFECECEC, 0xFFF1F1F1},
    {Role::Line, 0xFFCFCBC0, 0xFF38434A, 0xFF6A6A6A, 0xFF8A8A8A},
    {Role::Edge, 0xFF7F7B73, 0xFF7E8B91, 0xFF3F3F3F, 0xFF444444},
    {Role::Ink, 0xFF1A2124, 0xFFECEFEC, 0xFF000000, 0xFF000000},
    {Role::Quiet, 0xFF50585C, 0xFFABB6B9, 0xFF2F373B, 0xFF333333},
    {Role::Accent, 0xFF0F4C5C, 0xFF86CDDB, 0xFF0A3D4B, 0xFF000000},
    {Role::AccentTint, 0xFFD3E4E8, 0xFF1E4049, 0xFFD9E8EC, 0xFFE6E6E6},
    {Role::OnAccent, 0xFFFFFFFF, 0xFF08181C, 0xFFFFFFFF, 0xFFFFFFFF},
    {Role::Focus, 0xFF1D57D8, 0xFF8FB3FF, 0xFF0A3CB0, 0xFF000000},
    {Role::Ok, 0xFF00674F, 0xFF5CCBA9, 0xFF004B3A, 0xFF000000},
    {Role::Caution, 0xFF6E4700, 0xFFF5CC6B, 0xFF4F3300, 0xFF000000},
    {Role::CautionFill, 0xFFFBE8BC, 0xFF362B0D, 0xFFFFF0C7, 0xFFFFFFFF},
    {Role::CautionBar, 0xFFC07F00, 0xFFD9A21B, 0xFFB07300, 0xFF000000},
    {Role::Limit, 0xFFA03417, 0xFFFF9E80, 0xFF842104, 0xFF000000},
    {Role::LimitTint, 0xFFF8E0D6, 0xFF45241B, 0xFFFBE4DB, 0xFFFFFFFF},
    {Role::Target, 0xFF86207A, 0xFFF29AE4, 0xFF6A1160, 0xFF000000},
    {Role::Measured, 0xFF3B3F98, 0xFFB1B7FF, 0xFF2A2E86, 0xFF000000},
    {Role::Unchecked, 0xFF594F6D, 0xFFC0B6D6, 0xFF41384F, 0xFF333333},
    {Role::UncheckedTint, 0xFFE6E2EC, 0xFF2D2938, 0xFFECE8F1, 0xFFFFFFFF},
    {Role::Disabled, 0xFF625F59, 0xFF9DA8AC, 0xFF4A4A4A, 0xFF555555},
    {Role::Veil, 0x9ED0CCC1, 0x99080B0D, 0xBFE1E1E1, 0x80E1E1E1},
}};

struct CurveColors {
    QRgb light, dark, projector;
    Marker marker;
};
constexpr std::array<CurveColors, kCurveCount> kCurves{{
    {0xFF0F4C5C, 0xFF86CDDB, 0xFF0A3D4B, Marker::Disc},
    {0xFF924A00, 0xFFF0A35E, 0xFF6E3600, Marker::Square},
    {0xFF6A3FA0, 0xFFC4A4F5, 0xFF4F2A80, Marker::Triangle},
    {0xFF1563AC, 0xFF7DB7F2, 0xFF0B4680, Marker::Diamond},
    {0xFF5C6600, 0xFFC3CB5C, 0xFF414800, Marker::DownTriangle},
    {0xFFA22F59, 0xFFF291B2, 0xFF7A1C3E, Marker::Cross},
    {0xFF4E5963, 0xFFAEBAC4, 0xFF333C44, Marker::OpenRing},
    {0xFF086259, 0xFF58C9BC, 0xFF07524B, Marker::OpenSquare},
}};

QList<double> dashOf(int index) {
    static const std::array<QList<double>, kCurveCount> kDashes{{
        {},
        {9, 5},
        {2, 4},
        {10, 4, 2, 4},
        {16, 6},
        {10, 4, 2, 4, 2, 4},
        {5, 4},
        {14, 4, 6, 4},
    }};
    return kDashes[static_cast<std::size_t>(index)];
}

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}
double luminance(const QColor& c) {
    return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

template <class T>
T inLook(Look look, T light, T dark, T projector, T print) {
    switch (look) {
        case Look::Light:
            return light;
        case Look::Dark:
            return dark;
        case Look::Projector:
            return projector;
        case Look::Print:
            return print;
    }
    return light;
}

void setDisabled(QPalette& p, Look look) {
    for (const auto group : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText,
                             QPalette::HighlightedText, QPalette::PlaceholderText}) {
        p.setColor(QPalette::Disabled, group, color(Role::Disabled, look));
    }
    p.setColor(QPalette::Disabled, QPalette::Base, color(Role::Surface, look));
    p.setColor(QPalette::Disabled, QPalette::Highlight, color(Role::Line, look));
}

constexpr auto kThemeProperty = "bw.theme";

}  // namespace

QColor color(Role role, Look look) {
    const auto& c = kColors[static_cast<std::size_t>(role)];
    Q_ASSERT(c.role == role);
    return QColor::fromRgba(inLook(look, c.light, c.dark, c.projector, c.print));
}

QColor color(Role role) {
    return color(role, theme().look());
}

CurveStyle curveStyle(int number, Look look) {
    const int index = (std::max(number, 1) - 1) % kCurveCount;
    const auto& c = kCurves[static_cast<std::size_t>(index)];
    const QColor ink = look == Look::Print
                           ? color(Role::Ink, look)
                           : QColor::fromRgba(inLook(look, c.light, c.dark, c.projector, c.light));
    return {ink, dashOf(index), c.marker};
}

CurveStyle curveStyle(int number) {
    return curveStyle(number, theme().look());
}

// Category colours in common use with ISO 25358 and ASABE S572, approximate.
QColor dropletColor(DropletCategory category) {
    switch (category) {
        case DropletCategory::XF:
            return QColor::fromRgb(0x6F3A96);
        case DropletCategory::VF:
            return QColor::fromRgb(0xC62A22);
        case DropletCategory::F:
            return QColor::fromRgb(0xF28C1E);
        case DropletCategory::M:
            return QColor::fromRgb(0xF5D327);
        case DropletCategory::C:
            return QColor::fromRgb(0x2A66B8);
        case DropletCategory::VC:
            return QColor::fromRgb(0x4FA955);
        case DropletCategory::XC:
            return QColor::fromRgb(0xFFFFFF);
        case DropletCategory::UC:
            return QColor::fromRgb(0x161616);
    }
    return {};
}

// Size colours of ISO 10625, approximate.
std::optional<QColor> nozzleColor(const QString& sizeCode) {
    struct Entry {
        QLatin1StringView code;
        QRgb rgb;
    };
    using namespace Qt::StringLiterals;
    static constexpr Entry kSizes[] = {
        {"01"_L1, 0xF28C1E}, {"015"_L1, 0x3F9A49},  {"02"_L1, 0xF5D327},   {"025"_L1, 0xA583C4},
        {"03"_L1, 0x2A66B8}, {"035"_L1, 0x8E3B2B},  {"04"_L1, 0xCC2B26},   {"05"_L1, 0x77492A},
        {"06"_L1, 0x8D9194}, {"08"_L1, 0xFFFFFF},   {"10"_L1, 0x86C5EA},   {"15"_L1, 0xA8D58A},
        {"20"_L1, 0x161616}, {"0050"_L1, 0xB9A2CF}, {"0067"_L1, 0x6B7034}, {"0075"_L1, 0xF0A3B8}};
    for (const auto& entry : kSizes) {
        if (entry.code == sizeCode) return QColor::fromRgb(entry.rgb);
    }
    return std::nullopt;
}

QColor inkOn(const QColor& fill) {
    const QColor black(Qt::black), white(Qt::white);
    return contrast(black, fill) >= contrast(white, fill) ? black : white;
}

double contrast(const QColor& a, const QColor& b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

QColor blended(const QColor& top, const QColor& under) {
    const double a = top.alphaF();
    const auto mix = [a](float t, float u) {
        return static_cast<float>(a * static_cast<double>(t) + (1.0 - a) * static_cast<double>(u));
    };
    return QColor::fromRgbF(mix(top.redF(), under.redF()), mix(top.greenF(), under.greenF()),
                            mix(top.blueF(), under.blueF()));
}

QPalette paletteOf(Look look) {
    const auto c = [look](Role role) { return color(role, look); };
    QPalette p(c(Role::Raised), c(Role::Surface));
    p.setColor(QPalette::WindowText, c(Role::Ink));
    p.setColor(QPalette::Base, c(Role::Raised));
    p.setColor(QPalette::AlternateBase, c(Role::Surface));
    p.setColor(QPalette::Text, c(Role::Ink));
    p.setColor(QPalette::ButtonText, c(Role::Ink));
    p.setColor(QPalette::BrightText, c(Role::Limit));
    p.setColor(QPalette::PlaceholderText, c(Role::Quiet));
    p.setColor(QPalette::Highlight, c(Role::Accent));
    p.setColor(QPalette::HighlightedText, c(Role::OnAccent));
    p.setColor(QPalette::Link, c(Role::Accent));
    p.setColor(QPalette::LinkVisited, c(Role::Accent));
    p.setColor(QPalette::ToolTipBase, c(Role::Raised));
    p.setColor(QPalette::ToolTipText, c(Role::Ink));
    p.setColor(QPalette::Light, c(Role::Raised));
    p.setColor(QPalette::Midlight, c(Role::Surface));
    p.setColor(QPalette::Mid, c(Role::Line));
    p.setColor(QPalette::Dark, c(Role::Edge));
    p.setColor(QPalette::Shadow, c(Role::Edge));
    setDisabled(p, look);
    return p;
}

Theme::Theme(QObject* parent) : QObject(parent) {
    // Qt 6.4 has no colour scheme: a desktop is dark when its text is lighter than its windows.
    const QPalette desktop = QApplication::style()->standardPalette();
    const QPalette& now = QApplication::palette();
    m_systemIsDark =
        now.color(QPalette::WindowText).lightnessF() > now.color(QPalette::Window).lightnessF() ||
        desktop.color(QPalette::WindowText).lightnessF() >
            desktop.color(QPalette::Window).lightnessF();
    apply(Look::Light);
}

void Theme::setChoice(ThemeChoice choice) {
    m_choice = choice;
    if (!isProjector() && chosenLook() != m_look) apply(chosenLook());
}

Look Theme::chosenLook() const {
    const bool dark =
        m_choice == ThemeChoice::Dark || (m_choice == ThemeChoice::System && m_systemIsDark);
    return dark ? Look::Dark : Look::Light;
}

QFont Theme::deskFont() const {
    return m_deskFont.value_or(QApplication::font());
}

void Theme::setProjector(std::optional<int> bodyPixels) {
    if (!bodyPixels && !isProjector()) return;
    if (bodyPixels && m_deskFont && QApplication::font().pixelSize() == *bodyPixels) return;
    QFont font = deskFont();
    if (bodyPixels) {
        m_deskFont = font;
        font.setPixelSize(*bodyPixels);
    } else {
        m_deskFont.reset();
    }
    // Before the look: what follows the look measures with the font.
    QApplication::setFont(font);
    apply(bodyPixels ? Look::Projector : chosenLook());
}

void Theme::apply(Look look) {
    m_look = look;
    QApplication::setPalette(paletteOf(look));
    Q_EMIT changed();
}

Theme& theme() {
    auto* known = qobject_cast<Theme*>(qApp->property(kThemeProperty).value<QObject*>());
    if (!known) {
        known = new Theme(qApp);
        qApp->setProperty(kThemeProperty, QVariant::fromValue<QObject*>(known));
    }
    return *known;
}

}  // namespace bw
