// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/hydraulics/circuit.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/window/job_demand.h"
#include "core/window/limits.h"
#include "core/window/window_limits.h"

namespace bw {

/// Whether the rate holds at a speed. `BeyondLimit`: the rate is right, but something is passed.
enum class PointVerdict { OnRate, BeyondLimit, StuckHigh, StuckLow };
template <>
struct ChoiceNames<PointVerdict> {
    static constexpr std::array<std::pair<PointVerdict, std::string_view>, 4> names{
        {{PointVerdict::OnRate, "on_rate"},
         {PointVerdict::BeyondLimit, "beyond_limit"},
         {PointVerdict::StuckHigh, "stuck_high"},
         {PointVerdict::StuckLow, "stuck_low"}}};
};

/// What really happens at one speed (clamped flow, not the wish).
struct OperatingPoint {
    Speed speed;
    Flow nozzleFlow;  ///< mean over the boom (pulsed: over time as well)
    Flow boomFlow;
    Pressure nozzlePressure;  ///< of the mean nozzle
    Pressure sensorPressure;
    AreaRate rate;           ///< really sprayed
    double rateRatio = 1.0;  ///< rate / wished rate; the dose goes with it
    std::optional<DropletCategory> droplets;
    std::optional<double> driftPercent;
    PointVerdict verdict = PointVerdict::OnRate;
    std::vector<Limit> past;
};

struct WindowEnd {
    std::optional<Speed> speed;  ///< low side without a limit: 0; high side without: nothing
    Limit limit = Limit::None;
    std::vector<SpeedLimit> next;  ///< the others of that side, nearest first
};

/// Advice on the controller's pressure floor. It protects the spray pattern only.
struct FloorAdvice {
    std::optional<Pressure> least;  ///< sensor pressure at which the weakest nozzle has its lowest
    std::optional<Pressure> most;   ///< sensor pressure that the least rate needs at the slow speed
    std::optional<Pressure> recommended;  ///< nothing: none exists; use a smaller nozzle, more rate
                                          ///< or a faster slow speed
};

enum class Band { Under, Over, Straddles };
template <>
struct ChoiceNames<Band> {
    static constexpr std::array<std::pair<Band, std::string_view>, 3> names{
        {{Band::Under, "under"}, {Band::Over, "over"}, {Band::Straddles, "straddles"}}};
};
struct RestrictorAdvice {
    RestrictorPosition position = RestrictorPosition::FullBore;
    Speed crossingSpeed;  ///< where the boom flow is the changeover flow
    Band band = Band::Straddles;
};

struct SectionsOn {
    int sectionsOn = 0;
    int nozzlesOn = 0;
    Flow flow;                         ///< at the usual speed and the least rate
    std::optional<bool> underMinimum;  ///< nothing: the meter's minimum is unknown
};

struct RateRangeWindow {
    WindowEnd low;   ///< at the least rate
    WindowEnd high;  ///< at the most
    bool empty = false;
};

/// Pressure that gives the rate at a speed, for running by hand.
struct ByHandRow {
    Speed speed;
    Pressure sensorPressure;
    bool operator==(const ByHandRow&) const = default;
};

/// The speed window of a job with a nozzle set on a machine.
struct SpeedWindow {
    WindowEnd low;
    WindowEnd high;
    bool empty = false;
    Limit emptyWhy =
        Limit::None;  ///< set when no droplet band, drift class or set pressure will do
    OperatingPoint atSlow;
    OperatingPoint atUsual;
    OperatingPoint atFast;
    std::optional<FloorAdvice> floor;  ///< nothing for pulsed nozzles
    std::optional<RestrictorAdvice> restrictor;
    std::vector<SectionsOn> sectionsOff;
    std::optional<RateRangeWindow> allRates;  ///< for a range of rates
    std::vector<Limit> notChecked;
    std::vector<SpeedLimit> limits;  ///< all of them, in the order of Limit
    AreaRate rate;
    bool coversBand = false;  ///< slow to fast lies inside (of all rates, if a range)
    bool coversUsual = false;
    std::optional<double>
        roomToSpare;  ///< min(usual − low, high − usual) / usual; nothing if empty

    /// Inside the window, ends included (to 1e-9).
    bool holds(Speed speed) const;
};

/// Everything that one pairing of machine, nozzle and job needs, worked out once; then any speed
/// can be asked in constant time. Holds copies; no reference to its inputs.
class WindowModel {
  public:
    /// Fails with the first problem of the inputs (spacing, sections, rate, flow missing …).
    static Result<WindowModel> make(const Machine& machine, const Nozzle& nozzle, const Job& job);

    /// The whole answer, for the restrictor position the machine stands in. The recommended floor
    /// is rounded in `units`, the machine's own unless given.
    SpeedWindow window(std::optional<UnitSystem> units = std::nullopt) const;
    /// What really happens at a speed (> 0).
    OperatingPoint at(Speed speed) const;
    /// Pressure at the boom sensor that would give the rate at this speed, limits ignored.
    Pressure neededSensorPressure(Speed speed) const;
    /// Pressure at the mean nozzle for a sensor pressure; zero while a shut-off valve is shut.
    Pressure nozzlePressure(Pressure sensor) const;
    /// Speed at which the sensor needs this pressure for the rate.
    Speed speedAt(Pressure sensor) const;
    /// Flow of the whole boom at a sensor pressure.
    Flow boomFlow(Pressure sensor) const;
    /// Sensor pressure for a flow of the whole boom.
    Pressure sensorPressure(Flow boomFlow) const;
    /// By-hand table: `rows` speeds from slow to fast, ends included.
    std::vector<ByHandRow> byHand(int rows = 5) const;
    const JobDemand& demand() const { return m_demand; }
    Length width() const { return m_width; }
    int nozzles() const { return m_nozzles; }
    const BoomLine& line() const { return m_circuit.parts().boom; }
    /// The whole spray line, restrictor in the position it stands in.
    const Circuit& circuit() const { return m_circuit; }
    /// Where the restrictor valve stands; full bore if none is fitted.
    RestrictorPosition position() const { return m_position; }
    const WindowLimits& limits() const { return m_limits; }
    /// What it was made from.
    const Machine& machine() const { return m_machine; }
    const Nozzle& nozzle() const { return m_nozzle; }
    const Job& job() const { return m_job; }

  private:
    WindowModel(Circuit circuit, JobDemand demand, const Machine& machine, const Nozzle& nozzle,
                const Job& job);
    Flow wished(Speed speed) const { return m_demand.rate * speed * m_width; }
    std::vector<SpeedLimit> speedLimits(const WindowLimits& limits, AreaRate rate) const;
    std::optional<FloorAdvice> floorAdvice(UnitSystem units) const;
    std::optional<RestrictorAdvice> restrictorAdvice() const;
    double coveredPart(RestrictorPosition position) const;
    std::vector<SectionsOn> sectionsOff() const;
    std::optional<RateRangeWindow> rateRange() const;
    void judge(SpeedWindow& window) const;

    Circuit m_circuit;
    JobDemand m_demand;
    Machine m_machine;
    Nozzle m_nozzle;
    Job m_job;
    Length m_width;
    int m_nozzles = 0;
    RestrictorPosition m_position = RestrictorPosition::FullBore;
    WindowLimits m_limits;
};

/// Convenience: model and window in one.
Result<SpeedWindow> speedWindow(const Machine& machine, const Nozzle& nozzle, const Job& job);

}  // namespace bw
