// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "ui/kit/evidence.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// Links in the evidence: "page:machine" and the like.
inline const QString kPageLink = QStringLiteral("page:");

/// The sections beside the chart, in the house's order: what stops it, ways out, (by hand), not
/// checked, rests on, floor and valve, outside.
QVector<EvidenceSection> evidenceOf(const WindowStudy& study, const Sentences& sentences);

/// Of these: what stops it; and what the verdict stands on, not checked first.
QVector<EvidenceSection> stopsOf(const WindowStudy& study, const Sentences& sentences);
QVector<EvidenceSection> groundsOf(const WindowStudy& study, const Sentences& sentences);

/// Title and text of the verdict, and how it stands.
struct VerdictText {
    QString title;
    QString text;
    Tone tone = Tone::Plain;
};
VerdictText verdictText(const WindowStudy& study, const Sentences& sentences);

/// The same window as one bar.
Span spanOf(const WindowStudy& study, const Sentences& sentences);

/// The cautions that belong here (C18 to C21; C25 for a heavy liquid; C8 and C24
/// where floor or nozzle ask for a change), each with its lead.
QStringList cautionsOf(const WindowStudy& study);
/// Those of changing the floor, or another setting of the controller.
QStringList settingCautions();

/// The page that mends a problem, by the field it names: "machine", "nozzles" or "season".
QString pageForProblem(const Problem& problem);

}  // namespace bw
