// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/hydraulics/nozzle_law.h"
#include "core/model/machine.h"

namespace bw {

/// One section as the liquid meets it. Wear and blockage change `openNozzles`, nothing else.
struct BoomSection {
    int nozzles = 0;           ///< as built
    double openNozzles = 0.0;  ///< sum of the nozzles' flows against a new one (10 new ones: 10)
    SquareLoss loss;           ///< valve, strainer and hose, at the section's own flow
    bool isOpen = true;
    bool operator==(const BoomSection&) const = default;
};

/// The boom behind its pressure sensor: for each section a valve, strainer and hose (a square-law
/// loss at the section's own flow), shut-off valves and nozzles. Pipe loss along the boom is left
/// out.
///
/// p_s = p_c + SG·K·Q_i² + p with p the nozzle pressure, p_c what a ball shut-off valve loses (not
/// scaled by density), Q_i = N_i·q(p). Every relation rises, so each pressure has one flow.
class BoomLine {
  public:
    /// At least one section, all with nozzles; `specificGravity` > 0.
    BoomLine(std::vector<BoomSection> sections, NozzleLaw law, Pressure valveLoss,
             double specificGravity);
    /// All sections alike in loss, open and as new.
    BoomLine(const std::vector<int>& sections, NozzleLaw law, SquareLoss sectionLoss,
             Pressure valveLoss, double specificGravity);

    int nozzles() const { return m_nozzles; }
    int largestSection() const { return m_largest; }
    int smallestSection() const { return m_smallest; }
    const std::vector<BoomSection>& sections() const { return m_sections; }
    const NozzleLaw& law() const { return m_law; }
    double specificGravity() const { return m_gravity; }
    Pressure valveLoss() const { return m_valveLoss; }
    /// Flow goes with √p at every point: closed forms hold.
    bool isHomogeneous() const { return m_law.isSquareRoot() && m_valveLoss.si() == 0.0; }
    /// m³/s per √Pa on water, from sensor to spray, ball valves apart. Only if the law is a square
    /// root.
    double conductance() const { return m_conductance; }

    /// Sensor pressure that brings the nozzles of an unblocked section of `sectionNozzles` to a
    /// nozzle pressure.
    Pressure sensorFor(Pressure nozzle, int sectionNozzles) const;
    /// Nozzle pressure in an unblocked section of that size; zero while the shut-off valves are
    /// shut.
    Pressure nozzleAt(Pressure sensor, int sectionNozzles) const;
    /// Flow of one section, as it is.
    Flow sectionFlow(Pressure sensor, const BoomSection& section) const;
    /// Nozzle pressure in one section, as it is.
    Pressure nozzleAt(Pressure sensor, const BoomSection& section) const;
    /// Flow of the whole boom at a sensor pressure.
    Flow flowAt(Pressure sensor) const;
    /// Sensor pressure at a flow (≥ 0) of the whole boom; infinite if every section is shut.
    Pressure sensorAt(Flow boom) const;
    /// Pressure of a nozzle that passes the mean flow.
    Pressure meanNozzlePressure(Flow boom) const;

  private:
    struct Group {
        BoomSection section;
        int count;  ///< how many such sections
    };
    double conductanceOf(const BoomSection& section) const;
    Flow flowOver(Pressure overValve, const BoomSection& section) const;

    std::vector<BoomSection> m_sections;
    std::vector<Group> m_groups;
    NozzleLaw m_law;
    Pressure m_valveLoss;
    double m_gravity;
    SquareLoss m_builtLoss;  ///< the least of all: what an unblocked section loses
    int m_nozzles = 0;
    int m_largest = 0;
    int m_smallest = 0;
    double m_conductance = 0.0;
};

/// Loss coefficient of "x pressure lost at y flow, clean, water"; zero if either is unknown.
SquareLoss squareLoss(const Loss& loss);
/// What the shut-off valves lose once open: the opening pressure of a ball kind, else nothing. A
/// kind that is not known counts as ball when an opening pressure is given.
Pressure shutOffLoss(const ShutOffValve& valve);

}  // namespace bw
