// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/diagnosis/readings.h"
#include "core/model/case_record.h"
#include "core/window/speed_window.h"

namespace bw {

/// The readings of a case, each in SI; several of one kind count as their mean.
using Readings = std::array<std::optional<double>, kReadings>;

/// What is known of a case as plain numbers: whatever of machine, nozzle, job and speed is missing
/// stays unknown here, and nothing is assumed in its place.
struct CaseNumbers {
    Readings readings;
    Senses senses = Senses::Flow;  ///< flow where the machine does not say
    std::optional<AreaRate> rate;  ///< target
    std::optional<Speed> speed;    ///< at which it goes wrong
    bool speedWasRead = false;     ///< off the display, in this call; else the job's usual speed
    std::optional<Length> width;
    std::vector<int> sections;  ///< nozzles in each; empty: unknown
    std::optional<Pressure> floor;
    std::optional<Pressure> ceiling;
    std::optional<bool> restrictorFitted;
    std::optional<RestrictorPosition> position;
    std::optional<Flow> changeover;
    std::optional<Flow> minimumFullBore;
    std::optional<Flow> minimumNarrowed;
    /// Pressure against flow of this boom; needs spacing and nozzle. Without section sizes it holds
    /// one section without loss.
    std::optional<WindowModel> boom;
    std::optional<Flow> needNozzle;      ///< one nozzle's, for the rate at the speed
    std::optional<Flow> needFlow;        ///< whole boom
    std::optional<Pressure> needSensor;  ///< at the boom sensor

    explicit CaseNumbers(const CaseRecord& record);

    std::optional<double> reading(Reading r) const { return readings[static_cast<std::size_t>(r)]; }
    /// Part of the needed flow that passes at a sensor pressure (SI); needs `needSensor`.
    double ratioAt(double sensor) const;
    /// Sensor pressure (SI) for a part of the needed flow; needs `needSensor`.
    double sensorAt(double ratio) const;
    /// Whole-boom flow shown, or from the rate shown; nothing without either.
    std::optional<Flow> shownFlow() const;
    /// Shown over target, from the flow if it was read (many displays smooth the rate).
    std::optional<double> shownRatio() const;
    /// Sensor pressure read, or the tested gauge's.
    std::optional<Pressure> pressureRead() const;
    /// Where the restrictor ought to stand for the needed flow; nothing if unknown or within a
    /// tenth of the changeover flow.
    std::optional<RestrictorPosition> rightPosition() const;
    /// The meter's least flow for the position that the restrictor has (full bore if none).
    std::optional<Flow> meterMinimum() const;
    bool hasMeter() const { return senses == Senses::Flow || senses == Senses::Both; }

  private:
    double m_modelRatio = 1.0;  ///< needed flow over the flow of the boom model's own demand
    void buildBoom(const CaseRecord& record);
    void readAll(const CaseRecord& record);
};

/// Hunting is never worked out from single numbers; off by more than 3 % is stuck.
std::optional<Symptom> symptomFromNumbers(const CaseNumbers& numbers);

/// A reading of this check id in a case ("speed" sets the speed of the complaint and is no
/// evidence).
inline constexpr std::string_view kSpeedRead = "speed";

}  // namespace bw
