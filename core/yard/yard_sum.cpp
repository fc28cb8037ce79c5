// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/yard_sum.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/yard/catch_test.h"
#include "core/yard/meter_check.h"

namespace bw {
namespace {

/// Takes readings by their id, and remembers which were asked for and which were missing.
class Sheet {
  public:
    Sheet(const YardReadings& readings, const Machine& machine, const ReadingErrors& errors)
        : m_readings(readings), m_machine(machine), m_errors(errors) {}

    const Machine& machine() const { return m_machine; }
    const ReadingErrors& errors() const { return m_errors; }
    const std::vector<std::string>& asked() const { return m_asked; }
    const std::optional<Problem>& missing() const { return m_missing; }

    template <class T>
    std::vector<T> all(const char* id) {
        std::vector<T> out;
        for (const AnyQuantity& number : entry(id).numbers) {
            if (number.dimension == kDimensionOf<T>) out.push_back(T::fromSi(number.si));
        }
        if (out.empty()) miss(id);
        return out;
    }
    template <class T>
    T one(const char* id) {
        const auto values = all<T>(id);
        return values.empty() ? T{} : values.front();
    }
    template <class T>
    std::optional<T> maybe(const char* id) {
        for (const AnyQuantity& number : entry(id).numbers) {
            if (number.dimension == kDimensionOf<T>) return T::fromSi(number.si);
        }
        return std::nullopt;
    }
    std::optional<double> number(const char* id) {
        const auto& numbers = entry(id).numbers;
        return numbers.empty() ? std::nullopt : std::optional(numbers.front().si);
    }
    std::string choice(const char* id) { return entry(id).choice; }
    void miss(const char* id) {
        if (!m_missing) m_missing = error("yard_reading_missing", id);
    }

  private:
    const YardEntry& entry(const char* id) {
        static const YardEntry none;
        m_asked.emplace_back(id);
        const auto found = m_readings.find(id);
        return found == m_readings.end() ? none : found->second;
    }

    const YardReadings& m_readings;
    const Machine& m_machine;
    const ReadingErrors& m_errors;
    std::vector<std::string> m_asked;
    std::optional<Problem> m_missing;
};

using Answer = Result<YardAnswer>;

/// The sum's own answer, or its problem.
template <class R, class... More>
Answer answerOf(const Sheet& sheet, const Result<R>& result, More... more) {
    if (!result) return result.problem();
    return YardAnswer{result->shown, profileEdits(*result, sheet.machine(), more...)};
}

/// A problem names the sum's argument; the sheet may know it by another id.
Answer renamed(Answer answer, std::string_view from, const char* to) {
    if (answer || answer.problem().where != from) return answer;
    Problem problem = answer.problem();
    problem.where = to;
    return problem;
}

Answer pumpLineSum(Sheet& s) {
    const PumpLineReadings r{gaugeReading(s.one<Pressure>("shutoff_pressure"), s.errors()),
                             flowReading(s.one<Flow>("flow"), s.errors()),
                             gaugeReading(s.one<Pressure>("pressure"), s.errors())};
    if (s.missing()) return *s.missing();
    return answerOf(s, pumpLine(r));
}

Answer pumpLeftSum(Sheet& s) {
    const PumpLeftReadings r{flowReading(s.one<Flow>("flow"), s.errors()),
                             gaugeReading(s.one<Pressure>("pressure"), s.errors())};
    if (s.missing()) return *s.missing();
    return answerOf(s, pumpLeft(r));
}

/// A loss is the difference of two gauges: both errors are in it.
Measured<Pressure> lossReading(Pressure loss, const ReadingErrors& errors) {
    return {loss, errors.gauge * std::sqrt(2.0)};
}

Answer nozzleLossSum(Sheet& s) {
    const NozzleLossReadings r{flowReading(s.one<Flow>("low_flow"), s.errors()),
                               lossReading(s.one<Pressure>("low_loss"), s.errors()),
                               flowReading(s.one<Flow>("high_flow"), s.errors()),
                               lossReading(s.one<Pressure>("high_loss"), s.errors())};
    if (s.missing()) return *s.missing();
    return answerOf(s, nozzleLoss(r));
}

Answer steadyFlowSum(Sheet& s) {
    SteadyFlowReadings r{s.one<Flow>("steady"), s.one<Flow>("wanders"),
                         RestrictorPosition::FullBore};
    r.position = choiceFor<RestrictorPosition>(s.choice("position")).value_or(r.position);
    if (s.missing()) return *s.missing();
    return answerOf(s, steadyFlow(r));
}

Answer recoverySum(Sheet& s) {
    RecoveryReadings r{watchReading(s.one<Duration>("settled"), s.errors()), 0, std::nullopt};
    const auto swings = s.number("swings");
    if (!swings) s.miss("swings");
    if (const auto swing = s.maybe<Duration>("swing")) r.swing = watchReading(*swing, s.errors());
    if (s.missing()) return *s.missing();
    if (*swings < 0) return error("yard_not_positive", "swings");
    r.swings = static_cast<int>(*swings);
    return answerOf(s, recovery(r));
}

/// The number in the controller with its convention, which is never guessed.
struct ControllerNumber {
    std::optional<double> number;
    PulseConvention convention = PulseConvention::PulsesPer;
};
ControllerNumber controllerNumber(Sheet& s) {
    ControllerNumber out{s.number("number"), PulseConvention::PulsesPer};
    const auto convention = choiceFor<PulseConvention>(s.choice("convention"));
    if (out.number && !convention) s.miss("convention");
    out.convention = convention.value_or(out.convention);
    return out;
}

Answer meterSum(Sheet& s) {
    const auto shown = s.all<Volume>("shown");
    const auto known = s.all<Volume>("known");
    const auto old = controllerNumber(s);
    const bool isEntered = s.choice("entered") == "yes";
    if (s.missing()) return *s.missing();
    if (shown.size() != known.size())
        return error("yard_reading_missing", shown.size() < known.size() ? "shown" : "known");
    std::vector<MeterRun> runs;
    for (std::size_t i = 0; i < shown.size(); ++i)
        runs.push_back({tankReading(shown[i], s.errors()), tankReading(known[i], s.errors())});
    const auto check = meterCheck(runs, old.number, old.convention);
    return renamed(answerOf(s, check, isEntered), "runs", "known");
}

std::vector<Measured<Flow>> catchesOf(Sheet& s) {
    const auto volumes = s.all<Volume>("caught");
    const auto time = s.one<Duration>("time");
    std::vector<Measured<Flow>> out;
    if (!(time.si() > 0)) return out;
    for (const Volume volume : volumes) out.push_back(caughtFlow(volume, time, s.errors()));
    return out;
}

Answer jugSum(Sheet& s) {
    const auto flow = flowReading(s.one<Flow>("flow"), s.errors());
    const auto caught = catchesOf(s);
    const double nozzles = s.number("nozzles").value_or(nozzleCount(s.machine()));
    const auto old = controllerNumber(s);
    const bool isEntered = s.choice("entered") == "yes";
    if (s.missing()) return *s.missing();
    if (caught.empty()) return error("yard_not_positive", "time");
    if (!(nozzles >= 1)) return error("yard_reading_missing", "nozzles");
    return answerOf(s,
                    jugMethod(flow, caught, static_cast<int>(nozzles), old.number, old.convention),
                    isEntered);
}

Answer courseSum(Sheet& s) {
    CourseReadings r;
    r.course = {s.one<Length>("course"), s.errors().course};
    for (const Duration time : s.all<Duration>("times"))
        r.times.push_back(watchReading(time, s.errors()));
    if (const auto shown = s.maybe<Speed>("shown"))
        r.shown = Measured<Speed>{*shown, s.errors().shownSpeed};
    const auto old = controllerNumber(s);
    if (old.number && !r.shown) s.miss("shown");
    if (s.missing()) return *s.missing();
    r.number = old.number;
    r.convention = old.convention;
    const auto check = courseCheck(r);
    if (!check) return check.problem();
    return YardAnswer{check->shown, {}};
}

Answer catchSum(Sheet& s) {
    const auto caught = catchesOf(s);
    const auto fresh = s.maybe<Flow>("new_flow");
    if (s.missing()) return *s.missing();
    if (caught.empty()) return error("yard_not_positive", "time");
    std::vector<CatchEntry> entries;
    for (const auto& flow : caught)
        entries.push_back({static_cast<int>(entries.size()) + 1, flow, std::nullopt});
    const std::vector<int> none;
    const auto* sections = s.machine().sections ? &s.machine().sections->value : &none;
    const auto summary = catchSummary(entries, *sections, fresh);
    if (!summary) return renamed(summary.problem(), "nozzles", "caught");
    YardAnswer answer;
    answer.shown.warnings = summary->warnings;
    answer.shown.sum.push_back({"yard.catch_mean",
                                {{"value", anyQuantity(summary->mean.value)},
                                 {"spread", anyQuantity(summary->mean.uncertainty * 2.0)},
                                 {"count", anyQuantity(double(caught.size()))}}});
    if (summary->meanOfNew)
        answer.shown.sum.push_back(
            {"yard.catch_of_new", {{"percent", anyQuantity(*summary->meanOfNew * 100)}}});
    if (summary->cv)
        answer.shown.sum.push_back(
            {"yard.catch_cv", {{"percent", anyQuantity(*summary->cv * 100)}}});
    return answer;
}

Answer agitationSum(Sheet& s) {
    const AgitationReadings r{flowReading(s.one<Flow>("open"), s.errors()),
                              flowReading(s.one<Flow>("shut"), s.errors()),
                              gaugeReading(s.one<Pressure>("pressure"), s.errors())};
    if (s.missing()) return *s.missing();
    return answerOf(s, agitationFlow(r));
}

Answer gaugeSum(Sheet& s) {
    const auto read = [&](const char* id) { return gaugeReading(s.one<Pressure>(id), s.errors()); };
    const GaugeReadings r{read("rest"), read("shown_low"), read("true_low"), read("shown_high"),
                          read("true_high")};
    if (s.missing()) return *s.missing();
    const auto check = gaugeCheck(r);
    if (!check) return check.problem();
    return YardAnswer{check->shown, {}};
}

using SumFunction = Answer (*)(Sheet&);
constexpr std::array<std::pair<std::string_view, SumFunction>, 11> kSums{{{"Y1", pumpLineSum},
                                                                          {"Y1d", pumpLeftSum},
                                                                          {"Y2", nozzleLossSum},
                                                                          {"Y3", steadyFlowSum},
                                                                          {"Y4", recoverySum},
                                                                          {"Y5", meterSum},
                                                                          {"Y5j", jugSum},
                                                                          {"Y6", courseSum},
                                                                          {"Y7", catchSum},
                                                                          {"Y8", agitationSum},
                                                                          {"gauge", gaugeSum}}};

SumFunction sumFor(std::string_view check) {
    const auto found = std::find_if(kSums.begin(), kSums.end(),
                                    [&](const auto& one) { return one.first == check; });
    return found == kSums.end() ? nullptr : found->second;
}

}  // namespace

Result<YardAnswer> yardSum(std::string_view check, const YardReadings& readings,
                           const Machine& machine, const ReadingErrors& errors) {
    const SumFunction sum = sumFor(check);
    if (!sum) return error("yard_no_check");
    Sheet sheet(readings, machine, errors);
    return sum(sheet);
}

std::vector<std::string> yardReadingIds(std::string_view check) {
    const SumFunction sum = sumFor(check);
    if (!sum) return {};
    const YardReadings none;
    const Machine machine;
    const ReadingErrors errors;
    Sheet sheet(none, machine, errors);
    (void)sum(sheet);
    return sheet.asked();
}

}  // namespace bw
