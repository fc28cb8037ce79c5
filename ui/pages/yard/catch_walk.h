// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/model/yard_record.h"

namespace bw {

/// A catch test as it is walked: the nozzles in the order in which they are caught.
class CatchWalk {
  public:
    explicit CatchWalk(const YardRecord& record);

    const std::vector<int>& order() const { return m_order; }
    int count() const { return static_cast<int>(m_order.size()); }
    int caughtCount() const;
    bool isOver() const { return caughtCount() == count(); }
    bool isCaught(int nozzle) const;
    /// On the boom at all, though the test may leave it out.
    bool isOnBoom(int nozzle) const { return nozzle >= 1 && nozzle <= m_nozzles; }
    int nozzles() const { return m_nozzles; }
    /// The next one not caught after `nozzle` in the order, from the start again at the end.
    std::optional<int> nextOpen(int nozzle) const;
    /// The neighbour in the order; the last stays.
    int neighbour(int nozzle, int step) const;
    /// From 0; -1 beyond the sections.
    int sectionOf(int nozzle) const;
    /// Place of the nozzle within its section, from 1.
    int placeInSection(int nozzle) const;
    /// The last catch noted; null if none.
    const NotedCatch* last() const;

  private:
    const CatchTest& m_test;
    std::vector<int> m_order;
    int m_nozzles = 0;
};

/// Walked from the right end.
bool isFromRight(const YardRecord& record);
void setFromRight(YardRecord& record, bool isFromRight);

}  // namespace bw
