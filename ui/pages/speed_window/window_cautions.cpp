// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/window/advice.h"
#include "core/window/ways_out.h"
#include "ui/kit/cautions.h"
#include "ui/pages/speed_window/evidence_text.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr double kFertiliser = 1.1;
}  // namespace

QStringList settingCautions() {
    return {cautionText(u"C8"_s, QObject::tr("Changing the floor:")),
            cautionText(u"C24"_s, QObject::tr("Settings:"))};
}

QStringList cautionsOf(const WindowStudy& study) {
    QStringList texts{cautionText(u"C19"_s, QObject::tr("High end:")),
                      cautionText(u"C18"_s, QObject::tr("Droplets:")),
                      cautionText(u"C20"_s, QObject::tr("Low end:"))};
    if (!study.job.droplets.empty() || study.job.driftPercent || study.hand().nozzle.droplets)
        texts << cautionText(u"C21"_s, QObject::tr("Class:"));
    if (valueOr(study.job.specificGravity, 1.0) >= kFertiliser)
        texts << cautionText(u"C25"_s, QObject::tr("Heavy liquid:"));
    const auto ways = waysOut(study.model(), study.window(), study.style.units);
    const auto floor = floorAdvice(study.model(), study.window());
    const bool changesFloor =
        std::any_of(ways.begin(), ways.end(), [](const auto& w) { return w.floor.has_value(); });
    if (changesFloor || (floor && floor->asksForWork)) texts << settingCautions();
    return texts;
}

}  // namespace bw
