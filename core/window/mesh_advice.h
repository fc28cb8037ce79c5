// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/problem.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// Opening of a mesh: that of the next coarser test sieve of resources/data/mesh_opening.csv (from
/// memory; a strainer may differ). Nothing for a mesh coarser than all of them.
std::optional<Length> meshOpening(double mesh);
/// The coarsest mesh whose opening is under a passage; nothing if none is fine enough.
std::optional<double> meshFor(Length passage);
/// The coarsest mesh before a nozzle of a size: 100 up to size 015, 50 from 02 on (common practice,
/// no source). Nothing for a size that the standard does not know.
std::optional<double> meshForSize(const std::string& sizeCode);

/// What strainer a nozzle asks for, the finer of what its size and its passage say: fact
/// "mesh.by_size" or "mesh.by_passage"; nothing if neither is known.
std::optional<Fact> meshAdvice(const Nozzle& nozzle);

/// The strainer nearest the nozzles against the nozzles given: those that ask for a finer one,
/// facts "mesh.too_coarse_size" or "mesh.too_coarse_passage". Nothing is said of nozzles of which
/// neither is known, nor without a mesh.
std::vector<Fact> coarseStrainers(const Machine& machine, const std::vector<Nozzle>& nozzles);

}  // namespace bw
