// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/store/store_fixture.h"

#include <unistd.h>

#include <QFile>
#include <sstream>
#include <type_traits>

#include "core/store/connection.h"

namespace bw::test {

using namespace Qt::StringLiterals;

namespace {

constexpr uid_t kNobody = 65534;

// A value of each type that a field can hold, different for each field.
void fillValue(double& value, int n) {
    value = 0.1 + n / 3.0;
}
void fillValue(int& value, int n) {
    value = n;
}
void fillValue(bool& value, int) {
    value = true;
}
void fillValue(std::vector<int>& value, int n) {
    value = {n, n + 1, n + 2};
}
template <int V, int L, int M, int T>
void fillValue(Quantity<V, L, M, T>& value, int n) {
    value = Quantity<V, L, M, T>::fromSi(1e-4 + n * 1234.5678901234567 / 7.0);
}
template <class E>
void fillValue(E& value, int) requires std::is_enum_v<E> {
    value = ChoiceNames<E>::names.back().first;
}
void fillValue(std::vector<CurvePoint>& value, int n) {
    value.resize(3);
    for (auto& p : value) {
        fillValue(p.flow, ++n);
        fillValue(p.pressure, ++n);
    }
}
void fillValue(std::vector<FlowPoint>& value, int n) {
    value.resize(2);
    for (auto& p : value) {
        fillValue(p.pressure, ++n);
        fillValue(p.flow, ++n);
    }
}
void fillValue(std::vector<DropletBand>& value, int n) {
    value.resize(2);
    for (auto& b : value) {
        fillValue(b.from, ++n);
        fillValue(b.to, ++n);
    }
    value.back().category = DropletCategory::UC;
}
void fillValue(std::vector<DriftBand>& value, int n) {
    value.resize(2);
    for (auto& b : value) {
        fillValue(b.from, ++n);
        fillValue(b.to, ++n);
        fillValue(b.percent, ++n);
    }
}

template <class T>
void fillField(Known<T>& field, int n) {
    auto& known = field.emplace();
    fillValue(known.value, n);
    known.origin = static_cast<Origin>(n % 3);
    known.typed = "typed " + std::to_string(n) + " \xC2\xBD 'quoted'";
    known.date = "2026-03-0" + std::to_string(1 + n % 9);
    fillValue(known.from.emplace(), n + 1);
    fillValue(known.to.emplace(), n + 2);
}

/// Fields that came after the first kept file count apart, so that the values of the older ones
/// stay those of that file.
bool cameLater(std::string_view key) {
    return key.starts_with("boom_pipe.") || key == "passage" || key == "material";
}

template <class Record>
void fillFields(Record& record) {
    int n = 0, later = 100;
    visitFields(record, [&](const char* key, auto& field) {
        fillField(field, cameLater(key) ? ++later : ++n);
    });
}

QStringList tables(const Connection& connection) {
    QStringList out;
    auto query = connection.query(
        u"SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
        " ORDER BY name"_s);
    EXPECT_TRUE(query.run().isOk());
    while (query.next()) out << query.qtext(0);
    return out;
}

std::string cellText(const Statement& row, int column) {
    const auto cell = row.cell(column);
    if (!cell) return "NULL";
    if (const auto* text = std::get_if<std::string>(&*cell)) return "'" + *text + "'";
    std::ostringstream out;
    out.precision(17);
    out << std::get<double>(*cell);
    return out.str();
}

}  // namespace

FarmFileOptions StoreTest::options() const {
    FarmFileOptions out;
    out.onLocalDisk = true;
    out.busyMilliseconds = 20;
    out.now = [this] { return m_now; };
    return out;
}

std::unique_ptr<FarmFile> StoreTest::create(const QString& name) {
    auto file = FarmFile::create(at(name), options());
    EXPECT_TRUE(file.isOk()) << codeOf(file);
    return file ? std::move(file).value() : nullptr;
}

std::unique_ptr<FarmFile> StoreTest::open(const QString& name) {
    auto file = FarmFile::open(at(name), options());
    EXPECT_TRUE(file.isOk()) << codeOf(file);
    return file ? std::move(file).value() : nullptr;
}

Machine fullMachine() {
    Machine out;
    out.name = "Test machine (invented), \xC3\xA4\xE6\xA9\x9F";
    out.units = UnitSystem::Uk;
    out.setsAboard = {{2, "Test nozzle B"}, {1, "Test nozzle A"}};
    out.notes = "two\nlines";
    out.isDemo = true;
    fillFields(out);
    return out;
}

Nozzle fullNozzle() {
    Nozzle out;
    out.name = "Test nozzle A";
    out.family = "Test family";
    out.sizeCode = "03";
    out.acceptUnchecked = true;
    out.isDemo = true;
    out.notes = "notes";
    fillFields(out);
    return out;
}

Job fullJob() {
    Job out;
    out.name = "Test job";
    out.droplets = {DropletCategory::C, DropletCategory::XF};
    out.pinnedNozzle = "Test nozzle A";
    out.notes = "notes";
    out.isDemo = true;
    fillFields(out);
    return out;
}

CaseRecord fullCase() {
    CaseRecord out;
    out.machineId = 4711;
    out.customerId = 12;
    out.opened = "2026-05-01T08:15:00";
    out.symptom = Symptom::NotShuttingOff;
    out.tank = "rinsed";
    out.company = "alone";
    out.place = "yard";
    out.who = "technician";
    out.observations = {
        {"line_strainer", "dirty", std::nullopt, ""},
        {"sensor_pressure", "", AnyQuantity{Dimension::Pressure, 2.1e5 / 3}, "0.7 bar"},
        {"meter_factor", "", AnyQuantity{Dimension::None, 1.07}, "1.07"}};
    out.state = CaseState::NotConfirmed;
    out.causeFound = "plugged_line_strainer";
    out.minutes = 17;
    out.notes = "notes";
    out.machine = fullMachine();
    out.nozzle = fullNozzle();
    out.nozzle.isBuiltIn = true;
    out.job = fullJob();
    out.isDemo = true;
    return out;
}

YardRecord fullYardRecord() {
    YardRecord out;
    out.kind = YardKind::CatchTest;
    out.check = "Y7";
    out.machineId = 4711;
    out.machineName = "Test machine (invented)";
    out.units = UnitSystem::Us;
    out.started = "2026-03-04T09:10:00";
    out.finished = "2026-03-04T10:00:00";
    out.readings = {{"shut_in", 1, {Dimension::Pressure, 7.4e5 / 3}, ""},
                    {"flow", 2, {Dimension::Flow, 0.0035}, "210 L/min"},
                    {"pulses", 1, {Dimension::None, 6120.5}, "6120.5"}};
    out.choices = {{"convention", "pulses_per_volume"}};
    out.ticks = {{"spring.strainers", "2026-03-01", "two torn"},
                 {"spring.hoses", "2026-03-02", ""}};
    CatchTest& test = out.catchTest;
    test.set = "Test fan 04";
    test.pressure = Sourced<Pressure>{Pressure::fromSi(3e5)};
    test.pressure->origin = Origin::Measured;
    test.pressure->date = "2026-03-04";
    test.newFlow = Sourced<Flow>{Flow::fromSi(1.58e-3 / 60)};
    test.time = Duration::fromSi(30);
    test.scope = CatchScope::Section;
    test.section = 2;
    test.sections = {8, 9, 8};
    test.limitOfMean = 0.07;
    test.limitOfNew = 0.12;
    test.catches = {
        {18, false, Volume::fromSi(7.9e-4), Duration::fromSi(30), "790 mL"},
        {19, false, Volume::fromSi(7.1e-4), Duration::fromSi(29.5), ""},
        {19, true, Volume::fromSi(8.0e-4), Duration::fromSi(30), "800 mL"},
    };
    out.writtenFields = {"pump.curve", "pump.shutoff_pressure"};
    out.notes = "notes";
    out.isDemo = true;
    return out;
}

Customer fullCustomer() {
    return {"Test farm (invented)", "Nowhere", "000", "notes", true};
}

std::string dump(FarmFile& file) {
    std::ostringstream out;
    for (const QString& table : tables(file.connection())) {
        auto query = file.connection().query(u"SELECT * FROM %1 ORDER BY 1, 2"_s.arg(table));
        EXPECT_TRUE(query.run().isOk());
        while (query.next()) {
            out << table.toStdString();
            for (int column = 0; column < query.columns(); ++column)
                out << '|' << cellText(query, column);
            out << '\n';
        }
    }
    return out.str();
}

QByteArray bytesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

void writeBytes(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly)) << path.toStdString();
    ASSERT_EQ(file.write(bytes), bytes.size());
}

std::string argumentOf(const Problem& problem, const std::string& name) {
    for (const auto& argument : problem.arguments) {
        if (argument.name != name) continue;
        if (const auto* text = std::get_if<std::string>(&argument.value)) return *text;
    }
    return {};
}

AsOrdinaryUser::AsOrdinaryUser() {
    if (::getuid() != 0) return;
    m_changed = ::setresuid(kNobody, kNobody, 0) == 0;
}

AsOrdinaryUser::~AsOrdinaryUser() {
    if (!m_changed) return;
    EXPECT_EQ(::setresuid(0, 0, 0), 0);
}

}  // namespace bw::test
