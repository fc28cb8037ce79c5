// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <charconv>
#include <string>

#include "core/exchange/json_fields.h"
#include "core/exchange/nozzle_csv.h"

namespace bw {
namespace {

/// The shortest text without a power of ten that reads back as the same number.
std::string fixedText(double number) {
    std::array<char, 512> buffer{};
    const auto written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                       std::chars_format::fixed);
    return {buffer.data(), written.ptr};
}

/// As exactText, but never with a power of ten, which lists cannot read.
std::string plainText(AnyQuantity quantity, UnitSystem units) {
    if (quantity.dimension == Dimension::None) return fixedText(quantity.si);
    const std::string text = exactText(quantity, units);
    const std::string number = text.substr(0, text.find(' '));
    if (number.find('e') == std::string::npos) return text;
    return fixedText(std::stod(number)) + text.substr(number.size());
}

template <class T>
constexpr bool kIsList = false;
template <class T>
constexpr bool kIsList<std::vector<T>> = true;

/// A single number as text that reads back as the same; choices and lists have none.
template <class T>
std::string numberText(const T& value, UnitSystem units) {
    if constexpr (std::is_enum_v<T> || kIsList<T>)
        return {};
    else
        return plainText(anyQuantity(value), units);
}

std::string valueText(const Sourced<double>& field, UnitSystem) {
    return fixedText(field.value);
}
template <int V, int L, int M, int T>
std::string valueText(const Sourced<Quantity<V, L, M, T>>& field, UnitSystem units) {
    return quantityText(anyQuantity(field.value), field.typed, units);
}
template <class E>
std::string valueText(const Sourced<E>& field, UnitSystem) requires std::is_enum_v<E> {
    return std::string(choiceName(field.value));
}
std::string valueText(const Sourced<std::vector<FlowPoint>>& field, UnitSystem units) {
    std::string out;
    for (const auto& row : field.value)
        out += (out.empty() ? "" : "; ") + plainText(anyQuantity(row.pressure), units) + " " +
               plainText(anyQuantity(row.flow), units);
    return out;
}
template <class Band>
std::string bandText(const Band& band, const std::string& name, UnitSystem units) {
    return name + " " + plainText(anyQuantity(band.from), units) + " to " +
           plainText(anyQuantity(band.to), units);
}
std::string valueText(const Sourced<std::vector<DropletBand>>& field, UnitSystem units) {
    std::string out;
    for (const auto& band : field.value)
        out += (out.empty() ? "" : "; ") +
               bandText(band, std::string(choiceName(band.category)), units);
    return out;
}
std::string valueText(const Sourced<std::vector<DriftBand>>& field, UnitSystem units) {
    std::string out;
    for (const auto& band : field.value)
        out += (out.empty() ? "" : "; ") +
               bandText(band, plainText(anyQuantity(band.percent), units) + " %", units);
    return out;
}

/// "flow measured 2031-04-05; at assumed from 2.9 bar to 3.1 bar": what a bare value does not say.
std::string originsText(const Nozzle& nozzle, UnitSystem units) {
    std::string out;
    visitFields(nozzle, [&](std::string_view key, const auto& field) {
        if (!field) return;
        const bool isPlain =
            field->origin == Origin::Handbook && field->date.empty() && !field->from && !field->to;
        if (isPlain) return;
        out +=
            (out.empty() ? "" : "; ") + std::string(key) + " " + std::string(name(field->origin));
        if (!field->date.empty()) out += " " + field->date;
        if (field->from) out += " from " + numberText(*field->from, units);
        if (field->to) out += " to " + numberText(*field->to, units);
    });
    return out;
}

std::string cellOf(const Nozzle& nozzle, NozzleColumn column, UnitSystem units) {
    switch (column) {
        case NozzleColumn::Name:
            return nozzle.name;
        case NozzleColumn::Family:
            return nozzle.family;
        case NozzleColumn::SizeCode:
            return nozzle.sizeCode;
        case NozzleColumn::AcceptUnchecked:
            return nozzle.acceptUnchecked ? "yes" : "";
        case NozzleColumn::Demo:
            return nozzle.isDemo ? "yes" : "";
        case NozzleColumn::Notes:
            return nozzle.notes;
        case NozzleColumn::Origins:
            return originsText(nozzle, units);
        default:
            break;
    }
    std::string out;
    visitFields(nozzle, [&](std::string_view key, const auto& field) {
        if (field && key == choiceName(column)) out = valueText(*field, units);
    });
    return out;
}

}  // namespace

std::string nozzleCsv(const std::vector<Nozzle>& nozzles, UnitSystem units) {
    std::string out;
    const auto addRow = [&](const auto& cell) {
        std::string row;
        for (const auto& [column, word] : ChoiceNames<NozzleColumn>::names) {
            if (column == NozzleColumn::FlowAt) continue;
            row += (column == NozzleColumn::Name ? "" : ",") + csvField(cell(column));
        }
        out += row + "\n";
    };
    addRow([](NozzleColumn column) { return std::string(choiceName(column)); });
    for (const auto& nozzle : nozzles)
        addRow([&](NozzleColumn column) { return cellOf(nozzle, column, units); });
    return out;
}

}  // namespace bw
