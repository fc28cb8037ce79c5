// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// Key of a stored record. 0: not stored yet.
using RecordId = std::int64_t;

struct Customer {
    std::string name;
    std::string place;
    std::string phone;
    std::string notes;
    bool isDemo = false;
    bool operator==(const Customer&) const = default;
};

/// A record with its key, and the keys it belongs to.
struct StoredMachine {
    RecordId id = 0;
    RecordId customer = 0;
    Machine machine;
    bool operator==(const StoredMachine&) const = default;
};
struct StoredNozzle {
    RecordId id = 0;
    Nozzle nozzle;
    bool operator==(const StoredNozzle&) const = default;
};
struct StoredJob {
    RecordId id = 0;
    RecordId machine = 0;
    int position = 0;
    Job job;
    bool operator==(const StoredJob&) const = default;
};
struct StoredCustomer {
    RecordId id = 0;
    Customer customer;
    bool operator==(const StoredCustomer&) const = default;
};

/// The season: machines, the jobs each does in order, and the nozzles to choose from.
struct Season {
    std::string name;
    std::vector<StoredMachine> machines;
    std::vector<StoredJob> jobs;
    std::vector<StoredNozzle> nozzles;
    bool operator==(const Season&) const = default;
};

}  // namespace bw
