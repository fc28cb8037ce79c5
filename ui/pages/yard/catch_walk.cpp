// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_walk.h"

#include <algorithm>
#include <numeric>

#include "core/yard/catch_record.h"

namespace bw {
namespace {

constexpr const char* kDirection = "direction";
constexpr const char* kFromRight = "from_right";

}  // namespace

bool isFromRight(const YardRecord& record) {
    return std::any_of(record.choices.begin(), record.choices.end(), [](const NotedChoice& c) {
        return c.id == kDirection && c.word == kFromRight;
    });
}

void setFromRight(YardRecord& record, bool fromRight) {
    std::erase_if(record.choices, [](const NotedChoice& c) { return c.id == kDirection; });
    record.choices.push_back({kDirection, fromRight ? kFromRight : "from_left"});
}

CatchWalk::CatchWalk(const YardRecord& record)
    : m_test(record.catchTest),
      m_order(nozzlesToCatch(record.catchTest)),
      m_nozzles(
          std::accumulate(record.catchTest.sections.begin(), record.catchTest.sections.end(), 0)) {
    if (isFromRight(record)) std::reverse(m_order.begin(), m_order.end());
}

bool CatchWalk::isCaught(int nozzle) const {
    return std::any_of(m_test.catches.begin(), m_test.catches.end(),
                       [&](const NotedCatch& c) { return c.nozzle == nozzle; });
}

int CatchWalk::caughtCount() const {
    return static_cast<int>(std::count_if(m_order.begin(), m_order.end(),
                                          [this](int nozzle) { return isCaught(nozzle); }));
}

std::optional<int> CatchWalk::nextOpen(int nozzle) const {
    const auto here = std::find(m_order.begin(), m_order.end(), nozzle);
    const auto start = here == m_order.end() ? m_order.begin() : here + 1;
    const auto isOpen = [this](int one) { return !isCaught(one); };
    const auto after = std::find_if(start, m_order.end(), isOpen);
    if (after != m_order.end()) return *after;
    const auto before = std::find_if(m_order.begin(), start, isOpen);
    return before == start ? std::nullopt : std::optional(*before);
}

int CatchWalk::neighbour(int nozzle, int step) const {
    const auto here = std::find(m_order.begin(), m_order.end(), nozzle);
    if (here == m_order.end()) return m_order.empty() ? nozzle : m_order.front();
    const auto place = here - m_order.begin() + step;
    const auto most = static_cast<std::ptrdiff_t>(m_order.size()) - 1;
    return m_order[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(place, 0, most))];
}

int CatchWalk::sectionOf(int nozzle) const {
    int end = 0;
    for (std::size_t i = 0; i < m_test.sections.size(); ++i) {
        end += m_test.sections[i];
        if (nozzle <= end) return static_cast<int>(i);
    }
    return -1;
}

int CatchWalk::placeInSection(int nozzle) const {
    int start = 0;
    for (const int count : m_test.sections) {
        if (nozzle <= start + count) break;
        start += count;
    }
    return nozzle - start;
}

const NotedCatch* CatchWalk::last() const {
    return m_test.catches.empty() ? nullptr : &m_test.catches.back();
}

}  // namespace bw
