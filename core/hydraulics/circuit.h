// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/hydraulics/parts.h"
#include "core/model/choice.h"

namespace bw {

/// How a solution came about.
enum class SolveStatus { Closed, Root, NotReached };

/// What holds the boom flow where it is, or keeps a wish from being met.
enum class CircuitLimit { None, Pump, ReliefValve, Suction, ControlMinimum };
template <>
struct ChoiceNames<CircuitLimit> {
    static constexpr std::array<std::pair<CircuitLimit, std::string_view>, 5> names{
        {{CircuitLimit::None, "none"},
         {CircuitLimit::Pump, "pump"},
         {CircuitLimit::ReliefValve, "relief_valve"},
         {CircuitLimit::Suction, "suction"},
         {CircuitLimit::ControlMinimum, "control_minimum"}}};
};

/// One steady state of the whole spray line.
struct CircuitState {
    SolveStatus status = SolveStatus::NotReached;
    int iterations = 0;
    CircuitLimit limitedBy = CircuitLimit::None;
    std::optional<double>
        control;  ///< u, 0 to 1: more gives more boom flow; nothing: a valve of unknown size
    double pumpSpeed = 1.0;  ///< part of full speed
    Flow sprayed;            ///< whole boom
    Flow metered;            ///< sprayed and what leaks behind the meter
    Flow agitation;
    Flow outletLeak;
    Flow bypass;
    Flow relief;  ///< over the relief valve
    Flow pump;    ///< all that the pump passes
    Pressure suctionLoss;
    Pressure pumpOutlet;
    Pressure valveLoss;  ///< over a throttle
    Pressure lineLoss;
    Pressure plumbingLoss;
    Pressure restrictorLoss;
    Pressure sensor;
};

/// The steady spray line (DEVELOPERS.md, "The circuit"): tank → suction → pump → agitation and
/// by-pass back to the tank → throttle → line strainer → meter → restrictor → boom sensor →
/// sections. Closed form where every part goes with √p, else a bracketed root; both agree to 1e-9.
/// Left out: static height, velocity head, loss along the boom pipe.
class Circuit {
  public:
    explicit Circuit(CircuitParts parts) : m_parts(std::move(parts)) {}
    const CircuitParts& parts() const { return m_parts; }

    /// Steady state at a control setting (0 to 1). Without a pump: NotReached.
    CircuitState atControl(double control) const;
    /// The control setting that sprays `boom` (> 0); the nearest that can be reached otherwise,
    /// with `limitedBy` naming the part that stops it.
    CircuitState atFlow(Flow boom) const;

    /// Boom flow at which each part has no more to give (control fully open). Nothing where the
    /// part is not there. Each is worked out as if the others held.
    std::optional<Flow> mostByPump() const;
    std::optional<Flow> mostByRelief() const;
    std::optional<Flow> mostBySuction() const;
    /// The least boom flow that the control reaches; nothing where it is not known.
    std::optional<Flow> least() const;

    /// As the three above for pulsed nozzles, whose pressure is held: the sensor stands at `held`
    /// plus SG·`boomLoss`·Q² whatever the mean flow Q of the boom. Zero where even no flow is too
    /// much.
    struct Most {
        std::optional<Flow> pump;
        std::optional<Flow> relief;
        std::optional<Flow> suction;
    };
    Most mostHolding(Pressure held, SquareLoss boomLoss) const;

    /// The highest boom sensor pressure at which the machine can pass `boom` (≥ 0) with the control
    /// fully open: what the pump can feed, whatever the nozzles. Falls with flow; zero where it
    /// cannot pass so much; infinite under a displacement pump with no relief valve and no branch.
    /// Nothing without a pump, and where what narrowing takes is not known.
    std::optional<Pressure> mostSensorPressure(Flow boom) const;

    /// For tests of the closed form: never uses it.
    CircuitState atControlByRoot(double control) const;

  private:
    CircuitParts m_parts;
};

/// Independent check of a state: nothing is created or lost at a junction, and each part obeys its
/// own law. Worst misses, relative to the pump's flow and outlet pressure.
struct CircuitBalance {
    double flowMiss = 0.0;
    double pressureMiss = 0.0;
};
CircuitBalance balance(const CircuitParts& parts, const CircuitState& state);

}  // namespace bw
