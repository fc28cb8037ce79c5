// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/machine_fields.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "core/model/typed_over.h"

namespace bw {
namespace {

template <class T>
inline constexpr bool kIsChoice = std::is_enum_v<T> || std::is_same_v<T, bool>;
template <class T>
inline constexpr bool kIsQuantity = !kIsChoice<T> && requires {
    DimensionOf<T>::value;
};
template <class T>
inline constexpr bool kIsNumber = kIsQuantity<T> || std::is_same_v<T, int>;

/// Calls `f` with the field of a key; false if there is none.
template <class M, class F>
bool withField(M& machine, std::string_view wanted, F&& f) {
    bool found = false;
    visitFields(machine, [&](std::string_view key, auto& field) {
        if (key != wanted) return;
        found = true;
        f(field);
    });
    return found;
}

template <class T>
struct ValueOf;
template <class T>
struct ValueOf<Known<T>> {
    using Type = T;
};
template <class Field>
using ValueIn = typename ValueOf<std::remove_cv_t<std::remove_reference_t<Field>>>::Type;

template <class T>
std::string choiceText(T value) {
    if constexpr (std::is_same_v<T, bool>)
        return value ? "yes" : "no";
    else
        return std::string(choiceName(value));
}

template <class T>
std::vector<std::string> choicesOf() {
    if constexpr (std::is_same_v<T, bool>) {
        return {"yes", "no"};
    } else {
        std::vector<std::string> out;
        for (const auto& [value, word] : ChoiceNames<T>::names) out.emplace_back(word);
        return out;
    }
}

template <class T>
std::optional<T> choiceOf(std::string_view word) {
    if constexpr (std::is_same_v<T, bool>) {
        if (word == "yes") return true;
        if (word == "no") return false;
        return std::nullopt;
    } else {
        return choiceFor<T>(word);
    }
}

template <class T>
AnyQuantity toAny(T value) {
    if constexpr (std::is_same_v<T, int>)
        return {Dimension::None, static_cast<double>(value)};
    else
        return anyQuantity(value);
}

template <class T>
std::optional<T> fromAny(AnyQuantity value) {
    if constexpr (std::is_same_v<T, int>) {
        const bool isWhole = value.dimension == Dimension::None &&
                             value.si == std::floor(value.si) && std::abs(value.si) < 1e9;
        return isWhole ? std::optional(static_cast<int>(value.si)) : std::nullopt;
    } else if constexpr (std::is_same_v<T, double>) {
        return value.dimension == Dimension::None ? std::optional(value.si) : std::nullopt;
    } else {
        return value.dimension == kDimensionOf<T> ? std::optional(T::fromSi(value.si))
                                                  : std::nullopt;
    }
}

template <class T>
void put(Known<T>& field, T value, std::string typed) {
    field = typedOver(field, std::move(value), std::move(typed));
}

template <class T>
void describe(FieldView& view) {
    if constexpr (kIsChoice<T>) {
        view.kind = FieldKind::Choice;
        view.choices = choicesOf<T>();
    } else if constexpr (std::is_same_v<T, int>) {
        view.kind = FieldKind::WholeNumber;
    } else if constexpr (std::is_same_v<T, std::vector<int>>) {
        view.kind = FieldKind::Sections;
    } else if constexpr (kIsQuantity<T>) {
        view.kind = FieldKind::Quantity;
        view.dimension = kDimensionOf<T>;
    } else {
        view.kind = FieldKind::Curve;
    }
}

template <class T>
FieldView viewOf(const Known<T>& field) {
    FieldView view;
    describe<T>(view);
    view.isKnown = field.has_value();
    if (!field) return view;
    view.origin = field->origin;
    view.typed = field->typed;
    view.date = field->date;
    if constexpr (kIsNumber<T>) {
        view.value = toAny(field->value);
        if (field->from) view.from = toAny(*field->from);
        if (field->to) view.to = toAny(*field->to);
    } else if constexpr (kIsChoice<T>) {
        view.choice = choiceText(field->value);
    }
    return view;
}

}  // namespace

std::optional<FieldView> fieldView(const Machine& machine, std::string_view key) {
    std::optional<FieldView> view;
    withField(machine, key, [&](const auto& field) { view = viewOf(field); });
    if (view && key == "boom_pipe.feeds") view->kind = FieldKind::NozzleNumbers;
    return view;
}

bool setField(Machine& machine, std::string_view key, AnyQuantity value, const std::string& typed) {
    bool isSet = false;
    withField(machine, key, [&](auto& field) {
        using T = ValueIn<decltype(field)>;
        if constexpr (kIsNumber<T>) {
            const auto read = fromAny<T>(value);
            if (!read) return;
            put(field, *read, typed);
            isSet = true;
        }
    });
    return isSet;
}

bool setField(Machine& machine, std::string_view key, std::string_view choice) {
    bool isSet = false;
    withField(machine, key, [&](auto& field) {
        using T = ValueIn<decltype(field)>;
        if constexpr (kIsChoice<T>) {
            const auto read = choiceOf<T>(choice);
            if (!read) return;
            put(field, *read, {});
            isSet = true;
        }
    });
    return isSet;
}

void setSections(Machine& machine, std::vector<int> sections) {
    put(machine.sections, std::move(sections), {});
}

void setFeeds(Machine& machine, std::vector<int> nozzles) {
    put(machine.boomPipe.feeds, std::move(nozzles), {});
}

void setCurve(Machine& machine, std::vector<CurvePoint> curve) {
    put(machine.pump.curve, std::move(curve), {});
}

bool setFieldOrigin(Machine& machine, std::string_view key, Origin origin, std::string date) {
    bool isSet = false;
    withField(machine, key, [&](auto& field) {
        if (!field) return;
        field->origin = origin;
        field->date = origin == Origin::Measured ? date : std::string();
        if (origin != Origin::Assumed) {
            field->from.reset();
            field->to.reset();
        }
        isSet = true;
    });
    return isSet;
}

bool setFieldRange(Machine& machine, std::string_view key, AnyQuantity from, AnyQuantity to) {
    bool isSet = false;
    withField(machine, key, [&](auto& field) {
        using T = ValueIn<decltype(field)>;
        if constexpr (kIsNumber<T>) {
            const auto low = fromAny<T>(from);
            const auto high = fromAny<T>(to);
            if (!field || !low || !high) return;
            field->from = low;
            field->to = high;
            isSet = true;
        }
    });
    return isSet;
}

bool clearField(Machine& machine, std::string_view key) {
    return withField(machine, key, [](auto& field) { field.reset(); });
}

OriginCounts originCounts(const Machine& machine) {
    OriginCounts counts;
    visitFields(machine, [&](std::string_view, const auto& field) {
        if (!field) return;
        counts.measured += field->origin == Origin::Measured;
        counts.handbook += field->origin == Origin::Handbook;
        counts.assumed += field->origin == Origin::Assumed;
    });
    return counts;
}

namespace {

QuestionState stateOf(const Machine& machine, std::string_view key) {
    if (key == "sets_aboard")
        return machine.setsAboard.empty() ? QuestionState::Open : QuestionState::Given;
    const auto view = fieldView(machine, key);
    if (!view || !view->isKnown) return QuestionState::Open;
    return view->origin == Origin::Assumed ? QuestionState::Assumed : QuestionState::Given;
}

}  // namespace

std::vector<SetupQuestion> tenQuestions(const Machine& machine) {
    std::vector<SetupQuestion> questions{{{"width"}},
                                         {{"spacing"}},
                                         {{"sections"}},
                                         {{"check_valve.kind"}},
                                         {{"sets_aboard"}},
                                         {{"senses"}},
                                         {{"control"}},
                                         {{"pump.kind"}},
                                         {{"restrictor.fitted"}},
                                         {{"limits.pressure_floor", "limits.pressure_ceiling"}}};
    for (auto& question : questions) {
        question.state = QuestionState::Given;
        for (const auto& key : question.keys)
            question.state = std::min(question.state, stateOf(machine, key));
    }
    return questions;
}

}  // namespace bw
