// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <optional>
#include <string>
#include <vector>

#include "core/model/season.h"
#include "core/units/format.h"
#include "core/window/speed_window.h"
#include "core/window/verdict.h"
#include "core/window/window_curve.h"

namespace bw {

/// Step of the cursor, and the slowest speed it goes to, in the reader's unit (km/h or mph).
inline constexpr double kCursorStep = 0.1;

/// One candidate nozzle, worked out. Either model and window, or the problem that kept them away.
struct StudiedNozzle {
    Nozzle nozzle;
    int style = 2;     ///< curve of the chart
    int position = 0;  ///< on the machine's nozzle bodies; 0: not aboard
    std::optional<WindowModel> model;
    std::optional<SpeedWindow> window;
    std::optional<Problem> problem;
    std::vector<OperatingPoint> curve;  ///< over the speeds of the charts
};

/// A stretch of the ribbon: droplet category and points in the reader's units.
struct RibbonStretch {
    DropletCategory category = DropletCategory::M;
    std::vector<QPointF> points;
};

/// Everything that the page shows, worked out once for what is in hand. Views and cursor only read
/// it: moving the cursor asks the models for one point each and solves nothing again.
struct WindowStudy {
    enum class State { NoMachine, NoJob, NoNozzle, Refused, Ready };
    State state = State::NoMachine;
    bool isOnWall = false;  ///< fewer words on the charts, as they are large
    NumberStyle style;
    Machine machine;
    Job job;
    std::vector<StudiedNozzle> nozzles;
    std::size_t inHand = 0;
    Problem problem;  ///< Refused: why, with the field it belongs to

    // In the reader's units, for the charts; only when Ready.
    double xFrom = 0, xTo = 1, pressureTo = 1, rateTo = 1;
    std::vector<double> speedTicks;
    std::vector<DropletStretch> droplets;  ///< of the nozzle in hand
    std::vector<RibbonStretch> ribbon;     ///< those on its curve, between floor and ceiling
    std::vector<RateBandPoint> rates;      ///< about its curve, for a range of rates
    std::vector<QPointF> fed;  ///< the most that the pump can hold at the sensor, over speed

    const StudiedNozzle& hand() const { return nozzles.at(inHand); }
    const WindowModel& model() const { return *hand().model; }
    const SpeedWindow& window() const { return *hand().window; }
    bool isPulsed() const { return machine.pulsed.pressure.has_value(); }

    Unit speedUnit() const { return displayUnit(style.units, Dimension::Speed); }
    Unit pressureUnit() const { return displayUnit(style.units, Dimension::Pressure); }
    Unit rateUnit() const { return displayUnit(style.units, Dimension::AreaRate); }
    double x(Speed speed) const { return in(speed, speedUnit()); }
    double y(Pressure pressure) const { return in(pressure, pressureUnit()); }
    double rate(AreaRate rate) const { return in(rate, rateUnit()); }
    /// Curves for the charts; that of pressure ends where it reaches the ceiling.
    std::vector<QPointF> pressurePoints(const StudiedNozzle& nozzle) const;
    std::vector<QPointF> ratePoints(const StudiedNozzle& nozzle) const;
    Speed speedAt(double x) const { return make<Speed>(x, speedUnit()); }
};

/// Works the candidates out; `inHand` names one of them (else the first is taken).
WindowStudy studied(const Machine* machine, const Job* job, const NumberStyle& style,
                    const std::vector<Nozzle>& candidates, const std::string& inHand);

/// The word by which a nozzle goes beside its chip: its family, else its name without the code.
std::string shortName(const Nozzle& nozzle);

}  // namespace bw
