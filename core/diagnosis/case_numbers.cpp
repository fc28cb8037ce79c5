// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/case_numbers.h"

#include <cmath>

namespace bw {
namespace {

constexpr double kStuck = 0.03;      ///< shown off target by more: stuck (physics of the trace)
constexpr double kStraddles = 0.10;  ///< this near the changeover flow either position may serve

/// Spacing, or width over nozzles.
std::optional<Length> spacingOf(const Machine& machine) {
    if (machine.spacing && machine.spacing->value.si() > 0) return machine.spacing->value;
    const int nozzles = nozzleCount(machine);
    if (machine.width && machine.width->value.si() > 0 && nozzles > 0)
        return machine.width->value / nozzles;
    return std::nullopt;
}

std::optional<Length> widthOf(const Machine& machine) {
    if (const auto spacing = spacingOf(machine); spacing && nozzleCount(machine) > 0)
        return *spacing * nozzleCount(machine);
    return bare(machine.width);
}

bool positive(const std::optional<AreaRate>& x) {
    return x && x->si() > 0;
}
bool positive(const std::optional<Speed>& x) {
    return x && x->si() > 0;
}

}  // namespace

CaseNumbers::CaseNumbers(const CaseRecord& record) {
    const Machine& m = record.machine;
    senses = valueOr(m.senses, Senses::Flow);
    rate = bare(record.job.rate);
    speed = bare(record.job.usual);
    width = widthOf(m);
    if (m.sections) sections = m.sections->value;
    floor = bare(m.limits.pressureFloor);
    ceiling = bare(m.limits.pressureCeiling);
    restrictorFitted = bare(m.restrictor.fitted);
    position = bare(m.restrictor.position);
    changeover = bare(m.restrictor.changeoverFlow);
    minimumFullBore = bare(m.meter.minimumFullBore);
    minimumNarrowed = bare(m.meter.minimumNarrowed);
    readAll(record);
    if (positive(rate) && positive(speed)) {
        if (const auto spacing = spacingOf(m)) needNozzle = *rate * *speed * *spacing;
        if (width) needFlow = *rate * *speed * *width;
    }
    buildBoom(record);
}

void CaseNumbers::readAll(const CaseRecord& record) {
    std::array<int, kReadings> count{};
    for (const auto& observation : record.observations) {
        if (!observation.reading || !std::isfinite(observation.reading->si)) continue;
        if (observation.check == kSpeedRead) {
            if (observation.reading->dimension != Dimension::Speed) continue;
            speed = Speed::fromSi(observation.reading->si);
            speedWasRead = true;
            continue;
        }
        const auto kind = choiceFor<Reading>(observation.check);
        if (!kind || dimensionOf(*kind) != observation.reading->dimension) continue;
        const auto i = static_cast<std::size_t>(*kind);
        readings[i] = readings[i].value_or(0.0) + observation.reading->si;
        ++count[i];
    }
    for (std::size_t i = 0; i < kReadings; ++i) {
        if (count[i] > 1) *readings[i] /= count[i];
    }
}

void CaseNumbers::buildBoom(const CaseRecord& record) {
    const auto spacing = spacingOf(record.machine);
    if (!spacing) return;
    Machine machine;
    machine.spacing = Sourced<Length>(*spacing);
    machine.checkValve = record.machine.checkValve;
    machine.sections = record.machine.sections;
    if (sections.empty()) {
        machine.sections = Sourced<std::vector<int>>({1});
    } else {
        machine.losses.section = record.machine.losses.section;
    }
    Job job;
    job.rate = Sourced<AreaRate>(positive(rate) ? *rate : AreaRate::fromSi(1.5e-5));
    job.usual = Sourced<Speed>(positive(speed) ? *speed : Speed::fromSi(3.0));
    job.specificGravity = record.job.specificGravity;
    auto made = WindowModel::make(machine, record.nozzle, job);
    if (!made) return;
    boom = std::move(made).value();
    m_modelRatio = (job.rate->value * job.usual->value * boom->width()).si();
    if (needNozzle) needSensor = boom->neededSensorPressure(*speed);
}

double CaseNumbers::ratioAt(double sensor) const {
    return boom->boomFlow(Pressure::fromSi(sensor)).si() / m_modelRatio;
}

double CaseNumbers::sensorAt(double ratio) const {
    return boom->sensorPressure(Flow::fromSi(ratio * m_modelRatio)).si();
}

std::optional<Flow> CaseNumbers::shownFlow() const {
    if (const auto flow = reading(Reading::ShownFlow)) return Flow::fromSi(*flow);
    const auto shown = reading(Reading::ShownRate);
    if (!shown || !speed || !width) return std::nullopt;
    return AreaRate::fromSi(*shown) * *speed * *width;
}

std::optional<double> CaseNumbers::shownRatio() const {
    const auto flow = reading(Reading::ShownFlow);
    if (flow && needFlow) return *flow / needFlow->si();
    const auto shown = reading(Reading::ShownRate);
    if (shown && positive(rate)) return *shown / rate->si();
    return std::nullopt;
}

std::optional<Pressure> CaseNumbers::pressureRead() const {
    const auto sensor = reading(Reading::SensorPressure);
    const auto either = sensor ? sensor : reading(Reading::GaugePressure);
    return either ? std::optional(Pressure::fromSi(*either)) : std::nullopt;
}

std::optional<RestrictorPosition> CaseNumbers::rightPosition() const {
    if (!changeover || !needFlow) return std::nullopt;
    const double part = *needFlow / *changeover;
    if (std::abs(part - 1) <= kStraddles) return std::nullopt;
    return part < 1 ? RestrictorPosition::Narrowed : RestrictorPosition::FullBore;
}

std::optional<Flow> CaseNumbers::meterMinimum() const {
    const bool fitted = restrictorFitted.value_or(changeover.has_value());
    if (fitted && position.value_or(RestrictorPosition::FullBore) == RestrictorPosition::Narrowed)
        return minimumNarrowed;
    if (!minimumFullBore && fitted) return changeover;
    return minimumFullBore;
}

std::optional<Symptom> symptomFromNumbers(const CaseNumbers& numbers) {
    const auto ratio = numbers.shownRatio();
    if (!ratio || std::abs(*ratio - 1) <= kStuck) return std::nullopt;
    return *ratio > 1 ? Symptom::StuckHigh : Symptom::StuckLow;
}

}  // namespace bw
