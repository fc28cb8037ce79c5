// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <random>
#include <string>

#include "core/exchange/json_values.h"
#include "core/model/case_record.h"
#include "core/units/parse.h"

/// Random records for round trips: every field known or not, with every origin. Numbers are
/// invented and need not make sense together.
namespace bw::testing {

class RandomModels {
  public:
    explicit RandomModels(unsigned seed) : m_engine(seed) {}

    bool coin() { return below(2) == 0; }
    int below(int count) { return static_cast<int>(m_engine() % static_cast<unsigned>(count)); }
    double number() { return std::exp(std::uniform_real_distribution<double>(-6, 6)(m_engine)); }
    std::string text() {
        static const std::vector<std::string> kTexts{"", "plain", "M\u00fcller \u2013 28 m",
                                                     "tab\tnew\nline \"quoted\"", "\u00b5 {gap}"};
        return kTexts[static_cast<std::size_t>(below(static_cast<int>(kTexts.size())))];
    }

    Machine machine();
    Nozzle nozzle();
    Job job();
    CaseRecord record();

  private:
    void value(double& out) { out = number(); }
    void value(int& out) { out = below(50); }
    void value(bool& out) { out = coin(); }
    template <int V, int L, int M, int T>
    void value(Quantity<V, L, M, T>& out) {
        // As any number typed in any unit of the dimension comes out of the parser.
        std::vector<UnitInfo> fitting;
        for (const auto& unit : units()) {
            if (unit.dimension == kDimensionOf<Quantity<V, L, M, T>>) fitting.push_back(unit);
        }
        const auto& unit =
            fitting[static_cast<std::size_t>(below(static_cast<int>(fitting.size())))];
        out = Quantity<V, L, M, T>::fromSi(number() * unit.inSi);
    }
    template <class E>
    void value(E& out) requires std::is_enum_v<E> {
        const auto& names = ChoiceNames<E>::names;
        out = names[static_cast<std::size_t>(below(static_cast<int>(names.size())))].first;
    }
    void value(CurvePoint& out) { value(out.flow), value(out.pressure); }
    void value(FlowPoint& out) { value(out.flow), value(out.pressure); }
    void value(DropletBand& out) { value(out.from), value(out.to), value(out.category); }
    void value(DriftBand& out) { value(out.from), value(out.to), value(out.percent); }
    template <class T>
    void value(std::vector<T>& out) {
        out.resize(static_cast<std::size_t>(below(4)));
        for (auto& item : out) value(item);
    }
    template <class T>
    void typed(Sourced<T>& out) {
        if (coin()) out.typed = text();
    }
    template <int V, int L, int M, int T>
    void typed(Sourced<Quantity<V, L, M, T>>& out) {
        const int kind = below(4);
        if (kind == 0) out.typed = exactText(anyQuantity(out.value), UnitSystem::Us);
        if (kind == 1) out.typed = "2,8 bar";
        if (kind == 2) out.typed = text();
    }
    template <class T>
    void known(Known<T>& out) {
        if (below(3) == 0) return;
        Sourced<T> field;
        value(field.value);
        value(field.origin);
        typed(field);
        if (coin()) field.date = "2031-04-05";
        if (coin()) value(field.from.emplace());
        if (coin()) value(field.to.emplace());
        out = std::move(field);
    }
    void value(Origin& out) { out = static_cast<Origin>(below(3)); }

    std::mt19937 m_engine;
};

inline Machine RandomModels::machine() {
    Machine out;
    out.name = text();
    out.units = static_cast<UnitSystem>(below(3));
    visitFields(out, [&](std::string_view, auto& field) { known(field); });
    for (int i = below(3); i > 0; --i) out.setsAboard.push_back({below(6), text()});
    out.notes = text();
    out.isDemo = coin();
    return out;
}

inline Nozzle RandomModels::nozzle() {
    Nozzle out;
    out.name = text();
    out.family = text();
    out.sizeCode = coin() ? "03" : "";
    visitFields(out, [&](std::string_view, auto& field) { known(field); });
    out.acceptUnchecked = coin();
    out.isDemo = coin();
    out.isBuiltIn = coin();
    out.notes = text();
    return out;
}

inline Job RandomModels::job() {
    Job out;
    out.name = text();
    visitFields(out, [&](std::string_view, auto& field) { known(field); });
    value(out.droplets);
    out.pinnedNozzle = text();
    out.notes = text();
    out.isDemo = coin();
    return out;
}

inline CaseRecord RandomModels::record() {
    CaseRecord out;
    out.machineId = below(9);
    out.customerId = below(9);
    out.opened = coin() ? "2031-04-05T06:07:08" : "";
    if (coin()) value(out.symptom.emplace());
    out.tank = coin() ? "water" : "";
    out.company = text();
    out.place = text();
    out.who = text();
    for (int i = below(4); i > 0; --i) {
        Observation observation{"check_" + std::to_string(i), text(), std::nullopt, {}};
        if (coin())
            observation.reading = AnyQuantity{Dimension::None, number()};
        else if (coin())
            observation.reading = AnyQuantity{Dimension::Pressure, number()};
        observation.typed = text();
        out.observations.push_back(std::move(observation));
    }
    value(out.state);
    out.causeFound = text();
    out.minutes = below(60);
    out.notes = text();
    out.machine = machine();
    out.nozzle = nozzle();
    out.job = job();
    out.isDemo = coin();
    return out;
}

}  // namespace bw::testing
