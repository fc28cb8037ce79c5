// SPDX-License-Identifier: GPL-3.0-or-later
#include <QTimer>

#include "core/model/typed_over.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/evidence.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/evidence_text.h"
#include "ui/pages/speed_window/pressure_view.h"
#include "ui/pages/speed_window/speed_window_page.h"
#include "ui/undo/farm_session.h"

/// The pressure floor, tried and set on the chart.
namespace bw {

using namespace Qt::StringLiterals;

/// Those of the window, and those of changing a setting wherever the floor can be moved: they stand
/// before a hand takes hold of it, so that the chart does not give way under the hand.
QStringList SpeedWindowPage::cautionsNow() const {
    QStringList texts = cautionsOf(*m_study);
    if (m_views->currentIndex() != View::Pressure || !canMoveFloor()) return texts;
    for (const QString& text : settingCautions()) {
        if (!texts.contains(text)) texts.append(text);
    }
    return texts;
}

bool SpeedWindowPage::canMoveFloor() const {
    return m_study->machine.limits.pressureFloor && !m_study->isPulsed();
}

void SpeedWindowPage::tellEvidence() {
    m_evidenceLater->stop();
    if (m_study->state == WindowStudy::State::Ready)
        m_evidence->setSections(evidenceOf(*m_study, session().sentences()));
}

/// The floor's line can be taken hold of, in whole psi or tenths of a bar, under the ceiling.
void SpeedWindowPage::placeFloorGrip() {
    const WindowStudy& s = *m_study;
    const double step = s.pressureUnit() == Unit::Psi ? 1.0 : 0.1;
    const auto& limits = s.machine.limits;
    if (!canMoveFloor()) return m_pressure->setLevel({}, 0, 0, 0);
    const double ceiling =
        limits.pressureCeiling ? s.y(limits.pressureCeiling->value) : s.pressureTo;
    m_pressure->setLevel(s.y(limits.pressureFloor->value), step, ceiling - step, step,
                         tr("Up and down move the pressure floor, Enter sets it"));
}

/// What another floor would do; nothing: back to the one set.
void SpeedWindowPage::previewFloor(std::optional<Pressure> floor) {
    m_floor = floor;
    study();
    showStudy();
    m_viewHint->setText(floor ? tr("Enter sets, Esc not") : tr("Drag, or ← →"));
}

void SpeedWindowPage::takeFloor(Pressure floor) {
    const Machine* machine = session().machine(session().currentMachine());
    m_floor.reset();
    if (!machine) return;
    Machine after = *machine;
    const QString before = after.limits.pressureFloor
                               ? shown(after.limits.pressureFloor->value, m_study->style)
                               : tr("not known");
    after.limits.pressureFloor = movedByHand(floor);
    const auto done = session().editMachine(
        session().currentMachine(), std::move(after),
        tr("pressure floor %1 to %2").arg(before, shown(floor, m_study->style)));
    if (!done) Q_EMIT notice(sentenceOf(done.problem(), m_study->style), true);
    previewFloor({});
}

}  // namespace bw
