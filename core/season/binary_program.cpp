// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/binary_program.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <memory>

namespace bw {
namespace {

struct Deleter {
    void operator()(glp_prob* p) const { glp_delete_prob(p); }
};
using Problem = std::unique_ptr<glp_prob, Deleter>;

void addRow(glp_prob* lp, int index, const BinaryRow& row) {
    std::vector<int> places{0};
    std::vector<double> factors{0.0};
    for (const auto& [variable, factor] : row.terms) {
        places.push_back(variable + 1);
        factors.push_back(factor);
    }
    const bool open = std::isinf(row.high);
    const int kind = open ? GLP_LO : row.low < row.high ? GLP_DB : GLP_FX;
    glp_set_row_bnds(lp, index, kind, row.low, open ? 0.0 : row.high);
    glp_set_mat_row(lp, index, static_cast<int>(row.terms.size()), places.data(), factors.data());
}

Problem built(const BinaryProgram& program) {
    Problem lp(glp_create_prob());
    glp_set_obj_dir(lp.get(), GLP_MIN);
    // The library aborts when asked to add no rows or columns.
    if (!program.costs.empty()) glp_add_cols(lp.get(), static_cast<int>(program.costs.size()));
    for (std::size_t i = 0; i < program.costs.size(); ++i) {
        glp_set_col_kind(lp.get(), static_cast<int>(i) + 1, GLP_BV);
        glp_set_obj_coef(lp.get(), static_cast<int>(i) + 1, program.costs[i]);
    }
    if (!program.rows.empty()) glp_add_rows(lp.get(), static_cast<int>(program.rows.size()));
    for (std::size_t i = 0; i < program.rows.size(); ++i)
        addRow(lp.get(), static_cast<int>(i) + 1, program.rows[i]);
    return lp;
}

void stopIfCancelled(glp_tree* tree, void* info) {
    const auto* isCancelled = static_cast<const std::function<bool()>*>(info);
    if (*isCancelled && (*isCancelled)()) glp_ios_terminate(tree);
}

bool keepsRows(const BinaryProgram& program, const std::vector<bool>& values) {
    return std::all_of(program.rows.begin(), program.rows.end(), [&](const BinaryRow& row) {
        double sum = 0.0;
        for (const auto& [variable, factor] : row.terms)
            if (values[static_cast<std::size_t>(variable)]) sum += factor;
        const double slack = 1e-9 * std::max(1.0, std::abs(sum));
        return sum >= row.low - slack && sum <= row.high + slack;
    });
}

}  // namespace

BinaryAnswer solveByGlpk(const BinaryProgram& program, const std::function<bool()>& isCancelled) {
    if (isCancelled && isCancelled()) return {SolveEnd::Cancelled, {}};
    glp_term_out(GLP_OFF);
    const Problem lp = built(program);
    glp_iocp parameters;
    glp_init_iocp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.presolve = GLP_ON;
    parameters.cb_func = stopIfCancelled;
    auto asked = isCancelled;
    parameters.cb_info = &asked;
    const int end = glp_intopt(lp.get(), &parameters);
    if (end == GLP_ESTOP) return {SolveEnd::Cancelled, {}};
    if (end == GLP_ENOPFS || end == GLP_ENODFS) return {SolveEnd::Infeasible, {}};
    const int status = glp_mip_status(lp.get());
    if (end == 0 && status == GLP_NOFEAS) return {SolveEnd::Infeasible, {}};
    if (end != 0 || status != GLP_OPT) return {SolveEnd::Failed, {}};
    BinaryAnswer answer{SolveEnd::Optimal, {}};
    for (std::size_t i = 0; i < program.costs.size(); ++i)
        answer.values.push_back(glp_mip_col_val(lp.get(), static_cast<int>(i) + 1) > 0.5);
    if (!keepsRows(program, answer.values)) return {SolveEnd::Failed, {}};
    return answer;
}

}  // namespace bw
