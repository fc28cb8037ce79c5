// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <utility>
#include <vector>

namespace bw {

/// One row of a yes-no programme: the sum of factor × variable lies within low and high.
struct BinaryRow {
    std::vector<std::pair<int, double>> terms;  ///< variable (from 0) and its factor
    double low = 0.0;
    double high = 0.0;  ///< may be infinite
};

/// Least sum of cost × variable, every variable 0 or 1, subject to the rows.
struct BinaryProgram {
    std::vector<double> costs;  ///< one a variable
    std::vector<BinaryRow> rows;
};

enum class SolveEnd { Optimal, Infeasible, Cancelled, Failed };
struct BinaryAnswer {
    SolveEnd end = SolveEnd::Failed;
    std::vector<bool> values;  ///< only if optimal
};

/// What solves such a programme exactly; another solver can stand here.
using BinarySolver =
    std::function<BinaryAnswer(const BinaryProgram&, const std::function<bool()>& isCancelled)>;

/// The integer solver of the GLPK library, silent. `isCancelled` (may be empty) is asked at each
/// step of the search. The answer is checked against the rows before it is called optimal.
BinaryAnswer solveByGlpk(const BinaryProgram& program, const std::function<bool()>& isCancelled);

}  // namespace bw
