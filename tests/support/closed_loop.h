// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/call.h"
#include "core/diagnosis/next_check.h"
#include "core/simulation/fault.h"
#include "core/simulation/noise.h"
#include "core/simulation/simulate.h"
#include "tests/support/random_machines.h"

/// The finder against the simulation: a fault is put into the running loop, a caller reads the
/// simulated machine, the finder asks. It shows that finder and simulation agree with each other,
/// not that either agrees with farms.
namespace bw::closed_loop {

struct Rules {
    bool drawsWords = true;     ///< word answers that no figure gives: drawn from the shipped
                                ///< likelihoods of the injected cause, else "can't tell"
    double wrongAnswers = 0.0;  ///< part of all answers that are wrong
    double cantTell = 0.1;
};

/// Who stands at the machine. Sees displays, gauges, jugs with reading errors, and the injected
/// fault only where a check looks straight at it. The finder gets this object's answers alone.
class Caller {
  public:
    Caller(build::LoopCase machine, Fault fault, std::uint64_t seed, Rules rules);

    /// Whether the fault can be noticed at all here.
    bool feels() const { return m_feels; }
    /// Machine, nozzle, job, complaint, and the numbers of the first minute: speed, shown flow and
    /// rate, boom pressure.
    CaseRecord call();
    Observation answer(const Check& check);
    const LoopSetup& setup() const { return m_setup; }

  private:
    static Simulation runOf(const LoopSetup& setup, double part, double seconds);
    bool noticesRate();
    void readMachine(const LoopSetup& setup, const Simulation& run, Readings& out) const;
    void notice();
    bool settlesSlowly() const;
    std::optional<double> rightFrom() const;
    std::optional<std::string> figureAnswer(const std::string& check) const;
    std::optional<std::string> straightLook(const std::string& check) const;
    std::string drawn(const Check& check);
    Observation readingAnswer(const Check& check, Reading kind);

    build::LoopCase m_case;
    Fault m_fault;
    Rules m_rules;
    Generator m_generator;
    LoopSetup m_setup;  ///< with the fault
    LoopSetup m_healthySetup;
    Simulation m_run;
    Readings m_readings;
    double m_part = 1.0;  ///< speed of the complaint over the usual one
    bool m_feels = false;
    std::optional<Reading> m_oddFigure;
    std::optional<Symptom> m_symptom;
};

/// How one call went.
struct Outcome {
    std::string cause;
    int machine = 0;
    double severity = 0.0;
    bool felt = false;
    int rank = 0;               ///< of the finding that holds the cause, 1 is first
    int causeRank = 0;          ///< of the cause by itself
    std::size_t groupSize = 1;  ///< causes in the finding that holds it
    int checks = 0;
    int priorRank = 0;    ///< by priors and complaint alone
    bool unsafe = false;  ///< a line was opened before a safe check that still told
    std::string path;
    std::string first;  ///< finding
};
Outcome call(const build::LoopCase& machine, int number, const std::string& cause, Rules rules,
             std::uint64_t seed);

/// The three demo machines and seven of the drawn ones.
std::vector<build::LoopCase> machines();

struct Tally {
    int counted = 0;
    int notFelt = 0;
    int first = 0;
    int causeFirst = 0;
    int firstThree = 0;
    int priorsFirst = 0;
    int unsafe = 0;
    std::vector<int> checks;
    double medianChecks() const;
    double part(int of) const { return counted ? static_cast<double>(of) / counted : 0.0; }
};
Tally tally(const std::vector<Outcome>& outcomes);
std::vector<Outcome> runAll(const std::vector<build::LoopCase>& machines, Rules rules,
                            std::uint64_t seed);

}  // namespace bw::closed_loop
