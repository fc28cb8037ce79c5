// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QFont>
#include <QList>
#include <QObject>
#include <QPalette>
#include <optional>

#include "core/model/nozzle.h"
#include "core/store/settings.h"

namespace bw {

/// What a colour means. Widgets, charts and sheets ask for a role, never for a colour.
enum class Role {
    Surface,
    Raised,
    Sunken,
    Line,
    Edge,
    Ink,
    Quiet,
    Accent,
    AccentTint,
    OnAccent,
    Focus,
    Ok,
    Caution,
    CautionFill,
    CautionBar,
    Limit,
    LimitTint,
    Target,
    Measured,
    Unchecked,
    UncheckedTint,
    Disabled,
    Veil
};
inline constexpr int kRoleCount = 23;

enum class Look { Light, Dark, Projector, Print };

/// The colour of a role in a look. `Veil` carries its own opacity.
QColor color(Role role, Look look);
/// The colour of a role in the look the program wears now (see theme()).
QColor color(Role role);

/// The form of a marker; it tells curves apart where hue cannot.
enum class Marker { Disc, Square, Triangle, Diamond, DownTriangle, Cross, OpenRing, OpenSquare };

/// One of the eight curves: colour, dash in pixels at 1.5 px line width (empty: solid), marker.
struct CurveStyle {
    QColor color;
    QList<double> dash;
    Marker marker = Marker::Disc;
};
inline constexpr int kCurveCount = 8;
/// Curve 1 to 8; higher numbers start again at 1.
CurveStyle curveStyle(int number, Look look);
CurveStyle curveStyle(int number);

/// Fill of a droplet category and the text that is readable on it. The same in every look.
QColor dropletColor(DropletCategory category);
/// Fill of an ISO 10625 size code ("03"); nothing for a code without a colour of the standard.
std::optional<QColor> nozzleColor(const QString& sizeCode);
/// Black or white, whichever reads better on a chip's fill.
QColor inkOn(const QColor& fill);
/// Contrast ratio of two opaque colours (WCAG 2.1, relative luminance), 1 to 21.
double contrast(const QColor& a, const QColor& b);
/// `top` laid over `under` with its opacity.
QColor blended(const QColor& top, const QColor& under);

/// The palette from which Fusion draws.
QPalette paletteOf(Look look);

/// The look that the program wears. One per application, owned by it: any widget may be painted
/// at any depth, so the look is a property of the application, as QApplication::palette() is, and
/// not an argument of every constructor. Installs the palette; `changed` follows every change.
class Theme : public QObject {
    Q_OBJECT

  public:
    explicit Theme(QObject* parent = nullptr);

    ThemeChoice choice() const { return m_choice; }
    void setChoice(ThemeChoice choice);
    /// The look in use on screen: light, dark, or the projector's while that is on.
    Look look() const { return m_look; }
    /// The projector's look, and a body of so many pixels for all type; nothing: back to the desk.
    void setProjector(std::optional<int> bodyPixels);
    bool isProjector() const { return m_deskFont.has_value(); }
    /// The font at the desk, also while the projector's is in force.
    QFont deskFont() const;

  Q_SIGNALS:
    void changed();

  private:
    void apply(Look look);
    Look chosenLook() const;
    std::optional<QFont> m_deskFont;  ///< set while the projector is on
    ThemeChoice m_choice = ThemeChoice::Light;
    Look m_look = Look::Light;
    bool m_systemIsDark = false;
};

/// The application's theme; made with the first call, a child of the application.
Theme& theme();

}  // namespace bw
