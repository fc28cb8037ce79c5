// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/yard_record.h"
#include "core/report/sheet_head.h"
#include "core/yard/checklist.h"
#include "core/yard/yard_book.h"

/// Sheets for the yard: to take out and fill in by hand, or with what was found. The cautions of
/// each stand before what is to be done.
namespace bw {

/// A catch test on one page: what was found, bars by section, off nozzles with what to do, every
/// nozzle. Nothing caught yet: a list to fill in by hand.
Sheet catchSheet(const YardRecord& record, const Machine& machine, const ReportContext& context);

/// A phase of the pre-season list, with the ticks and notes of `record`.
Sheet checklistSheet(const ChecklistPart& part, const YardRecord& record, const Machine& machine,
                     const ReportContext& context);

/// A yard check: steps, what to read with what was read or room for it, and the sum where the
/// readings give one.
Sheet checkSheet(const YardCheckText& check, const YardRecord& record, const Machine& machine,
                 const ReportContext& context);

/// Cautions by id for a sheet. Those of the knowledge; an unknown id is a programming error.
SheetCautions cautionsOnPaper(const std::vector<std::string>& ids);

}  // namespace bw
