// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/migrations/steps.h"

namespace bw::steps {

using namespace Qt::StringLiterals;

namespace {

/// The known fields of a record: one row for each, so that a new field needs no new format.
/// `value` is a number in SI, a word of a choice, or a list as a JSON array of numbers in SI.
QString valueTable(const QString& owner) {
    return u"CREATE TABLE %1_value ("
           "  %1_id INTEGER NOT NULL REFERENCES %1(id) ON DELETE CASCADE,"
           "  key TEXT NOT NULL CHECK (key <> ''),"
           "  value ANY NOT NULL CHECK (typeof(value) IN ('real', 'text')),"
           "  typed TEXT NOT NULL,"
           "  origin TEXT NOT NULL CHECK (origin IN ('measured', 'handbook', 'assumed')),"
           "  date TEXT NOT NULL,"
           "  range_from ANY CHECK (typeof(range_from) IN ('null', 'real', 'text')),"
           "  range_to ANY CHECK (typeof(range_to) IN ('null', 'real', 'text')),"
           "  PRIMARY KEY (%1_id, key),"
           "  CHECK (typeof(value) = 'text' OR abs(value) <= 1.7976931348623157e308)"
           ") STRICT, WITHOUT ROWID"_s.arg(owner);
}

const QString kCustomer =
    u"CREATE TABLE customer ("
    "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
    "  name TEXT NOT NULL,"
    "  place TEXT NOT NULL,"
    "  phone TEXT NOT NULL,"
    "  notes TEXT NOT NULL,"
    "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1))"
    ") STRICT"_s;

const QString kMachine =
    u"CREATE TABLE machine ("
    "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
    "  customer_id INTEGER REFERENCES customer(id),"
    "  name TEXT NOT NULL,"
    "  units TEXT NOT NULL CHECK (units IN ('metric', 'us', 'uk')),"
    "  notes TEXT NOT NULL,"
    "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1))"
    ") STRICT"_s;

const QString kSetAboard =
    u"CREATE TABLE set_aboard ("
    "  machine_id INTEGER NOT NULL REFERENCES machine(id) ON DELETE CASCADE,"
    "  place INTEGER NOT NULL CHECK (place >= 0),"
    "  position INTEGER NOT NULL,"
    "  nozzle TEXT NOT NULL,"
    "  PRIMARY KEY (machine_id, place)"
    ") STRICT, WITHOUT ROWID"_s;

const QString kNozzle =
    u"CREATE TABLE nozzle ("
    "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
    "  name TEXT NOT NULL,"
    "  family TEXT NOT NULL,"
    "  size_code TEXT NOT NULL,"
    "  accept_unchecked INTEGER NOT NULL CHECK (accept_unchecked IN (0, 1)),"
    "  notes TEXT NOT NULL,"
    "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1))"
    ") STRICT"_s;

const QString kJob =
    u"CREATE TABLE job ("
    "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
    "  machine_id INTEGER NOT NULL REFERENCES machine(id),"
    "  position INTEGER NOT NULL,"
    "  name TEXT NOT NULL,"
    "  droplets TEXT NOT NULL,"
    "  pinned_nozzle TEXT NOT NULL,"
    "  notes TEXT NOT NULL,"
    "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1))"
    ") STRICT"_s;

/// A case is a record of the past: it keeps its own copies and outlives machine and customer, so
/// their keys here are no references.
const QString kCase =
    u"CREATE TABLE case_record ("
    "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
    "  machine_id INTEGER NOT NULL,"
    "  customer_id INTEGER NOT NULL,"
    "  opened TEXT NOT NULL,"
    "  symptom TEXT NOT NULL,"
    "  tank TEXT NOT NULL,"
    "  company TEXT NOT NULL,"
    "  place TEXT NOT NULL,"
    "  who TEXT NOT NULL,"
    "  state TEXT NOT NULL CHECK (state IN ('open', 'found', 'confirmed', 'not_confirmed')),"
    "  cause_found TEXT NOT NULL,"
    "  minutes INTEGER NOT NULL,"
    "  notes TEXT NOT NULL,"
    "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1)),"
    "  machine TEXT NOT NULL CHECK (json_valid(machine)),"
    "  nozzle TEXT NOT NULL CHECK (json_valid(nozzle)),"
    "  job TEXT NOT NULL CHECK (json_valid(job))"
    ") STRICT"_s;

const QString kObservation =
    u"CREATE TABLE observation ("
    "  case_id INTEGER NOT NULL REFERENCES case_record(id) ON DELETE CASCADE,"
    "  place INTEGER NOT NULL CHECK (place >= 0),"
    "  check_id TEXT NOT NULL,"
    "  answer TEXT NOT NULL,"
    "  dimension TEXT NOT NULL,"
    "  reading REAL,"
    "  typed TEXT NOT NULL,"
    "  PRIMARY KEY (case_id, place),"
    "  CHECK ((dimension = '') = (reading IS NULL)),"
    "  CHECK (reading IS NULL OR abs(reading) <= 1.7976931348623157e308)"
    ") STRICT, WITHOUT ROWID"_s;

const QString kSetting =
    u"CREATE TABLE setting ("
    "  key TEXT NOT NULL PRIMARY KEY CHECK (key <> ''),"
    "  value TEXT NOT NULL"
    ") STRICT, WITHOUT ROWID"_s;

}  // namespace

QStringList m0001First() {
    return {kCustomer,
            kMachine,
            valueTable(u"machine"_s),
            kSetAboard,
            kNozzle,
            valueTable(u"nozzle"_s),
            kJob,
            valueTable(u"job"_s),
            u"CREATE INDEX job_machine ON job (machine_id, position)"_s,
            u"CREATE INDEX machine_customer ON machine (customer_id)"_s,
            kCase,
            kObservation,
            kSetting};
}

}  // namespace bw::steps
