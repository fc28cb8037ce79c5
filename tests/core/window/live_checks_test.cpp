// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/live_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/hydraulics/parts.h"
#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

const LiveCheck* find(const std::vector<LiveCheck>& list, const std::string& topic) {
    const auto found = std::find_if(list.begin(), list.end(),
                                    [&](const LiveCheck& check) { return check.topic == topic; });
    return found == list.end() ? nullptr : &*found;
}

std::vector<LiveCheck> checks(const Machine& m, const std::vector<Job>& jobs = {}) {
    return liveChecks(m, jobs, {nozzle()});
}

std::string said(const LiveCheck& check) {
    return Sentences::shipped().of(check.what, NumberStyle{});
}

TEST(LiveChecks, WidthAgreesOrNotOrIsNotChecked) {
    Machine m = machine();
    EXPECT_EQ(find(checks(m), "width")->state, CheckState::NotChecked);
    m.width = Sourced<Length>(metres(12));
    EXPECT_EQ(find(checks(m), "width")->state, CheckState::Fine);
    EXPECT_EQ(said(*find(checks(m), "width")),
              "24 nozzles at 0.5 m make 12 m: agrees with the width entered.");
    m.width = Sourced<Length>(metres(15));
    EXPECT_EQ(find(checks(m), "width")->state, CheckState::Asks);
    EXPECT_EQ(find(checks(m), "width")->what.code, "problem.width_mismatch");
    m.spacing.reset();
    EXPECT_EQ(find(checks(m), "width")->state, CheckState::NotChecked);
    EXPECT_EQ(find(checks(m), "width")->where, "spacing");
}

/// A by-pass lets the whole pump flow through the suction: 250 L/min would lose 0.1·(250/100)² =
/// 0.625 bar of 0.6, so the pump gives 100·√(0.6/0.1) = 245 (invented figures).
TEST(LiveChecks, ASuctionThatCutsTheWholePumpFlowIsSaid) {
    Machine m = trailed28();
    EXPECT_EQ(find(checks(m), "suction"), nullptr);
    m.pump.ratedFlow = Sourced<Flow>(lpm(250));
    m.losses.suction = {Sourced<Pressure>(bar(0.1)), Sourced<Flow>(lpm(100))};
    const auto list = checks(m);
    ASSERT_NE(find(list, "suction"), nullptr);
    EXPECT_EQ(find(list, "suction")->state, CheckState::Asks);
    EXPECT_NE(said(*find(list, "suction")).find("The pump gives 245 L/min of its 250 L/min"),
              std::string::npos)
        << said(*find(list, "suction"));
    m.control->value = Control::PumpSpeed;
    EXPECT_EQ(find(checks(m), "suction"), nullptr) << "it passes only what is wanted";
}

TEST(LiveChecks, StrainersGetFinerAlongTheFlow) {
    Machine m = machine();
    EXPECT_EQ(find(checks(m), "strainers")->state, CheckState::NotChecked);
    m.strainers.suctionMesh = Sourced<double>(16);
    EXPECT_EQ(find(checks(m), "strainers")->state, CheckState::NotChecked) << "one alone";
    m.strainers.lineMesh = Sourced<double>(50);
    m.strainers.nozzleMesh = Sourced<double>(80);
    EXPECT_EQ(find(checks(m), "strainers")->state, CheckState::Fine);
    EXPECT_EQ(said(*find(checks(m), "strainers")),
              "Strainers 16, 50, 80 mesh: none is coarser than the one before it.");
    m.strainers.sectionMesh = Sourced<double>(30);
    EXPECT_EQ(find(checks(m), "strainers")->state, CheckState::Asks);
    EXPECT_EQ(find(checks(m), "strainers")->where, "strainers.section.mesh");
}

TEST(LiveChecks, ThePumpsLawIsHeldAgainstItsPoints) {
    EXPECT_EQ(find(checks(machine()), "pump"), nullptr);
    Machine m = selfPropelled100();
    // By hand: c = Σ(122−p)Q²/ΣQ⁴ = (10·1600 + 39·6400)/(1600² + 6400²) = 0.0061029 psi per
    // (gal/min)²; misses 0.235 psi at 40 gal/min and 0.059 at 80.
    EXPECT_EQ(find(checks(m), "pump")->state, CheckState::Fine);
    EXPECT_NEAR(in(fitPump(psi(122), m.pump.curve->value)->largestMiss, Unit::Psi), 0.235, 1e-3);
    m.pump.curve->value[0].pressure = psi(90);
    EXPECT_EQ(find(checks(m), "pump")->state, CheckState::Asks);
    EXPECT_NE(said(*find(checks(m), "pump")).find("misses its points (2)"), std::string::npos);
}

TEST(LiveChecks, FloorIsHeldAgainstTheSlowSpeedOfEveryJob) {
    Machine m = machine();
    EXPECT_EQ(find(checks(m, {job()}), "floor")->state, CheckState::NotChecked);
    // 150 L/ha at 8 km/h on 0.5 m is 1.0 L/min a nozzle: 3 bar × (1.0/1.2)² = 2.08 bar.
    m.limits = {Sourced<Pressure>(bar(2.0)), Sourced<Pressure>(bar(6)), {}};
    EXPECT_EQ(find(checks(m, {job()}), "floor")->state, CheckState::Fine);
    EXPECT_EQ(find(checks(m, {job()}), "ceiling")->state, CheckState::Fine);
    EXPECT_EQ(said(*find(checks(m, {job()}), "floor")),
              "Pressure floor 2 bar: under what the boom needs at the slow speed. Jobs checked: "
              "1.");
    m.limits.pressureFloor = Sourced<Pressure>(bar(2.2));
    const auto list = checks(m, {job()});
    EXPECT_EQ(find(list, "floor")->state, CheckState::Asks);
    EXPECT_EQ(list.front().topic, "floor") << "what asks for work stands first";
}

TEST(LiveChecks, JobsThatCannotBeReckonedNeverPass) {
    Machine m = machine();
    m.limits = {Sourced<Pressure>(bar(1)), Sourced<Pressure>(bar(6)), {}};
    EXPECT_EQ(find(checks(m), "floor"), nullptr) << "nothing to hold it against";
    EXPECT_EQ(find(checks(m), "jobs")->state, CheckState::NotChecked);
    Job open = job();
    open.pinnedNozzle = "a nozzle that nobody knows";
    const auto list = checks(m, {open});
    EXPECT_EQ(find(list, "floor"), nullptr);
    EXPECT_EQ(find(list, "jobs")->what.code, "check.jobs_left");
    const auto both = checks(m, {open, job()});
    EXPECT_EQ(find(both, "floor")->state, CheckState::Fine);
    EXPECT_EQ(find(both, "jobs")->state, CheckState::NotChecked);
}

TEST(LiveChecks, EverythingHasWords) {
    for (const auto& check : checks(machine(), {job()}))
        EXPECT_EQ(said(check).find('<'), std::string::npos) << said(check);
}

}  // namespace
}  // namespace bw
