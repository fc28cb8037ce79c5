// SPDX-License-Identifier: GPL-3.0-or-later
// How the page keeps time: frames, freezing, guessing, a second run. What it shows stands in
// cause_effect_page.cpp.
#include <QAction>
#include <QTimer>
#include <algorithm>
#include <array>

#include "core/store/farm_file.h"
#include "ui/kit/buttons.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/cause_effect/cause_effect_page.h"
#include "ui/pages/cause_effect/fault_panel.h"
#include "ui/pages/cause_effect/power.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const QString kCalmKey = u"cause_effect.calm"_s;
constexpr int kFrame = 16, kCalmFrame = 50;  // ms
constexpr double kWordsEvery = 0.25;         // s
constexpr double kMostFrame = 0.5;           // s: a longer pause (sleep) is not caught up
constexpr double kStepLength = 0.2;          // s simulated
constexpr std::array<double, 5> kFactors{1, 2, 5, 10, 20};
constexpr std::array<double, 5> kWindows{60, 60, 120, 300, 300};  // s shown at each factor
constexpr double kRevealed = 0.6;  // of the window runs at once when a guess is revealed

}  // namespace

double CauseEffectPage::factor() const {
    return kFactors.at(static_cast<std::size_t>(m_factor->currentIndex()));
}
double CauseEffectPage::shownSeconds() const {
    return kWindows.at(static_cast<std::size_t>(m_factor->currentIndex()));
}

void CauseEffectPage::readCalm() {
    m_calmAction->setChecked(session().file().setting(kCalmKey) == u"1"_s);
    keepTiming();
}

void CauseEffectPage::setClock(std::function<double()> seconds) {
    m_clock = std::move(seconds);
    m_lastTick = m_clock();
}

void CauseEffectPage::tick() {
    const double now = m_clock();
    const double passed = std::clamp(now - m_lastTick, 0.0, kMostFrame);
    m_lastTick = now;
    if (!m_run || m_isFrozen || m_isGuessing || !(passed > 0)) return;
    m_run->advance(Duration::fromSi(passed * factor()));
    showFrame();
    m_sinceWords += passed;
    if (m_sinceWords >= kWordsEvery) showWords();
}

void CauseEffectPage::showEvent(QShowEvent* event) {
    Page::showEvent(event);
    m_lastTick = m_clock();
    keepTiming();
    m_timer->start();
}

void CauseEffectPage::hideEvent(QHideEvent* event) {
    m_timer->stop();
    Page::hideEvent(event);
}

void CauseEffectPage::keepTiming() {
    m_timer->setInterval(m_calmAction->isChecked() || isOnBattery() ? kCalmFrame : kFrame);
}

void CauseEffectPage::setCalm(bool isCalm) {
    static_cast<void>(session().file().setSetting(kCalmKey, isCalm ? u"1"_s : u"0"_s));
    keepTiming();
}

void CauseEffectPage::resetAll() {
    if (!m_run) return;
    if (m_run->script() != Script::Steady) m_run->setScript(Script::Steady, Run::kShare, {});
    takeLevers(m_run->asEntered(), tr("all as entered"));
}

void CauseEffectPage::setFrozen(bool isFrozen) {
    if (!m_run || m_isGuessing) return;
    m_isFrozen = isFrozen;
    m_lastTick = m_clock();
    showSetup();
}

void CauseEffectPage::stepOnce() {
    if (!m_run || m_isGuessing) return;
    if (!m_isFrozen) setFrozen(true);
    m_run->advance(Duration::fromSi(kStepLength));
    showFrame();
    showWords();
}

void CauseEffectPage::setFactor(int) {
    if (m_run && !m_isGuessing) showFrame();
}

/// While the class guesses nothing is worked out, so nothing can leak. The answer then runs at
/// once, so far that the moment of asking stays in the picture.
void CauseEffectPage::setGuessing(bool isGuessing) {
    if (!m_run || isGuessing == m_isGuessing) return;
    m_isGuessing = isGuessing;
    if (!isGuessing) m_run->advance(Duration::fromSi(kRevealed * shownSeconds()));
    m_lastTick = m_clock();
    showSetup();
}

void CauseEffectPage::setBeside(Beside beside) {
    if (!m_run) return;
    m_besideKind = beside;
    Levers levers = m_run->levers();
    if (beside == Beside::WithoutFaults) levers.faults.clear();
    m_run->compareWith(beside == Beside::Nothing ? std::nullopt : std::optional(levers));
    showSetup();
}

QStringList CauseEffectPage::pictureStates() const {
    return {u"floor"_s, u"circuit"_s, u"faults"_s, u"headland"_s, u"guess"_s, u"reveal"_s};
}

void CauseEffectPage::showState(const QString& state) {
    if (!m_run) return;
    m_isFrozen = true;
    setGuessing(false);
    setBeside(Beside::Nothing);
    m_beside->setCurrentIndex(0);
    resetAll();
    m_run->restart(1);
    m_sideChoice->setCurrentIndex(state == u"faults"_s ? 1 : 0);
    m_pictureChoice->setCurrentIndex(state == u"circuit"_s ? 1 : 0);
    Levers levers = m_run->levers();
    if (state == u"faults"_s) {
        setBeside(Beside::WithoutFaults);
        m_beside->setCurrentIndex(static_cast<int>(Beside::WithoutFaults));
        levers.faults = {{"meter_part_full", 0.4}};
        takeLevers(levers, m_faults->nameOf("meter_part_full"));
    } else if (state == u"headland"_s) {
        m_run->setScript(Script::StopGo, 0.3, tr("Field and headland in turn").toStdString());
        showSetup();
    } else {
        if (state == u"guess"_s || state == u"reveal"_s) setGuessing(true);
        levers.floor = 1.5 * m_run->healthy().need.sensor;
        takeLevers(levers, tr("floor %1").arg(shown(*levers.floor, numbers())));
    }
    if (state == u"guess"_s) return;
    if (state == u"reveal"_s) return setGuessing(false);
    m_run->advance(Duration::fromSi((state == u"headland"_s ? 1.0 : kRevealed) * shownSeconds()));
    showFrame();
    showWords();
}

}  // namespace bw
