// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "core/model/choice.h"
#include "core/simulation/loop_setup.h"
#include "core/simulation/monotone_curve.h"
#include "core/simulation/noise.h"

namespace bw {

/// What holds the controller's command in a step.
enum class LoopLimit { None, Floor, Ceiling, LeastControl, FullControl };
template <>
struct ChoiceNames<LoopLimit> {
    static constexpr std::array<std::pair<LoopLimit, std::string_view>, 5> names{
        {{LoopLimit::None, "none"},
         {LoopLimit::Floor, "pressure_floor"},
         {LoopLimit::Ceiling, "pressure_ceiling"},
         {LoopLimit::LeastControl, "control_minimum"},
         {LoopLimit::FullControl, "control_maximum"}}};
};

/// The state after one step.
struct LoopSample {
    Duration time;
    Speed speed;  ///< true, over the ground
    Speed measuredSpeed;
    AreaRate target;
    AreaRate shown;         ///< what the display works out; zero while standing
    AreaRate real;          ///< on the ground; zero while standing
    Flow targetFlow;        ///< what the controller wants
    Flow shownFlow;         ///< what it takes for the flow
    Flow metered;           ///< true flow through the meter
    Flow sprayed;           ///< zero while standing
    Pressure sensor;        ///< true pressure at the boom sensor
    Pressure reading;       ///< what the sensor shows
    double command = 0.0;   ///< part of the stroke, 0 to 1
    double actuator = 0.0;  ///< where the actuator stands
    LoopLimit limit = LoopLimit::None;
    bool isSpraying = true;  ///< false: standing still or all sections off; the command rests
};

/// The steady spray line of a setup as curves, so that a step costs no solving. Curves are cubic
/// through exact solutions, knots where the line changes its law (least and top speed, relief
/// valve, suction): flow at a control setting is right to 1e-6 of the full flow (tested), away from
/// the opening pressure of ball shut-off valves to 1e-6 of itself.
struct LoopCurves {
    MonotoneCurve metered;       ///< m³/s over control setting
    MonotoneCurve rootPressure;  ///< √Pa at the sensor over metered m³/s
    MonotoneCurve sprayed;       ///< m³/s over metered m³/s
    double leastControl = 0.0;   ///< of the floor: no lower command than this
    double mostControl = 1.0;    ///< of the ceiling: no higher
    static LoopCurves of(const LoopSetup& setup);
};

/// The rate loop in time, one step of 20 ms after the other (DEVELOPERS.md, "The loop"). A teaching
/// model: amplitudes are not predictions. Starts steady at half stroke; sensed by nothing, at the
/// setting that gives the healthy need at the usual speed. The same setup, drive and seed give the
/// same trace everywhere. A step allocates nothing.
class RateLoop {
  public:
    static constexpr double kStep = 0.02;        ///< s
    static constexpr double kNoiseMemory = 0.7;  ///< s

    explicit RateLoop(LoopSetup setup, std::uint64_t seed = 1);

    /// Other settings in mid-run (levers, faults): the state goes on from where it is. Works the
    /// curves out anew (about a millisecond), so not for every step.
    void change(LoopSetup setup);
    const LoopSetup& setup() const { return m_setup; }
    const LoopCurves& curves() const { return m_curves; }
    /// Ground speed (≥ 0) and target of the coming steps; cheap.
    void setSpeed(Speed speed) { m_sample.speed = speed; }
    void setTarget(AreaRate target) { m_setup.target = target; }

    const LoopSample& step();
    const LoopSample& sample() const { return m_sample; }

  private:
    void settleConstants();
    void startSteady();
    void control();
    double delayed();
    void flow();
    void sense();
    void show();
    double sensedFlow(double noise) const;

    LoopSetup m_setup;
    LoopCurves m_curves;
    Generator m_generator;
    SlowNoise m_meterNoise{kNoiseMemory, kStep};
    SlowNoise m_speedNoise{kNoiseMemory, kStep};
    std::vector<double> m_past;  ///< commands of the last steps, a ring
    std::size_t m_newest = 0;
    std::size_t m_delaySteps = 0;
    double m_delayPart = 0.0;  ///< of one more step
    double m_hydraulicShare = 1.0;
    double m_meterShare = 1.0;
    double m_width = 0.0;
    double m_meterMinimum = 0.0;
    bool m_isMeterNoisy = true;  ///< without noise none is drawn
    bool m_isSpeedNoisy = true;
    MonotoneCurve m_enteredFlow;  ///< over root of the reading, what the controller reckons
    double m_metered = 0.0;
    double m_shownFlow = 0.0;
    std::uint64_t m_steps = 0;
    LoopSample m_sample;
};

}  // namespace bw
