// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>

#include "core/exchange/json.h"
#include "core/exchange/json_document.h"
#include "core/text/sentences.h"

namespace bw {
namespace {

/// A whole machine, nozzle or job (invented) with one key set to another value.
Json with(Json record, const std::string& pointer, Json value) {
    record[Json::json_pointer(pointer)] = std::move(value);
    return record;
}
Json without(Json record, const std::string& pointer) {
    const Json::json_pointer at(pointer);
    record[at.parent_pointer()].erase(at.back());
    return record;
}

Json wholeMachine() {
    return Json::parse(R"({
      "name": "Invented", "units": "us", "spacing": "20 in", "sections": [10, 14, 12],
      "control_valve": {"flow": "60 gal/min", "at": "20 psi"},
      "pump": {"kind": "centrifugal", "shutoff_pressure": "122 psi", "curve": [["40 gal/min", "112 psi"], ["80 gal/min", "83 psi"]]},
      "losses": {"line": {"pressure": "1.1 psi", "at": "40 gal/min"}},
      "restrictor": {"hole": "0.54 in", "changeover_flow": "30 gal/min", "position": "narrowed"},
      "meter": {"maximum": "75 gal/min"},
      "limits": {"pressure_floor": "18 psi", "pressure_ceiling": "85 psi"},
      "agitation": {"flow": "14 gal/min", "at": "45 psi"},
      "check_valve": {"opening_pressure": "0 psi"},
      "strainers": {"line": {"mesh": 40}}, "loop": {"gain": 0.25}})");
}
Json displacementMachine() {
    return with(
        wholeMachine(), "/pump",
        Json::parse(
            R"({"kind": "positive_displacement", "rated_flow": "40 gal/min", "relief_pressure": "150 psi"})"));
}
Json wholeNozzle() {
    return Json::parse(
        R"({"name": "Invented 03", "flow": "1.18 L/min", "at": "3 bar", "pressure_min": "1 bar", "pressure_max": "6 bar",
      "droplets": [{"from": "1 bar", "to": "1.6 bar", "category": "VC"}, {"from": "1.6 bar", "to": "3 bar", "category": "C"}],
      "drift": [{"from": "1 bar", "to": "2 bar", "percent": 90}]})");
}
Json tableNozzle() {
    return Json::parse(R"({"table": [["1 bar", "1.3 L/min"], ["2 bar", "1.8 L/min"]]})");
}
Json wholeJob() {
    return Json::parse(
        R"({"rate": "8 gal/ac", "slow": "11 mph", "usual": "14 mph", "fast": "15 mph", "droplets": ["C"]})");
}

struct Refusal {
    std::string what;
    Json record;
    std::string code;
    std::string where;
};
void PrintTo(const Refusal& refusal, std::ostream* out) {
    *out << refusal.what;
}

template <class Read>
void expectRefused(const Refusal& refusal, Read read) {
    const auto result = read(refusal.record.dump(), JsonUse::Request);
    ASSERT_FALSE(result.isOk()) << refusal.what << " was taken";
    EXPECT_EQ(result.problem().code, refusal.code);
    EXPECT_EQ(result.problem().where, refusal.where);
    const auto sentences = Sentences::shipped();
    const std::string sentence = sentences.of(result.problem(), {});
    EXPECT_THAT(sentence, ::testing::Not(::testing::AnyOf(::testing::HasSubstr("<"),
                                                          ::testing::HasSubstr("{"))));
}

TEST(JsonRefusals, WholeRecordsAreTaken) {
    EXPECT_TRUE(machineFromJson(wholeMachine().dump(), JsonUse::Request).isOk());
    EXPECT_TRUE(machineFromJson(displacementMachine().dump(), JsonUse::Request).isOk());
    EXPECT_TRUE(nozzleFromJson(wholeNozzle().dump(), JsonUse::Request).isOk());
    EXPECT_TRUE(nozzleFromJson(tableNozzle().dump(), JsonUse::Request).isOk());
    EXPECT_TRUE(jobFromJson(wholeJob().dump(), JsonUse::Request).isOk());
}

class MachineRefusals : public ::testing::TestWithParam<Refusal> {};
TEST_P(MachineRefusals, SayWhere) {
    expectRefused(GetParam(),
                  [](const std::string& text, JsonUse use) { return machineFromJson(text, use); });
}
const Json kMachine = wholeMachine();
INSTANTIATE_TEST_SUITE_P(
    Each, MachineRefusals,
    ::testing::Values(
        Refusal{"unknown key", with(kMachine, "/spacin", "20 in"), "json_unknown_key",
                "machine.spacin"},
        Refusal{"unknown key in a group", with(kMachine, "/limits/floor", "20 psi"),
                "json_unknown_key", "machine.limits.floor"},
        Refusal{"unknown key two groups deep", with(kMachine, "/losses/line/att", "20 gal/min"),
                "json_unknown_key", "machine.losses.line.att"},
        Refusal{"dotted key", with(kMachine, "/limits.top_speed", "20 mph"), "json_unknown_key",
                "machine.limits.top_speed"},
        Refusal{"empty key", with(kMachine, "/", 1), "json_unknown_key", "machine."},
        Refusal{"unknown key of a value",
                with(kMachine, "/spacing", Json{{"value", "20 in"}, {"form", "1 in"}}),
                "json_unknown_key", "machine.spacing.form"},
        Refusal{"group that is a text", with(kMachine, "/limits", "18 psi"), "json_wrong_type",
                "machine.limits"},
        Refusal{"group that is a list", with(kMachine, "/meter", Json::array()), "json_wrong_type",
                "machine.meter"},
        Refusal{"number without unit", with(kMachine, "/spacing", 20), "json_wrong_type",
                "machine.spacing"},
        Refusal{"text without unit", with(kMachine, "/spacing", "20"), "unit_missing",
                "machine.spacing"},
        Refusal{"decimal comma", with(kMachine, "/limits/pressure_floor", "2,8 bar"),
                "number_decimal_comma", "machine.limits.pressure_floor"},
        Refusal{"wrong kind of unit", with(kMachine, "/spacing", "20 psi"), "unit_wrong_kind",
                "machine.spacing"},
        Refusal{"unknown unit", with(kMachine, "/spacing", "20 cubits"), "unit_unknown",
                "machine.spacing"},
        Refusal{"letters", with(kMachine, "/spacing", "twenty in"), "number_letters",
                "machine.spacing"},
        Refusal{"too big a number", with(kMachine, "/spacing", "1e999 in"), "number_not_finite",
                "machine.spacing"},
        Refusal{"text for a plain number", with(kMachine, "/loop/gain", "0.25"), "json_wrong_type",
                "machine.loop.gain"},
        Refusal{"unknown choice", with(kMachine, "/control", "pumpspeed"), "json_not_a_choice",
                "machine.control"},
        Refusal{"unknown units", with(kMachine, "/units", "imperial"), "json_not_a_choice",
                "machine.units"},
        Refusal{"unknown origin",
                with(kMachine, "/spacing", Json{{"value", "20 in"}, {"origin", "guess"}}),
                "json_not_a_choice", "machine.spacing.origin"},
        Refusal{"object without value", with(kMachine, "/spacing", Json{{"origin", "assumed"}}),
                "json_missing", "machine.spacing.value"},
        Refusal{"bounds crossed",
                with(kMachine, "/spacing",
                     Json{{"value", "20 in"},
                          {"origin", "assumed"},
                          {"from", "21 in"},
                          {"to", "19 in"}}),
                "json_bounds_order", "machine.spacing"},
        Refusal{"bad bound", with(kMachine, "/spacing", Json{{"value", "20 in"}, {"from", "21"}}),
                "unit_missing", "machine.spacing.from"},
        Refusal{"no spacing", without(kMachine, "/spacing"), "json_missing", "machine.spacing"},
        Refusal{"null spacing", with(kMachine, "/spacing", nullptr), "json_missing",
                "machine.spacing"},
        Refusal{"no sections", without(kMachine, "/sections"), "json_missing", "machine.sections"},
        Refusal{"empty sections", with(kMachine, "/sections", Json::array()), "json_sections_empty",
                "machine.sections"},
        Refusal{"sections not a list", with(kMachine, "/sections", 36), "json_wrong_type",
                "machine.sections"},
        Refusal{"section with nothing", with(kMachine, "/sections/2", 0), "json_not_positive",
                "machine.sections[2]"},
        Refusal{"negative section", with(kMachine, "/sections/1", -3), "json_not_positive",
                "machine.sections[1]"},
        Refusal{"broken section", with(kMachine, "/sections/1", 3.5), "json_wrong_type",
                "machine.sections[1]"},
        Refusal{"section as text", with(kMachine, "/sections/0", "10"), "json_wrong_type",
                "machine.sections[0]"},
        Refusal{"absurd section", with(kMachine, "/sections/0", 1000000), "json_too_many_nozzles",
                "machine.sections"},
        Refusal{"zero spacing", with(kMachine, "/spacing", "0 in"), "value_zero",
                "machine.spacing"},
        Refusal{"negative spacing", with(kMachine, "/spacing", "-20 in"), "value_negative",
                "machine.spacing"},
        Refusal{"absurd spacing", with(kMachine, "/spacing", "1e300 m"), "value_not_possible",
                "machine.spacing"},
        Refusal{"vanishing spacing", with(kMachine, "/spacing", "1e-300 m"), "value_not_possible",
                "machine.spacing"},
        Refusal{"negative floor", with(kMachine, "/limits/pressure_floor", "-1 psi"),
                "value_negative", "machine.limits.pressure_floor"},
        Refusal{"floor at the ceiling", with(kMachine, "/limits/pressure_floor", "85 psi"),
                "floor_over_ceiling", "machine.limits.pressure_floor"},
        Refusal{"floor over the ceiling", with(kMachine, "/limits/pressure_floor", "90 psi"),
                "floor_over_ceiling", "machine.limits.pressure_floor"},
        Refusal{"discharge over 1", with(kMachine, "/restrictor/discharge_coefficient", 1.2),
                "value_not_possible", "machine.restrictor.discharge_coefficient"},
        Refusal{"loss without flow", without(kMachine, "/losses/line/at"), "json_missing",
                "machine.losses.line.at"},
        Refusal{"agitation without pressure", without(kMachine, "/agitation/at"), "json_missing",
                "machine.agitation.at"},
        Refusal{"valve without flow", without(kMachine, "/control_valve/flow"), "json_missing",
                "machine.control_valve.flow"},
        Refusal{"empty pump", with(kMachine, "/pump", Json::object()), "json_missing",
                "machine.pump.kind"},
        Refusal{"pump without shut-off", without(kMachine, "/pump/shutoff_pressure"),
                "json_missing", "machine.pump.shutoff_pressure"},
        Refusal{"centrifugal with rated flow", with(kMachine, "/pump/rated_flow", "40 gal/min"),
                "json_other_pump_kind", "machine.pump.rated_flow"},
        Refusal{"rising curve", with(kMachine, "/pump/curve/1/1", "150 psi"), "pump_curve_rising",
                "machine.pump.curve"},
        Refusal{"curve without flow",
                with(kMachine, "/pump/curve", Json::parse(R"([["0 gal/min", "122 psi"]])")),
                "json_curve_without_flow", "machine.pump.curve"},
        Refusal{"curve of threes",
                with(kMachine, "/pump/curve/0", Json::parse(R"(["1 gal/min", "2 psi", "3 psi"])")),
                "json_wrong_type", "machine.pump.curve[0]"},
        Refusal{"curve the wrong way round",
                with(kMachine, "/pump/curve/0", Json::parse(R"(["112 psi", "40 gal/min"])")),
                "unit_wrong_kind", "machine.pump.curve[0][0]"},
        Refusal{"negative curve flow", with(kMachine, "/pump/curve/0/0", "-4 gal/min"),
                "pump_curve_not_positive", "machine.pump.curve"},
        Refusal{"displacement without rated flow",
                without(displacementMachine(), "/pump/rated_flow"), "json_missing",
                "machine.pump.rated_flow"},
        Refusal{"displacement with a curve",
                with(displacementMachine(), "/pump/curve", Json::array()), "json_other_pump_kind",
                "machine.pump.curve"},
        Refusal{
            "throttle without relief",
            without(with(displacementMachine(), "/control", "throttle"), "/pump/relief_pressure"),
            "relief_missing_with_throttle", "machine.pump.relief_pressure"},
        Refusal{"pulsed without pressure", with(kMachine, "/pulsed", Json{{"duty_min", 0.3}}),
                "json_missing", "machine.pulsed.pressure"},
        Refusal{"duty crossed",
                with(kMachine, "/pulsed",
                     Json{{"pressure", "40 psi"}, {"duty_min", 0.9}, {"duty_max", 0.3}}),
                "duty_range_crossed", "machine.pulsed.duty_min"},
        Refusal{"duty over 1",
                with(kMachine, "/pulsed", Json{{"pressure", "40 psi"}, {"duty_max", 1.3}}),
                "value_not_possible", "machine.pulsed.duty_max"},
        Refusal{"strainer without mesh", with(kMachine, "/strainers/nozzle", Json::object()),
                "json_missing", "machine.strainers.nozzle.mesh"},
        Refusal{"check valve without pressure",
                with(kMachine, "/check_valve", Json{{"kind", "ball"}}), "json_missing",
                "machine.check_valve.opening_pressure"},
        Refusal{"name as number", with(kMachine, "/name", 5), "json_wrong_type", "machine.name"},
        Refusal{"machine as list", Json::array(), "json_wrong_type", "machine"}));

class NozzleRefusals : public ::testing::TestWithParam<Refusal> {};
TEST_P(NozzleRefusals, SayWhere) {
    expectRefused(GetParam(),
                  [](const std::string& text, JsonUse use) { return nozzleFromJson(text, use); });
}
const Json kNozzle = wholeNozzle();
INSTANTIATE_TEST_SUITE_P(
    Each, NozzleRefusals,
    ::testing::Values(
        Refusal{"no flow", without(kNozzle, "/flow"), "json_missing", "nozzle.flow"},
        Refusal{"no pressure", without(kNozzle, "/at"), "json_missing", "nozzle.at"},
        Refusal{"zero flow", with(kNozzle, "/flow", "0 L/min"), "value_zero", "nozzle.flow"},
        Refusal{"negative pressure", with(kNozzle, "/at", "-3 bar"), "value_negative", "nozzle.at"},
        Refusal{"range crossed", with(kNozzle, "/pressure_min", "7 bar"), "nozzle_range_crossed",
                "nozzle.pressure_min"},
        Refusal{"bands overlap", with(kNozzle, "/droplets/1/from", "1.5 bar"), "json_bands_overlap",
                "nozzle.droplets[1].from"},
        Refusal{"band upside down", with(kNozzle, "/droplets/1/from", "3.5 bar"), "json_band_order",
                "nozzle.droplets[1].from"},
        Refusal{"band without end", without(kNozzle, "/droplets/1/to"), "json_missing",
                "nozzle.droplets[1].to"},
        Refusal{"band without category", without(kNozzle, "/droplets/0/category"), "json_missing",
                "nozzle.droplets[0].category"},
        Refusal{"unknown category", with(kNozzle, "/droplets/0/category", "XXL"),
                "json_not_a_choice", "nozzle.droplets[0].category"},
        Refusal{"unknown key of a band", with(kNozzle, "/droplets/0/form", "1 bar"),
                "json_unknown_key", "nozzle.droplets[0].form"},
        Refusal{"band as text", with(kNozzle, "/droplets/0", "C"), "json_wrong_type",
                "nozzle.droplets[0]"},
        Refusal{"drift over 100", with(kNozzle, "/drift/0/percent", 101), "json_not_percent",
                "nozzle.drift[0].percent"},
        Refusal{"exponent nought", with(kNozzle, "/exponent", 0), "value_zero", "nozzle.exponent"},
        Refusal{"absurd exponent", with(kNozzle, "/exponent", 7), "value_not_possible",
                "nozzle.exponent"},
        Refusal{"table and exponent", with(tableNozzle(), "/exponent", 0.5),
                "nozzle_table_and_exponent", "nozzle.exponent"},
        Refusal{"empty table", with(tableNozzle(), "/table", Json::array()),
                "nozzle_table_too_short", "nozzle.table"},
        Refusal{"one row",
                with(tableNozzle(), "/table", Json::parse(R"([["1 bar", "1.3 L/min"]])")),
                "nozzle_table_too_short", "nozzle.table"},
        Refusal{"one pressure twice and no other", with(tableNozzle(), "/table/1/0", "1 bar"),
                "nozzle_table_too_short", "nozzle.table"},
        Refusal{"row with nothing", with(tableNozzle(), "/table/1/1", "0 L/min"), "value_zero",
                "nozzle.table[1][1]"}));

class JobRefusals : public ::testing::TestWithParam<Refusal> {};
TEST_P(JobRefusals, SayWhere) {
    expectRefused(GetParam(),
                  [](const std::string& text, JsonUse use) { return jobFromJson(text, use); });
}
const Json kJob = wholeJob();
INSTANTIATE_TEST_SUITE_P(
    Each, JobRefusals,
    ::testing::Values(
        Refusal{"no rate", without(kJob, "/rate"), "json_missing", "job.rate"},
        Refusal{"no usual speed", without(kJob, "/usual"), "json_missing", "job.usual"},
        Refusal{"slow over usual", with(kJob, "/slow", "14.5 mph"), "job_speeds_order", "job.slow"},
        Refusal{"usual over fast", with(kJob, "/fast", "13 mph"), "job_speeds_order_fast",
                "job.fast"},
        Refusal{"least rate over rate", with(kJob, "/rate_least", "9 gal/ac"), "job_rates_order",
                "job.rate_least"},
        Refusal{"most rate under rate", with(kJob, "/rate_most", "7 gal/ac"),
                "job_rates_order_most", "job.rate_most"},
        Refusal{"zero rate", with(kJob, "/rate", "0 gal/ac"), "value_zero", "job.rate"},
        Refusal{"negative speed", with(kJob, "/usual", "-14 mph"), "value_negative", "job.usual"},
        Refusal{"absurd speed", with(kJob, "/usual", "1400 mph"), "value_not_possible",
                "job.usual"},
        Refusal{"weight nought", with(kJob, "/specific_gravity", 0), "value_zero",
                "job.specific_gravity"},
        Refusal{"absurd weight", with(kJob, "/specific_gravity", 1280), "value_not_possible",
                "job.specific_gravity"},
        Refusal{"one droplet word", with(kJob, "/droplets", "C"), "json_wrong_type",
                "job.droplets"},
        Refusal{"unknown droplet word", with(kJob, "/droplets/0", "coarse"), "json_not_a_choice",
                "job.droplets[0]"},
        Refusal{"drift over 100", with(kJob, "/drift_percent", 150), "value_not_possible",
                "job.drift_percent"}));

TEST(JsonRefusals, AnUnknownKeyNamesTheNearestKnownOne) {
    const auto nearest = [](const std::string& key) {
        const auto read = machineFromJson(with(wholeMachine(), "/" + key, "1 in").dump());
        return std::get<std::string>(read.problem().arguments[1].value);
    };
    EXPECT_EQ(nearest("spacng"), "spacing");
    EXPECT_EQ(nearest("psacing"), "spacing");
    EXPECT_EQ(nearest("Sections"), "sections");
    EXPECT_EQ(nearest("check_valves"), "check_valve");
    EXPECT_EQ(nearest("limits/presure_floor"), "pressure_floor");
}

TEST(JsonRefusals, AStoredRecordMayContradictItself) {
    const auto machine =
        machineFromJson(with(wholeMachine(), "/limits/pressure_floor", "90 psi").dump());
    ASSERT_TRUE(machine.isOk());
    EXPECT_GT(machine->limits.pressureFloor->value, machine->limits.pressureCeiling->value);
}

TEST(JsonRefusals, ASketchIsTakenButNotOneThatContradictsItself) {
    EXPECT_TRUE(machineFromJson(R"({"pump": {"kind": "centrifugal"}})", JsonUse::Partial).isOk());
    EXPECT_TRUE(jobFromJson(R"({"usual": "9 km/h"})", JsonUse::Partial).isOk());
    EXPECT_EQ(
        jobFromJson(R"({"usual": "9 km/h", "fast": "8 km/h"})", JsonUse::Partial).problem().where,
        "job.fast");
}

TEST(JsonRefusals, AnAirOrElectricShutOffValveNeedsNoOpeningPressure) {
    EXPECT_TRUE(machineFromJson(
                    with(wholeMachine(), "/check_valve", Json{{"kind", "air_or_electric"}}).dump(),
                    JsonUse::Request)
                    .isOk());
}

TEST(JsonRefusals, AnEmptyDropletTableIsNoTable) {
    const auto nozzle =
        nozzleFromJson(with(wholeNozzle(), "/droplets", Json::array()).dump(), JsonUse::Request);
    ASSERT_TRUE(nozzle.isOk());
    EXPECT_FALSE(nozzle->droplets.has_value());
}

TEST(JsonDocument, RefusesWhatALibraryLetsPass) {
    const auto code = [](const std::string& text) {
        const auto read = parseJson(text);
        return read ? std::string("taken") : read.problem().code;
    };
    EXPECT_EQ(code(R"({"a": 1, "a": 2})"), "json_duplicate_key");
    EXPECT_EQ(code(std::string(100000, '[')), "json_too_deep");
    EXPECT_EQ(code(std::string(31, '[') + std::string(31, ']')), "taken");
    EXPECT_EQ(code("[1e999]"), "json_number_too_big");
    EXPECT_EQ(code("[NaN]"), "json_syntax");
    EXPECT_EQ(code("[Infinity]"), "json_syntax");
    EXPECT_EQ(code("\"\xff\""), "json_syntax");
    EXPECT_EQ(code("\"\xed\xa0\x80\""), "json_syntax");
    EXPECT_EQ(code(""), "json_syntax");
    EXPECT_EQ(code("{} {}"), "json_syntax");
    EXPECT_EQ(code(std::string("{}\0", 3)), "json_syntax");
    EXPECT_EQ(code("\"" + std::string(kJsonBytes, 'x') + "\""), "json_too_big");
    EXPECT_EQ(code("\xef\xbb\xbf{}"), "taken");
}

TEST(JsonDocument, ADuplicateKeySaysWhere) {
    const auto read = parseJson(R"({"machine": {"losses": [0, {"at": 1, "at": 2}]}})");
    ASSERT_FALSE(read.isOk());
    EXPECT_EQ(read.problem().where, "machine.losses[1].at");
}

TEST(JsonDocument, ASyntaxErrorSaysTheLineAndColumn) {
    const auto read = parseJson("{\n  \"a\": 1,\n  \"b\" 2\n}");
    ASSERT_FALSE(read.isOk());
    const Argument line{"line", std::string("3")};
    EXPECT_EQ(read.problem().arguments[0], line);
}

TEST(JsonDocument, LongWordsAreShortenedBetweenCharacters) {
    std::string word;
    for (int i = 0; i < 100; ++i) word += "\u00fc";
    const std::string shown = shortened("x" + word);
    EXPECT_LT(shown.size(), 90U);
    EXPECT_TRUE(Json(shown).dump().size() > 0);
    EXPECT_EQ(shortened("short"), "short");
}

}  // namespace
}  // namespace bw
