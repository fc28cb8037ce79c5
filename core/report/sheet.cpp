// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/sheet.h"

#include <string_view>

namespace bw {
namespace {

class TextReader {
  public:
    explicit TextReader(std::vector<std::string>& out) : m_out(out) {}
    void read(const std::vector<SheetBlock>& blocks) {
        for (const auto& block : blocks) std::visit(*this, block.content);
    }

    void operator()(const SheetBanner& b) { add({b.title, b.subtitle, b.value, b.note}); }
    void operator()(const SheetHeading& b) { add({b.text}); }
    void operator()(const SheetParagraph& b) { add({b.text}); }
    void operator()(const SheetCautions& b) {
        for (const auto& item : b.items) add({item.lead, item.text});
    }
    void operator()(const SheetFacts& b) {
        for (const auto& fact : b.facts) add({fact.label, fact.value, fact.note});
    }
    void operator()(const SheetList& b) {
        for (const auto& item : b.items) add({item.text, item.note});
    }
    void operator()(const SheetTable& b) {
        for (const auto& column : b.columns) add({column.title});
        for (const auto& row : b.rows) {
            for (const auto& cell : row.cells) add({cell});
        }
    }
    void operator()(const SheetBarChart& b) {
        add({b.axis});
        for (const auto& bar : b.bars) add({bar.label, bar.letter});
        for (const auto& limit : b.limits) add({limit.label});
        for (const auto& group : b.groups) add({group.label});
    }
    void operator()(const SheetLineChart& b) {
        add({b.x.title, b.y.title});
        for (const auto& series : b.series) add({series.label});
        for (const auto& band : b.bands) add({band.label});
        for (const auto& line : b.lines) add({line.label});
    }
    void operator()(const SheetScale& b) {
        add({b.title, b.words, b.lowFigure, b.lowReason, b.highFigure, b.highReason, b.usualWords,
             b.rowsTitle});
        for (const auto& label : b.rowLabels) add({label});
        for (const auto& column : b.columns) {
            for (const auto& figure : column.figures) add({figure});
        }
    }
    void operator()(const SheetTicks& b) {
        for (const auto& item : b.items) add({item.text, item.note, item.done});
    }
    void operator()(const SheetBlanks& b) { add({b.label}); }
    void operator()(const SheetSpace&) {}
    void operator()(const SheetRule&) {}
    void operator()(const SheetPageBreak&) {}
    void operator()(const SheetSideBySide& b) {
        for (const auto& part : b.parts) read(part);
    }

  private:
    void add(std::initializer_list<std::string_view> texts) {
        for (const auto text : texts) {
            if (!text.empty()) m_out.emplace_back(text);
        }
    }
    std::vector<std::string>& m_out;
};

/// A text that begins like a formula, unless it is a number.
bool looksLikeFormula(std::string_view text) {
    if (text.empty()) return false;
    if (text.front() == '=' || text.front() == '@') return true;
    const bool isSigned = text.front() == '-' || text.front() == '+';
    return isSigned && (text.size() == 1 ||
                        text.find_first_not_of("0123456789.,", 1) != std::string_view::npos);
}

std::string csvField(std::string_view text, char separator) {
    std::string field = looksLikeFormula(text) ? "'" + std::string(text) : std::string(text);
    const bool needsQuotes = field.find_first_of("\"\r\n") != std::string::npos ||
                             field.find(separator) != std::string::npos;
    if (!needsQuotes) return field;
    std::string out = "\"";
    for (const char c : field) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + '"';
}

}  // namespace

std::vector<std::string> textsOf(const Sheet& sheet) {
    std::vector<std::string> out;
    for (const auto* text : {&sheet.title, &sheet.machine}) {
        if (!text->empty()) out.push_back(*text);
    }
    TextReader(out).read(sheet.blocks);
    if (!sheet.footer.empty()) out.push_back(sheet.footer);
    return out;
}

std::string toCsv(const SheetTable& table, char separator) {
    std::string out;
    const auto addLine = [&](std::size_t count, auto&& cell) {
        for (std::size_t i = 0; i < count; ++i) {
            if (i > 0) out += separator;
            out += csvField(cell(i), separator);
        }
        out += "\r\n";
    };
    addLine(table.columns.size(),
            [&](std::size_t i) -> std::string_view { return table.columns[i].title; });
    for (const auto& row : table.rows) {
        addLine(table.columns.size(), [&](std::size_t i) -> std::string_view {
            return i < row.cells.size() ? std::string_view(row.cells[i]) : std::string_view();
        });
    }
    return out;
}

}  // namespace bw
