// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/model/yard_record.h"
#include "core/yard/catch_test.h"

namespace bw {

/// The nozzles that a test is to catch, in walking order: by its scope, of the sections it keeps.
std::vector<int> nozzlesToCatch(const CatchTest& test);
/// The first of them that was not caught yet; nothing when all were.
std::optional<int> nextToCatch(const CatchTest& test);

/// The catches as entries with their uncertainty: the last first catch of a nozzle counts, and the
/// last catch after cleaning.
std::vector<CatchEntry> catchEntries(const CatchTest& test, const ReadingErrors& errors = {});
/// What the test says so far. Problems as catchSummary.
Result<CatchSummary> summaryOf(const CatchTest& test, const ReadingErrors& errors = {});

}  // namespace bw
