// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/csv_text.h"
#include "core/base/problem.h"
#include "core/model/choice.h"
#include "core/model/nozzle.h"
#include "core/units/parse.h"

namespace bw {

/// What a column of a nozzle table holds. `FlowAt`: flow at the pressure that its heading names;
/// several of them make a flow table.
enum class NozzleColumn {
    Name,
    Family,
    SizeCode,
    Kind,
    Flow,
    At,
    FlowAt,
    PressureMin,
    PressureMax,
    Exponent,
    Table,
    Droplets,
    Drift,
    SprayAngle,
    Passage,
    Material,
    Price,
    AcceptUnchecked,
    Demo,
    Notes,
    Origins,
};
/// The words are the headings of an export.
template <>
struct ChoiceNames<NozzleColumn> {
    static constexpr std::array<std::pair<NozzleColumn, std::string_view>, 21> names{
        {{NozzleColumn::Name, "name"},
         {NozzleColumn::Family, "family"},
         {NozzleColumn::SizeCode, "size_code"},
         {NozzleColumn::Kind, "kind"},
         {NozzleColumn::Flow, "flow"},
         {NozzleColumn::At, "at"},
         {NozzleColumn::FlowAt, "flow_at"},
         {NozzleColumn::PressureMin, "pressure_min"},
         {NozzleColumn::PressureMax, "pressure_max"},
         {NozzleColumn::Exponent, "exponent"},
         {NozzleColumn::Table, "table"},
         {NozzleColumn::Droplets, "droplets"},
         {NozzleColumn::Drift, "drift"},
         {NozzleColumn::SprayAngle, "spray_angle"},
         {NozzleColumn::Passage, "passage"},
         {NozzleColumn::Material, "material"},
         {NozzleColumn::Price, "price"},
         {NozzleColumn::AcceptUnchecked, "accept_unchecked"},
         {NozzleColumn::Demo, "demo"},
         {NozzleColumn::Notes, "notes"},
         {NozzleColumn::Origins, "origins"}}};
};

/// One column as it is read.
struct CsvColumn {
    std::string header;
    std::optional<NozzleColumn> meaning;  ///< nothing: passed over
    std::optional<Unit> unit;             ///< of bare figures, where the heading names it
    std::optional<Pressure> at;           ///< the pressure that the heading names
    bool operator==(const CsvColumn&) const = default;
};

/// How a table is read.
struct CsvStyle {
    char separator = ',';
    DecimalMarks marks = DecimalMarks::OwnPoint;
    UnitSystem units = UnitSystem::Metric;  ///< of bare figures without a unit in the heading
    bool operator==(const CsvStyle&) const = default;
};

/// Separator (comma, semicolon or tab) and decimal mark as the text itself shows them.
CsvStyle guessCsvStyle(std::string_view text, UnitSystem units);
/// What each heading means: words of the trade and of an export, with a unit and a pressure where
/// it names them ("Flow (L/min) at 3 bar"). Each meaning is given once but for `FlowAt`.
std::vector<CsvColumn> guessColumns(const std::vector<std::string>& header);

/// What is wrong with a row: the column's heading (empty: the row as a whole), and why.
struct CsvProblem {
    std::string column;
    Problem problem;
    bool operator==(const CsvProblem&) const = default;
};
/// One row, read.
struct CsvNozzle {
    int row = 0;                       ///< from 1, the heading not counted
    Nozzle nozzle;                     ///< as far as it could be read
    std::vector<std::string> shown;    ///< a column each: what was read, with its unit
    std::vector<CsvProblem> problems;  ///< reasons why it stays out
    std::vector<CsvProblem> warnings;  ///< what is odd, but lets it in
    bool isGood() const { return problems.empty(); }
};
struct CsvPreview {
    std::vector<CsvColumn> columns;
    std::vector<CsvNozzle> rows;
    std::optional<Problem> problem;  ///< no row can be read at all
    int good() const;
    /// The nozzles of the good rows.
    std::vector<Nozzle> nozzles() const;
};

/// Reads every row; bad ones say why and hinder no other. `columns` as guessed or as a person
/// matched them, one a column of the text. Problems of the whole: csv_empty, csv_no_name_column,
/// csv_no_flow_column, csv_column_twice. Of a row: csv_name_twice (in the text), csv_word_unknown,
/// csv_yes_or_no, csv_origin_unread, those of parseQuantity, of the band texts, and the errors of
/// checkNozzle.
CsvPreview previewNozzles(std::string_view text, const std::vector<CsvColumn>& columns,
                          const CsvStyle& style);
/// The same with everything guessed.
CsvPreview previewNozzles(std::string_view text, UnitSystem units);

/// The nozzles as a table that previewNozzles reads back as the same: comma, decimal point, every
/// figure with its unit.
std::string nozzleCsv(const std::vector<Nozzle>& nozzles, UnitSystem units);

}  // namespace bw
