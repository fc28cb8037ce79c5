// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/fault_groups.h"

#include <QCoreApplication>

#include "core/simulation/fault.h"
#include "core/simulation/fault_place.h"

namespace bw {

std::vector<FaultGroup> faultGroups() {
    const auto tr = [](const char* text) {
        return QCoreApplication::translate("FaultGroups", text);
    };
    const std::pair<FaultPlace, QString> places[] = {
        {FaultPlace::Suction, tr("Suction and pump")},
        {FaultPlace::Line, tr("Line to the boom")},
        {FaultPlace::Boom, tr("Sections and nozzles")},
        {FaultPlace::Sensing, tr("What senses the rate")},
        {FaultPlace::Entered, tr("What was entered")},
        {FaultPlace::Correcting, tr("How it corrects")},
    };
    std::vector<FaultGroup> out;
    for (const auto& [place, title] : places) {
        FaultGroup group{title, {}};
        for (const std::string& cause : injectableCauses()) {
            if (faultPlace(cause) == place) group.causes.push_back(cause);
        }
        out.push_back(std::move(group));
    }
    return out;
}

}  // namespace bw
