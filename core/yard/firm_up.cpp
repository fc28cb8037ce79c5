// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/firm_up.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/window/rests_on.h"
#include "core/yard/yard_book.h"

namespace bw {
namespace {

constexpr std::size_t kMostTogether = 8;  // 256 windows
constexpr double kFelt = 0.005;

struct Pairing {
    Machine machine;
    Nozzle nozzle;
    Job job;
};

template <class Record>
void setToEnd(Record& record, std::string_view key, bool upper) {
    visitFields(record, [&](std::string_view k, auto& field) {
        if (k == key && field) field->value = upper ? *field->to : *field->from;
    });
}

void setToEnd(Pairing& pairing, const std::string& where, bool upper) {
    const auto dot = where.find('.');
    const std::string_view part = std::string_view(where).substr(0, dot);
    const std::string_view key = std::string_view(where).substr(dot + 1);
    if (part == "machine")
        setToEnd(pairing.machine, key, upper);
    else if (part == "nozzle")
        setToEnd(pairing.nozzle, key, upper);
    else
        setToEnd(pairing.job, key, upper);
}

/// From least to most of some numbers; nothing has no size.
struct Span {
    double from = std::numeric_limits<double>::infinity();
    double to = -std::numeric_limits<double>::infinity();
    void add(double x) {
        from = std::min(from, x);
        to = std::max(to, x);
    }
    bool isEmpty() const { return to < from; }
    double size() const { return isEmpty() ? 0.0 : to - from; }
};

/// The ends over a number of windows.
class Box {
  public:
    explicit Box(double noLimit) : m_noLimit(noLimit) {}
    void add(const WindowEnds& ends) {
        m_lows.add(ends.low ? ends.low->si() : 0.0);
        if (ends.high) m_highs.add(ends.high->si());
        m_isOpen = m_isOpen || !ends.high;
        m_hasEmpty = m_hasEmpty || ends.empty;
    }
    void addNone() { m_hasEmpty = true; }
    double size() const {
        Span highs = m_highs;
        if (m_isOpen && !highs.isEmpty()) highs.add(m_noLimit);
        return m_lows.size() + highs.size();
    }
    EndSpread low() const {
        if (m_lows.isEmpty()) return {};
        return {Speed::fromSi(m_lows.from), Speed::fromSi(m_lows.to)};
    }
    EndSpread high() const {
        if (m_highs.isEmpty()) return {};
        EndSpread out{Speed::fromSi(m_highs.from), std::nullopt};
        if (!m_isOpen) out.to = Speed::fromSi(m_highs.to);
        return out;
    }
    bool hasEmpty() const { return m_hasEmpty; }

  private:
    double m_noLimit;
    Span m_lows;
    Span m_highs;
    bool m_isOpen = false;
    bool m_hasEmpty = false;
};

double partMoved(std::optional<Speed> a, std::optional<Speed> b) {
    if (!a || !b) return a.has_value() == b.has_value() ? 0.0 : 1.0;
    const double size = std::max(a->si(), b->si());
    return size > 0 ? std::abs(a->si() - b->si()) / size : 0.0;
}

/// How far one range moves the window by itself; one that leaves no window moves it furthest.
double reachOf(const RestsOn& item) {
    if (!item.move) return std::numeric_limits<double>::infinity();
    return partMoved(item.move->atFrom.low, item.move->atTo.low) +
           partMoved(item.move->atFrom.high, item.move->atTo.high);
}

/// The assumed values with a range, those that move the window most first.
std::vector<std::string> rangedValues(const Pairing& p) {
    std::vector<RestsOn> items = restsOn(p.machine, p.nozzle, p.job);
    std::erase_if(items, [](const RestsOn& item) { return !item.hasRange || !item.value; });
    std::stable_sort(items.begin(), items.end(),
                     [](const RestsOn& a, const RestsOn& b) { return reachOf(a) > reachOf(b); });
    if (items.size() > kMostTogether) items.resize(kMostTogether);
    std::vector<std::string> out;
    for (const auto& item : items) out.push_back(item.where);
    return out;
}

class FirmUpReader {
  public:
    explicit FirmUpReader(Pairing pairing) : m_pairing(std::move(pairing)) {
        const Job& job = m_pairing.job;
        const auto fast = job.fast ? bare(job.fast) : bare(job.usual);
        m_noLimit = kNoLimitCounts * (fast ? fast->si() : 0.0);
        m_values = rangedValues(m_pairing);
        m_whole = over(m_values).size();
    }

    std::vector<FirmUp> read() const {
        std::vector<FirmUp> out;
        for (const YardCheckText& check : yardChecks()) {
            if (applies(check, m_pairing.machine)) readOne(check, out);
        }
        std::stable_sort(out.begin(), out.end(),
                         [](const FirmUp& a, const FirmUp& b) { return a.shrinks > b.shrinks; });
        return out;
    }

  private:
    /// The window at every corner of these ranges, the other values as they are.
    Box over(const std::vector<std::string>& values) const {
        Box box(m_noLimit);
        for (std::size_t corner = 0; corner < std::size_t(1) << values.size(); ++corner) {
            Pairing p = m_pairing;
            for (std::size_t i = 0; i < values.size(); ++i)
                setToEnd(p, values[i], (corner >> i & 1U) != 0);
            const auto ends = windowEnds(p.machine, p.nozzle, p.job);
            ends ? box.add(*ends) : box.addNone();
        }
        return box;
    }

    void readOne(const YardCheckText& check, std::vector<FirmUp>& out) const {
        std::vector<std::string> own;
        std::vector<std::string> rest;
        for (const auto& value : m_values) (check.firmsUp(value) ? own : rest).push_back(value);
        if (own.empty()) return;
        const Box box = over(own);
        const double shrinks = m_whole - over(rest).size();
        const double felt = kFelt * m_noLimit / kNoLimitCounts;
        if (box.size() < felt && shrinks < felt && !box.hasEmpty()) return;
        out.push_back({check.id, own, box.low(), box.high(), box.hasEmpty(),
                       Speed::fromSi(std::max(0.0, shrinks))});
    }

    Pairing m_pairing;
    double m_noLimit = 0.0;
    std::vector<std::string> m_values;
    double m_whole = 0.0;
};

}  // namespace

std::vector<FirmUp> firmUps(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    if (!windowEnds(machine, nozzle, job)) return {};
    return FirmUpReader({machine, nozzle, job}).read();
}

std::optional<FirmUp> firmUp(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto all = firmUps(machine, nozzle, job);
    return all.empty() ? std::nullopt : std::optional(all.front());
}

}  // namespace bw
