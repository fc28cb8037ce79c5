// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#ifdef BW_HAS_CVODE

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/simulation/simulate.h"

namespace bw {

/// The loop without noise, dead time and stiction as a differential equation (command, flow, shown
/// flow), solved by SUNDIALS' CVODE on the circuit's exact solutions. Shares no step and no curve
/// with the simulation.
class CvodeLoop {
  public:
    CvodeLoop(const LoopSetup& setup, Drive drive, double tolerance)
        : m_setup(setup), m_drive(std::move(drive)), m_circuit(setup.running()) {
        m_least = setup.floor ? controlFor(*setup.floor) : 0.0;
        m_most = setup.ceiling ? controlFor(*setup.ceiling) : 1.0;
        SUNContext_Create(nullptr, &m_context);
        m_state = N_VNew_Serial(3, m_context);
        double* y = N_VGetArrayPointer(m_state);
        y[0] = std::min(std::max(0.5, m_least), m_most);  // where the first step puts it
        y[1] = m_circuit.atControl(0.5).metered.si();
        y[2] = setup.meter.scale * y[1];
        m_scale = y[1];
        m_tolerances = N_VNew_Serial(3, m_context);
        double* t = N_VGetArrayPointer(m_tolerances);
        t[0] = tolerance;
        t[1] = t[2] = tolerance * m_scale;
        m_solver = CVodeCreate(CV_BDF, m_context);
        CVodeInit(m_solver, rightSide, 0.0, m_state);
        CVodeSVtolerances(m_solver, tolerance, m_tolerances);
        CVodeSetUserData(m_solver, this);
        CVodeSetMaxNumSteps(m_solver, 1000000);
        CVodeSetMaxStep(m_solver, 1.0);
        m_matrix = SUNDenseMatrix(3, 3, m_context);
        m_linear = SUNLinSol_Dense(m_state, m_matrix, m_context);
        CVodeSetLinearSolver(m_solver, m_linear, m_matrix);
    }
    ~CvodeLoop() {
        CVodeFree(&m_solver);
        SUNLinSolFree(m_linear);
        SUNMatDestroy(m_matrix);
        N_VDestroy(m_tolerances);
        N_VDestroy(m_state);
        SUNContext_Free(&m_context);
    }
    CvodeLoop(const CvodeLoop&) = delete;
    CvodeLoop& operator=(const CvodeLoop&) = delete;

    /// Goes on to a time (s); false if the solver gave up.
    bool to(double time) {
        double reached = 0;
        return CVode(m_solver, time, m_state, &reached, CV_NORMAL) >= 0;
    }
    double command() const { return N_VGetArrayPointer(m_state)[0]; }
    double flow() const { return N_VGetArrayPointer(m_state)[1]; }
    double shownFlow() const { return N_VGetArrayPointer(m_state)[2]; }

  private:
    double controlFor(Pressure reading) const {
        const Pressure sensor = reading / m_setup.meter.sensorScale;
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; ++i) {
            const double middle = 0.5 * (low + high);
            (m_circuit.atControl(middle).sensor < sensor ? low : high) = middle;
        }
        return 0.5 * (low + high);
    }
    static int rightSide(double time, N_Vector state, N_Vector rate, void* self) {
        static_cast<const CvodeLoop*>(self)->derive(time, N_VGetArrayPointer(state),
                                                    N_VGetArrayPointer(rate));
        return 0;
    }
    void derive(double time, const double* y, double* d) const {
        const LoopControl& c = m_setup.control;
        const LoopMeter& m = m_setup.meter;
        const Speed speed = m_drive.at(Duration::fromSi(std::max(0.0, time)));
        const double wish =
            m_setup.target.si() * speed.si() * m.speedScale * m_setup.widthOn().si() * m.widthScale;
        const double error = 1 - y[2] / wish;
        d[0] = std::abs(error) > c.deadBand ? std::clamp(c.gain * error, -c.slew, c.slew) : 0.0;
        if (y[0] <= m_least) d[0] = std::max(d[0], 0.0);
        if (y[0] >= m_most) d[0] = std::min(d[0], 0.0);
        const double steady = m_circuit.atControl(std::clamp(y[0], 0.0, 1.0)).metered.si();
        d[1] = (steady - y[1]) / c.hydraulicLag.si();
        d[2] = (m.scale * y[1] - y[2]) / c.meterLag.si();
    }

    const LoopSetup& m_setup;
    Drive m_drive;
    Circuit m_circuit;
    double m_least = 0.0;
    double m_most = 1.0;
    double m_scale = 1.0;
    SUNContext m_context = nullptr;
    N_Vector m_state = nullptr;
    N_Vector m_tolerances = nullptr;
    SUNMatrix m_matrix = nullptr;
    SUNLinearSolver m_linear = nullptr;
    void* m_solver = nullptr;
};

/// A setup without what a differential equation cannot hold.
inline LoopSetup smoothed(LoopSetup setup) {
    setup.meter.noise = setup.meter.noiseBelow = setup.meter.noiseAdded = 0;
    setup.meter.speedNoise = 0;
    setup.control.deadTime = Duration{};
    setup.control.stiction = 0;
    return setup;
}

}  // namespace bw

#endif
