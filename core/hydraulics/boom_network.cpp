// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/boom_network.h"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kFlowTolerance = 1e-9;  // change of a step over the boom's flow
constexpr int kMostSteps = 200;

std::optional<Problem> boomProblem(const BoomPipe& boom, Pressure feed) {
    if (boom.nozzles < 1 || !(boom.spacing.si() > 0))
        return error("boom_needs_nozzles", "machine.sections");
    if (!(boom.pipe.bore.si() > 0)) return error("boom_needs_bore", "boom_pipe.bore");
    if (!(boom.pipe.viscosity.si() > 0)) return error("boom_needs_bore", "boom_pipe.viscosity");
    if (boom.pipe.roughness.si() < 0 || boom.pipe.roughness >= boom.pipe.bore)
        return error("boom_too_rough", "boom_pipe.roughness");
    if (boom.feeds.empty()) return error("boom_needs_feed", "boom_pipe.feed");
    for (const int f : boom.feeds) {
        if (f < 1 || f > boom.nozzles)
            return error(
                "boom_feed_outside", "boom_pipe.feed",
                {{"number", std::to_string(f)}, {"nozzles", std::to_string(boom.nozzles)}});
    }
    if (!(feed.si() > 0)) return error("boom_needs_pressure", "pressure");
    return std::nullopt;
}

/// A length of pipe between two nodes; its flow runs from `a` to `b`.
struct Link {
    int a;
    int b;
    Length length;
    double flow = 0.0;
    PipeLoss loss{};  ///< at `flow`
    /// Where its four entries stand in the matrix; null for a fed end.
    double* atA = nullptr;
    double* atB = nullptr;
    double* across = nullptr;
};

class Network {
  public:
    Network(const BoomPipe& boom, const NozzleLaw& law, Pressure feed, double gravity)
        : m_boom(boom),
          m_law(law),
          m_pipe(boom.pipe),
          m_gravity(gravity),
          m_isFeed(static_cast<std::size_t>(boom.nozzles), false),
          m_feed(feed.si()),
          m_drop(static_cast<std::size_t>(boom.nozzles), 0.0),
          m_emitted(m_drop.size(), law.flow(feed, gravity).si()) {
        m_pipe.density *= gravity;
        for (const int f : boom.feeds) m_isFeed[static_cast<std::size_t>(f - 1)] = true;
        for (int i = 0; i + 1 < boom.nozzles; ++i) m_links.push_back({i, i + 1, boom.spacing});
        if (boom.ring && boom.nozzles > 1)
            m_links.push_back(
                {boom.nozzles - 1, 0, static_cast<double>(boom.nozzles - 1) * boom.spacing});
        m_nozzleLoss.resize(m_emitted.size());
        numberUnknowns();
    }

    /// Iterations, or nothing if it does not settle.
    std::optional<int> solve() {
        startFlows();
        layOutMatrix();
        for (int step = 1; step <= kMostSteps; ++step) {
            findLosses();
            if (m_unknowns > 0) solvePressures();
            if (updateFlows() <= kFlowTolerance) return step;
        }
        return std::nullopt;
    }

    double pressure(std::size_t node) const { return m_feed - m_drop[node]; }

    /// Worst imbalance at a nozzle that is not fed, with the nozzles' own law at the pressures
    /// found, against what a nozzle at the feed sprays.
    double residual() const {
        std::vector<double> out(m_drop.size(), 0.0);
        for (const auto& link : m_links) {
            out[static_cast<std::size_t>(link.a)] += link.flow;
            out[static_cast<std::size_t>(link.b)] -= link.flow;
        }
        const double full = m_law.flow(Pressure::fromSi(m_feed), m_gravity).si();
        double worst = 0.0;
        for (std::size_t i = 0; i < out.size(); ++i) {
            if (!m_isFeed[i])
                worst = std::max(worst, std::abs(out[i] + nozzleFlow(pressure(i))) / full);
        }
        return worst;
    }

  private:
    void numberUnknowns() {
        m_number.assign(m_isFeed.size(), -1);
        for (std::size_t i = 0; i < m_isFeed.size(); ++i) {
            if (!m_isFeed[i]) m_number[i] = m_unknowns++;
        }
    }
    /// Any start will do; a fair one saves steps: each nozzle as if fed straight from the nearest
    /// feed, a return pipe not at all.
    void startFlows() {
        const double one = m_emitted.front();
        std::vector<int> nearest(m_drop.size(), m_boom.feeds.front() - 1);
        for (std::size_t i = 0; i < nearest.size(); ++i) {
            for (const int feed : m_boom.feeds) {
                const int node = static_cast<int>(i);
                if (std::abs(feed - 1 - node) < std::abs(nearest[i] - node)) nearest[i] = feed - 1;
            }
        }
        double passed = 0.0;  // what the nozzles left of a link still ask for, toward their feed
        for (std::size_t i = 0; i + 1 < m_drop.size(); ++i) {
            const int node = static_cast<int>(i);
            if (nearest[i] == node) passed = 0.0;
            if (node < nearest[i]) {
                passed += one;
                m_links[i].flow = nearest[i] == nearest[i + 1] ? -passed : 0.0;
            }
        }
        passed = 0.0;
        for (std::size_t i = m_drop.size() - 1; i > 0; --i) {
            const int node = static_cast<int>(i);
            if (nearest[i] == node) passed = 0.0;
            if (node > nearest[i]) {
                passed += one;
                m_links[i - 1].flow = nearest[i] == nearest[i - 1] ? passed : 0.0;
            }
        }
    }
    /// The pattern stays through all steps: it is laid out once, and each part knows its entries.
    void layOutMatrix() {
        std::vector<Eigen::Triplet<double>> entries;
        for (int i = 0; i < m_unknowns; ++i) entries.emplace_back(i, i, 1.0);
        for (const auto& link : m_links) {
            const auto [a, b] = rowsOf(link);
            if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), 1.0);
        }
        m_matrix.resize(m_unknowns, m_unknowns);
        m_matrix.setFromTriplets(entries.begin(), entries.end());
        for (int i = 0; i < m_unknowns; ++i) m_diagonal.push_back(&m_matrix.coeffRef(i, i));
        for (auto& link : m_links) {
            const auto [a, b] = rowsOf(link);
            if (a >= 0) link.atA = m_diagonal[static_cast<std::size_t>(a)];
            if (b >= 0) link.atB = m_diagonal[static_cast<std::size_t>(b)];
            if (a >= 0 && b >= 0) link.across = &m_matrix.coeffRef(std::max(a, b), std::min(a, b));
        }
        m_cholesky.analyzePattern(m_matrix);
        m_right.resize(m_unknowns);
    }
    std::pair<int, int> rowsOf(const Link& link) const {
        return {m_number[static_cast<std::size_t>(link.a)],
                m_number[static_cast<std::size_t>(link.b)]};
    }
    /// Nozzle: pressure as a function of flow, with its slope. A straight line through nothing
    /// under a hundred-thousandth of the rated flow, so that the slope never vanishes and a starved
    /// nozzle settles.
    PipeLoss nozzleLoss(double flow) const {
        const double q = std::max(flow, leastFlow());
        const double p = m_law.pressure(Flow::fromSi(q), m_gravity).si();
        if (flow < leastFlow()) return {p / leastFlow() * flow, p / leastFlow()};
        return {p, p / (m_law.exponent() * q)};
    }
    double leastFlow() const { return 1e-5 * m_law.qRef().si(); }
    double nozzleFlow(double p) const {
        const double least = m_law.pressure(Flow::fromSi(leastFlow()), m_gravity).si();
        return p < least ? leastFlow() * p / least
                         : m_law.flow(Pressure::fromSi(p), m_gravity).si();
    }

    void solvePressures() {
        std::fill_n(m_matrix.valuePtr(), m_matrix.nonZeros(), 0.0);
        m_right.setZero();
        for (std::size_t i = 0; i < m_drop.size(); ++i) {
            const int row = m_number[i];
            if (row < 0) continue;
            const auto& loss = m_nozzleLoss[i];
            *m_diagonal[static_cast<std::size_t>(row)] += 1 / loss.slopePaPerM3PerS;
            m_right[row] += (m_feed - loss.pressurePa) / loss.slopePaPerM3PerS + m_emitted[i];
        }
        for (const auto& link : m_links) addLink(link);
        m_cholesky.factorize(m_matrix);
        m_solution = m_cholesky.solve(m_right);
        for (std::size_t i = 0; i < m_drop.size(); ++i) {
            if (m_number[i] >= 0) m_drop[i] = m_solution[m_number[i]];
        }
    }

    void addLink(const Link& link) {
        const double conductance = 1 / link.loss.slopePaPerM3PerS;
        const double offset = link.flow - conductance * link.loss.pressurePa;
        if (link.atA) *link.atA += conductance;
        if (link.atB) *link.atB += conductance;
        if (link.across) *link.across -= conductance;
        const auto [a, b] = rowsOf(link);
        if (a >= 0) m_right[a] += offset;
        if (b >= 0) m_right[b] -= offset;
    }

    /// Losses and their slopes at the flows in hand.
    void findLosses() {
        for (auto& link : m_links)
            link.loss = pipeLoss(m_pipe, link.length, Flow::fromSi(link.flow));
        for (std::size_t i = 0; i < m_emitted.size(); ++i)
            m_nozzleLoss[i] = nozzleLoss(m_emitted[i]);
    }

    double between(const Link& link) const {
        return m_drop[static_cast<std::size_t>(link.b)] - m_drop[static_cast<std::size_t>(link.a)];
    }

    /// Largest change of a flow over the largest nozzle flow.
    double updateFlows() {
        double change = 0.0;
        double largest = 0.0;
        const double mostRise = 0.3 * m_law.flow(Pressure::fromSi(m_feed), m_gravity).si();
        for (auto& link : m_links) {
            const double next =
                link.flow + (between(link) - link.loss.pressurePa) / link.loss.slopePaPerM3PerS;
            change = std::max(change, std::abs(next - link.flow));
            link.flow = next;
        }
        for (std::size_t i = 0; i < m_emitted.size(); ++i) {
            const auto& loss = m_nozzleLoss[i];
            const double wish =
                m_emitted[i] + (pressure(i) - loss.pressurePa) / loss.slopePaPerM3PerS;
            const double next =
                std::min(wish, m_emitted[i] + mostRise);  // the steep start of √p overshoots
            change = std::max(change, std::abs(next - m_emitted[i]));
            largest = std::max(largest, next);
            m_emitted[i] = next;
        }
        return change / largest;
    }

    const BoomPipe& m_boom;
    const NozzleLaw& m_law;
    Pipe m_pipe;
    double m_gravity;
    std::vector<bool> m_isFeed;
    double m_feed;
    /// Unknown is the drop from the feed, not the pressure: in a wide pipe the drops are tiny, and
    /// differences of pressures would be lost in rounding.
    std::vector<double> m_drop;
    std::vector<double> m_emitted;
    std::vector<Link> m_links;
    std::vector<int> m_number;
    std::vector<PipeLoss> m_nozzleLoss;
    int m_unknowns = 0;
    Eigen::SparseMatrix<double> m_matrix;  ///< lower half
    std::vector<double*> m_diagonal;
    Eigen::VectorXd m_right;
    Eigen::VectorXd m_solution;
    Eigen::SimplicialLLT<Eigen::SparseMatrix<double>> m_cholesky;
};

void summarise(BoomEvenness& out, Pressure feed) {
    double sum = 0.0;
    Pressure weakest = feed;
    for (const auto& n : out.nozzles) {
        sum += n.flow.si();
        weakest = std::min(weakest, n.pressure);
    }
    const auto count = static_cast<double>(out.nozzles.size());
    const double mean = sum / count;
    double squares = 0.0;
    for (const auto& n : out.nozzles) squares += (n.flow.si() - mean) * (n.flow.si() - mean);
    out.cv = count > 1 ? std::sqrt(squares / (count - 1)) / mean : 0.0;
    out.drop = (feed - weakest) / feed;
}

}  // namespace

Result<BoomEvenness> boomEvenness(const BoomPipe& boom, const NozzleLaw& law, Pressure feedPressure,
                                  double specificGravity) {
    if (const auto problem = boomProblem(boom, feedPressure)) return *problem;
    Network network(boom, law, feedPressure, specificGravity);
    const auto steps = network.solve();
    BoomEvenness out;
    out.residual = network.residual();
    if (!steps || !(out.residual < 1e-9)) return error("boom_not_converged", "boom_pipe");
    out.iterations = *steps;
    for (int i = 0; i < boom.nozzles; ++i) {
        const Pressure p = Pressure::fromSi(network.pressure(static_cast<std::size_t>(i)));
        out.nozzles.push_back({p, law.flow(p, specificGravity)});
    }
    summarise(out, feedPressure);
    return out;
}

}  // namespace bw
