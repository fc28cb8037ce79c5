// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <map>
#include <string>

#include "tests/core/reference/handbook_quantities.h"

namespace bw::handbook {

/// A computed value before it is put into the unit of the table.
using Maker = std::function<AnyQuantity(const Inputs&)>;

/// Pipes, holes and jets.
const std::map<std::string, Maker>& pipeMakers();
/// Tank loads and work rate.
const std::map<std::string, Maker>& loadMakers();
/// Turns, bands, pulsed nozzles, height of the boom.
const std::map<std::string, Maker>& fieldMakers();

}  // namespace bw::handbook
