// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/hydraulics/nozzle_law.h"
#include "core/model/machine.h"

namespace bw {

/// The boom behind its pressure sensor: for each section a valve, strainer and hose (a square-law
/// loss at the section's own flow), shut-off valves and nozzles. Pipe loss along the boom is left
/// out.
///
/// p_s = p_c + SG·K·Q_i² + p with p the nozzle pressure, p_c what a ball shut-off valve loses (not
/// scaled by density), Q_i = N_i·q(p). Every relation rises, so each pressure has one flow.
class BoomLine {
  public:
    /// `sections`: nozzles in each section, all positive, at least one section.
    BoomLine(std::vector<int> sections, NozzleLaw law, SquareLoss sectionLoss, Pressure valveLoss,
             double specificGravity);

    int nozzles() const { return m_nozzles; }
    int largestSection() const { return m_largest; }
    int smallestSection() const { return m_smallest; }
    const NozzleLaw& law() const { return m_law; }
    double specificGravity() const { return m_gravity; }
    Pressure valveLoss() const { return m_valveLoss; }

    /// Sensor pressure that brings the nozzles of a section of `sectionNozzles` to a nozzle
    /// pressure.
    Pressure sensorFor(Pressure nozzle, int sectionNozzles) const;
    /// Nozzle pressure in a section of that size; zero while the shut-off valves are shut.
    Pressure nozzleAt(Pressure sensor, int sectionNozzles) const;
    /// Flow of the whole boom at a sensor pressure.
    Flow flowAt(Pressure sensor) const;
    /// Sensor pressure at a flow (≥ 0) of the whole boom.
    Pressure sensorAt(Flow boom) const;
    /// Pressure of a nozzle that passes the mean flow.
    Pressure meanNozzlePressure(Flow boom) const;

  private:
    struct Group {
        int size;   ///< nozzles in each of these sections
        int count;  ///< how many such sections
    };
    double sectionConductance(int size) const;  ///< m³/s per √Pa on water (square-root law)
    Flow sectionFlow(Pressure overValve, int size) const;

    std::vector<Group> m_groups;
    NozzleLaw m_law;
    double m_loss;  ///< Pa·s²/m⁶
    Pressure m_valveLoss;
    double m_gravity;
    int m_nozzles = 0;
    int m_largest = 0;
    int m_smallest = 0;
    double m_conductance = 0.0;  ///< whole boom, square-root law only
};

/// Loss coefficient of "x pressure lost at y flow, clean, water"; zero if either is unknown.
SquareLoss squareLoss(const Loss& loss);
/// What the shut-off valves lose once open: the opening pressure of a ball kind, else nothing. A
/// kind that is not known counts as ball when an opening pressure is given.
Pressure shutOffLoss(const ShutOffValve& valve);

}  // namespace bw
