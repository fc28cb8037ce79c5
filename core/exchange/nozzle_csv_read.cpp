// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <set>
#include <sstream>

#include "core/exchange/nozzle_csv.h"
#include "core/model/band_text.h"
#include "core/model/checks.h"
#include "core/units/format.h"

namespace bw {
namespace {

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view kBlank = " \t\r\n";
    const auto begin = text.find_first_not_of(kBlank);
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(kBlank) - begin + 1);
}

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

/// Words of the trade for a choice, besides its own name.
std::string choiceWord(std::string_view text) {
    static const std::map<std::string, std::string, std::less<>> kWords{
        {"flat fan", "fan"},
        {"flat", "fan"},
        {"streamer", "stream"},
        {"streaming", "stream"},
        {"plastic", "polymer"},
        {"stainless", "stainless_steel"},
        {"stainless steel", "stainless_steel"},
    };
    const std::string word = lower(text);
    const auto found = kWords.find(word);
    return found == kWords.end() ? word : found->second;
}

/// Reads one row.
class RowReader {
  public:
    RowReader(const std::vector<CsvColumn>& columns, const CsvStyle& style,
              const std::vector<std::string>& cells)
        : m_columns(columns), m_style(style), m_cells(cells) {
        m_out.shown.resize(columns.size());
    }

    CsvNozzle read(int row) {
        m_out.row = row;
        if (m_cells.size() > m_columns.size())
            fail("", error("csv_too_many_cells", {}, {{"cells", std::to_string(m_cells.size())}}));
        eachCell([&](std::size_t i, NozzleColumn column) { readPlain(i, column); });
        eachCell([&](std::size_t i, NozzleColumn column) { readBands(i, column); });
        takePoints();
        eachCell([&](std::size_t i, NozzleColumn column) {
            if (column == NozzleColumn::Origins) readOrigins(i);
        });
        check();
        return std::move(m_out);
    }

  private:
    template <class F>
    void eachCell(F&& f) {
        for (std::size_t i = 0; i < m_columns.size(); ++i)
            if (m_columns[i].meaning && !cell(i).empty()) f(i, *m_columns[i].meaning);
    }
    std::string_view cell(std::size_t i) const {
        return i < m_cells.size() ? trimmed(m_cells[i]) : std::string_view{};
    }
    void fail(const std::string& column, Problem problem) {
        m_out.problems.push_back({column, std::move(problem)});
    }
    void fail(std::size_t i, Problem problem) { fail(m_columns[i].header, std::move(problem)); }

    void readPlain(std::size_t i, NozzleColumn column) {
        Nozzle& n = m_out.nozzle;
        switch (column) {
            case NozzleColumn::Name:
                return takeText(i, n.name);
            case NozzleColumn::Family:
                return takeText(i, n.family);
            case NozzleColumn::SizeCode:
                return takeText(i, n.sizeCode);
            case NozzleColumn::Notes:
                return takeText(i, n.notes);
            case NozzleColumn::Kind:
                return takeChoice(i, n.kind);
            case NozzleColumn::Material:
                return takeChoice(i, n.material);
            case NozzleColumn::Passage:
                return takeQuantity(i, n.passage);
            case NozzleColumn::Flow:
                return takeQuantity(i, n.flow);
            case NozzleColumn::At:
                return takeQuantity(i, n.at);
            case NozzleColumn::PressureMin:
                return takeQuantity(i, n.pressureMin);
            case NozzleColumn::PressureMax:
                return takeQuantity(i, n.pressureMax);
            default:
                return readNumber(i, column);
        }
    }
    void readNumber(std::size_t i, NozzleColumn column) {
        Nozzle& n = m_out.nozzle;
        switch (column) {
            case NozzleColumn::Exponent:
                return takeNumber(i, n.exponent);
            case NozzleColumn::SprayAngle:
                return takeNumber(i, n.sprayAngle);
            case NozzleColumn::Price:
                return takeNumber(i, n.price);
            case NozzleColumn::AcceptUnchecked:
                return takeMark(i, n.acceptUnchecked);
            case NozzleColumn::Demo:
                return takeMark(i, n.isDemo);
            case NozzleColumn::FlowAt:
                return takePoint(i);
            default:
                return;
        }
    }
    void readBands(std::size_t i, NozzleColumn column) {
        Nozzle& n = m_out.nozzle;
        const auto start = bare(n.pressureMin);
        const Unit pressure = unitOf(i, Dimension::Pressure);
        const BandStyle style{pressure, unitOf(i, Dimension::Flow), m_style.marks};
        if (column == NozzleColumn::Droplets)
            takeList(i, n.droplets, parseDropletBands(cell(i), start, style));
        if (column == NozzleColumn::Drift)
            takeList(i, n.drift, parseDriftBands(cell(i), start, style));
        if (column == NozzleColumn::Table) {
            takeList(i, n.table, parseFlowTable(cell(i), style));
            if (n.table && n.table->value.empty())
                fail(i, error("csv_word_unknown", {}, {{"typed", std::string(cell(i))}}));
        }
    }

    void takeText(std::size_t i, std::string& out) {
        out = cell(i);
        m_out.shown[i] = out;
    }
    template <class E>
    void takeChoice(std::size_t i, Known<E>& out) {
        const auto found = choiceFor<E>(choiceWord(cell(i)));
        if (!found)
            return fail(i, error("csv_word_unknown", {}, {{"typed", std::string(cell(i))}}));
        out = Sourced<E>(*found);
        m_out.shown[i] = choiceName(*found);
    }
    void takeMark(std::size_t i, bool& out) {
        const std::string word = lower(cell(i));
        const bool isYes = word == "yes" || word == "true" || word == "1" || word == "x";
        if (!isYes && word != "no" && word != "false" && word != "0")
            return fail(i, error("csv_yes_or_no", {}, {{"typed", std::string(cell(i))}}));
        out = isYes;
        m_out.shown[i] = isYes ? "yes" : "no";
    }
    void takeNumber(std::size_t i, Known<double>& out) {
        const auto number = parseNumber(cell(i), m_style.marks);
        if (!number) return fail(i, number.problem());
        out = Sourced<double>(*number);
        out->typed = cell(i);
        m_out.shown[i] = formatExact(*number);
    }
    /// The unit of bare figures: that of the heading, else of another heading, else the style's.
    Unit unitOf(std::size_t i, Dimension dimension) const {
        const auto fits = [&](const CsvColumn& column) {
            return column.unit && info(*column.unit).dimension == dimension;
        };
        if (fits(m_columns[i])) return *m_columns[i].unit;
        const auto other = std::find_if(m_columns.begin(), m_columns.end(), fits);
        if (other != m_columns.end()) return *other->unit;
        if (dimension != Dimension::Length) return displayUnit(m_style.units, dimension);
        return m_style.units == UnitSystem::Us ? Unit::Inch : Unit::Millimetre;
    }
    template <class Q>
    void takeQuantity(std::size_t i, Known<Q>& out) {
        const auto read =
            parseQuantity(cell(i), kDimensionOf<Q>, unitOf(i, kDimensionOf<Q>), m_style.marks);
        if (!read) return fail(i, read.problem());
        out = Sourced<Q>(Q::fromSi(read->quantity.si));
        out->typed = cell(i);
        const std::string symbol(info(read->unit).symbol);
        if (!read->unitWasTyped) out->typed += " " + symbol;
        m_out.shown[i] = formatExact(read->number) + " " + symbol;
    }
    template <class T>
    void takeList(std::size_t i, Known<std::vector<T>>& out, const Result<std::vector<T>>& read) {
        if (!read) return fail(i, read.problem());
        out = Sourced<std::vector<T>>(*read);
        m_out.shown[i] = listText(*read);
    }
    std::string listText(const std::vector<DropletBand>& bands) const {
        return withUnit(dropletBandText(bands, pressureUnit(), '.'));
    }
    std::string listText(const std::vector<DriftBand>& bands) const {
        return withUnit(driftBandText(bands, pressureUnit(), '.'));
    }
    std::string listText(const std::vector<FlowPoint>& rows) const {
        const Unit flow = displayUnit(m_style.units, Dimension::Flow);
        return withUnit(flowTableText(rows, pressureUnit(), flow, '.')) + ", " +
               std::string(info(flow).symbol);
    }
    Unit pressureUnit() const { return displayUnit(m_style.units, Dimension::Pressure); }
    std::string withUnit(const std::string& text) const {
        return text + " " + std::string(info(pressureUnit()).symbol);
    }

    /// A flow at the pressure of the heading.
    void takePoint(std::size_t i) {
        const auto& at = m_columns[i].at;
        if (!at) return fail(i, error("csv_flow_without_pressure"));
        Known<Flow> flow;
        takeQuantity(i, flow);
        if (!flow) return;
        m_points.push_back({*at, flow->value});
        m_pointFlow = flow;
    }
    /// One is a rating, several are a table.
    void takePoints() {
        Nozzle& n = m_out.nozzle;
        if (m_points.size() == 1 && !n.flow && !n.at) {
            n.flow = m_pointFlow;
            n.at = Sourced<Pressure>(m_points.front().pressure);
        } else if (!m_points.empty() && !n.table) {
            std::stable_sort(m_points.begin(), m_points.end(),
                             [](const auto& a, const auto& b) { return a.pressure < b.pressure; });
            n.table = Sourced<std::vector<FlowPoint>>(m_points);
        }
    }

    /// "flow measured 2031-04-05; at assumed from 2.9 bar to 3.1 bar".
    void readOrigins(std::size_t i) {
        std::istringstream parts{std::string(cell(i))};
        for (std::string part; std::getline(parts, part, ';');) {
            std::istringstream words(part);
            std::string key, origin;
            words >> key >> origin;
            std::string rest;
            std::getline(words, rest);
            bool isRead = false;
            visitFields(m_out.nozzle, [&](std::string_view name, auto& field) {
                if (name == key && field) isRead = readOrigin(origin, trimmed(rest), *field);
            });
            if (!isRead) fail(i, error("csv_origin_unread", {}, {{"part", part}}));
        }
        m_out.shown[i] = cell(i);
    }
    template <class T>
    static bool readOrigin(const std::string& word, std::string_view rest, Sourced<T>& field) {
        const auto origin = originFor(word);
        if (!origin) return false;
        field.origin = *origin;
        const auto to = endsOf(rest, "to ", field.to);
        if (!to) return false;
        const auto from = endsOf(*to, "from ", field.from);
        if (!from) return false;
        field.date = trimmed(*from);
        return field.date.find(' ') == std::string::npos;
    }
    /// Reads what stands behind a word; the text before it, or nothing if that cannot be read.
    template <class T>
    static std::optional<std::string_view> endsOf(std::string_view text, std::string_view word,
                                                  std::optional<T>& out) {
        const auto at = text.rfind(word);
        if (at == std::string_view::npos || (at > 0 && text[at - 1] != ' ')) return text;
        const auto value = trimmed(text.substr(at + word.size()));
        if constexpr (std::is_same_v<T, double>) {
            const auto number = parseNumber(value, DecimalMarks::PointOnly);
            if (!number) return std::nullopt;
            out = *number;
        } else if constexpr (requires { out->si(); }) {
            const auto read = parse<T>(value, std::nullopt, DecimalMarks::PointOnly);
            if (!read) return std::nullopt;
            out = *read;
        } else {
            return std::nullopt;
        }
        return trimmed(text.substr(0, at));
    }

    void check() {
        if (m_out.nozzle.name.empty()) fail("", error("csv_name_missing"));
        for (auto& problem : checkNozzle(m_out.nozzle)) {
            if (problem.code == "name_missing") continue;
            const std::string header = headerOf(problem.where);
            auto& list = problem.severity == Severity::Error ? m_out.problems : m_out.warnings;
            // What could not be read is said already, and so is not missing.
            const bool isSaid = std::any_of(list.begin(), list.end(), [&](const CsvProblem& other) {
                return !header.empty() && other.column == header;
            });
            if (!isSaid) list.push_back({header, std::move(problem)});
        }
    }
    std::string headerOf(std::string_view key) const {
        for (const auto& column : m_columns)
            if (column.meaning && choiceName(*column.meaning) == key) return column.header;
        return {};
    }

    const std::vector<CsvColumn>& m_columns;
    const CsvStyle& m_style;
    const std::vector<std::string>& m_cells;
    std::vector<FlowPoint> m_points;
    Known<Flow> m_pointFlow;
    CsvNozzle m_out;
};

/// A text as it comes from a file, without the mark that some programs put before it.
std::string_view withoutMark(std::string_view text) {
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    return text.starts_with(kMark) ? text.substr(kMark.size()) : text;
}

std::optional<Problem> problemOf(const CsvTable& table, const std::vector<CsvColumn>& columns) {
    if (table.header.empty() || table.rows.empty()) return error("csv_empty");
    std::set<NozzleColumn> given;
    for (const auto& column : columns) {
        if (!column.meaning || *column.meaning == NozzleColumn::FlowAt) {
            if (column.meaning) given.insert(*column.meaning);
        } else if (!given.insert(*column.meaning).second) {
            return error("csv_column_twice", {}, {{"column", column.header}});
        }
    }
    if (!given.contains(NozzleColumn::Name)) return error("csv_no_name_column");
    const bool hasFlow = given.contains(NozzleColumn::Flow) ||
                         given.contains(NozzleColumn::Table) ||
                         given.contains(NozzleColumn::FlowAt);
    return hasFlow ? std::nullopt : std::optional(error("csv_no_flow_column"));
}

bool isBlank(const std::vector<std::string>& cells) {
    return std::all_of(cells.begin(), cells.end(),
                       [](const std::string& cell) { return trimmed(cell).empty(); });
}

}  // namespace

int CsvPreview::good() const {
    return static_cast<int>(
        std::count_if(rows.begin(), rows.end(), [](const auto& row) { return row.isGood(); }));
}

std::vector<Nozzle> CsvPreview::nozzles() const {
    std::vector<Nozzle> out;
    for (const auto& row : rows)
        if (row.isGood()) out.push_back(row.nozzle);
    return out;
}

CsvPreview previewNozzles(std::string_view text, const std::vector<CsvColumn>& columns,
                          const CsvStyle& style) {
    CsvPreview out;
    out.columns = columns;
    const CsvTable table = parseCsv(withoutMark(text), style.separator, false);
    out.problem = problemOf(table, columns);
    if (out.problem) return out;
    std::set<std::string> names;
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        if (isBlank(table.rows[i])) continue;
        out.rows.push_back(RowReader(columns, style, table.rows[i]).read(static_cast<int>(i) + 1));
        CsvNozzle& row = out.rows.back();
        if (!row.nozzle.name.empty() && !names.insert(row.nozzle.name).second)
            row.problems.push_back(
                {"", error("csv_name_twice", "name", {{"name", row.nozzle.name}})});
    }
    return out;
}

CsvPreview previewNozzles(std::string_view text, UnitSystem units) {
    const auto plain = withoutMark(text);
    const CsvStyle style = guessCsvStyle(plain, units);
    const CsvTable table = parseCsv(plain, style.separator, false);
    return previewNozzles(plain, guessColumns(table.header), style);
}

}  // namespace bw
