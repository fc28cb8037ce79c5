// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/store/connection.h"
#include "core/store/record_change.h"

/// Each kind of record in its tables. Writing runs inside the caller's transaction. Reading puts
/// what makes no sense into `aside` (record_set_aside) and goes on.
namespace bw {

Outcome write(Connection& connection, const Change<StoredCustomer>& change);
Outcome write(Connection& connection, const Change<StoredMachine>& change);
Outcome write(Connection& connection, const Change<StoredNozzle>& change);
Outcome write(Connection& connection, const Change<StoredJob>& change);
Outcome write(Connection& connection, const Change<StoredCase>& change);
Outcome write(Connection& connection, const Change<StoredYardRecord>& change);

Outcome readAll(Connection& connection, std::vector<StoredCustomer>& out,
                std::vector<Problem>& aside);
Outcome readAll(Connection& connection, std::vector<StoredMachine>& out,
                std::vector<Problem>& aside);
Outcome readAll(Connection& connection, std::vector<StoredNozzle>& out,
                std::vector<Problem>& aside);
Outcome readAll(Connection& connection, std::vector<StoredJob>& out, std::vector<Problem>& aside);
Outcome readAll(Connection& connection, std::vector<StoredCase>& out, std::vector<Problem>& aside);
Outcome readAll(Connection& connection, std::vector<StoredYardRecord>& out,
                std::vector<Problem>& aside);

}  // namespace bw
