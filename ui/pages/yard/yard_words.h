// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/catch_test.h"
#include "core/yard/yard_book.h"
#include "ui/kit/evidence.h"
#include "ui/kit/plain_words.h"

namespace bw {

class FarmSession;

/// Unit of a bare number in a reading: what a person reads there. A catch is read from a jug.
Unit unitOfReading(const YardReadingText& reading, UnitSystem units);
/// "mL" or "fl oz": the unit of a jug's marks.
Unit jugUnit(UnitSystem units);

/// Cautions by id, each with a bold lead that says what it is about.
QStringList ledCautions(const std::vector<std::string>& ids);

/// What a check makes firm, in a few words; empty if there are none for it.
QString firmsUpWords(const FarmSession& session, const std::string& check);
/// Why a check is not one for this machine.
QString whyNotHere(const FarmSession& session, const YardCheckText& check, const Machine& machine);
/// "Pump, clean water on foot": where a check is done.
QString placeWords(CheckPlace place);

/// The result in one short sentence, from the sum of a check; empty if it says nothing that short.
QString headlineOf(const FarmSession& session, const std::vector<Fact>& sum,
                   const NumberStyle& style);

/// The corrected number for the controller, to five figures, where the sum gives one.
QString newNumber(const std::vector<Fact>& sum, const NumberStyle& style);

/// Name of a profile's field, "Sensor to nozzle, at".
QString fieldWords(const FarmSession& session, const std::string& key);
/// What differs between two states of a profile in these fields, as evidence rows: old → new.
QVector<EvidenceRow> changeRows(const FarmSession& session, const std::vector<std::string>& keys,
                                const Machine& before, const Machine& after,
                                const NumberStyle& style);

QString verdictWords(CatchVerdict verdict);

/// Newest record of a machine, of a kind and check; null if there is none.
const StoredYardRecord* newestRecord(const FarmSession& session, RecordId machine, YardKind kind,
                                     const std::string& check, bool isFinished);

}  // namespace bw
