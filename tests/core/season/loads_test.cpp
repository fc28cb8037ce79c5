// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/loads.h"

#include <gtest/gtest.h>

#include "core/season/work_rate.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Volume litres(double x) {
    return make<Volume>(x, Unit::Litre);
}
Area hectares(double x) {
    return make<Area>(x, Unit::Hectare);
}
Duration minutes(double x) {
    return make<Duration>(x, Unit::Minute);
}

/// 4,000 L at 150 L/ha on 100 ha: 15,000 L are three full tanks and 3,000 L. Invented.
LoadsTask hundred() {
    LoadsTask task{litres(4000), lha(150), hectares(100), 1.28, {}};
    task.products.push_back({"liquid", lha(3), {}});
    task.products.push_back({"powder", {}, make<MassRate>(0.5, Unit::KilogramPerHectare)});
    return task;
}

TEST(Loads, FullOnesAndThePartLoad) {
    const Loads loads = loadsFor(hundred()).value();
    EXPECT_EQ(loads.count, 4);
    EXPECT_EQ(loads.fullCount, 3);
    EXPECT_NEAR(in(loads.all.volume, Unit::Litre), 15000, 1e-6);
    ASSERT_TRUE(loads.last);
    EXPECT_NEAR(in(loads.last->volume, Unit::Litre), 3000, 1e-6);
    EXPECT_NEAR(in(loads.last->area, Unit::Hectare), 20, 1e-9);
    EXPECT_NEAR(in(*loads.last->products[0].volume, Unit::Litre), 60, 1e-9);
    EXPECT_NEAR(in(*loads.last->products[1].mass, Unit::Kilogram), 10, 1e-9);
    EXPECT_NEAR(in(loads.last->water, Unit::Litre), 2940, 1e-6);
    EXPECT_NEAR(in(loads.full.products[0].volume.value(), Unit::Litre), 80, 1e-9);
    EXPECT_NEAR(in(loads.even.volume, Unit::Litre), 3750, 1e-6);
    // 4,000 L at 1.28 weighs 5.12 t.
    EXPECT_NEAR(in(loads.full.mass, Unit::Tonne), 5.12, 1e-9);
}

TEST(Loads, EvenAndSmallOnes) {
    LoadsTask task = hundred();
    task.area = hectares(80);  // 12,000 L: three tanks
    const Loads even = loadsFor(task).value();
    EXPECT_EQ(even.count, 3);
    EXPECT_FALSE(even.last);
    task.area = hectares(2);
    const Loads small = loadsFor(task).value();
    EXPECT_EQ(small.count, 1);
    EXPECT_EQ(small.fullCount, 0);
    EXPECT_NEAR(in(small.last->volume, Unit::Litre), 300, 1e-9);
}

TEST(Loads, RefuseWhatCannotBe) {
    LoadsTask task = hundred();
    task.tank = Volume{};
    EXPECT_EQ(loadsFor(task).problem().where, "tank");
    task = hundred();
    task.products[0].volume = lha(151);
    EXPECT_EQ(loadsFor(task).problem().code, "loads_product_over_rate");
    task = hundred();
    task.products[1].mass = MassRate::fromSi(-1);
    EXPECT_EQ(loadsFor(task).problem().where, "products[1].rate");
    task = hundred();
    task.tank = Volume::fromSi(1e-9);
    EXPECT_EQ(loadsFor(task).problem().code, "loads_too_many");
}

/// 36 m at 10 km/h do 36 ha/h; 18 ha in 500 m runs are 10 runs of 1.8 ha. Invented.
WorkTask field() {
    return {metres(36), kmh(10), hectares(18), metres(500), minutes(0.5), 2, minutes(15)};
}

TEST(WorkRate, TurningAndFillingTakeTime) {
    const WorkTime time = workTime(field()).value();
    EXPECT_NEAR(time.spraying.si(), 1800, 1e-6);
    EXPECT_EQ(time.runs, 10);
    EXPECT_EQ(time.turns, 9);
    EXPECT_NEAR(time.turning.si(), 270, 1e-9);
    EXPECT_NEAR(time.filling.si(), 1800, 1e-9);
    EXPECT_NEAR(time.efficiency, 1800.0 / 3870, 1e-12);
    EXPECT_NEAR(in(areaIn(time.effectiveRate, make<Duration>(1, Unit::Hour)), Unit::Hectare),
                36 * 1800.0 / 3870, 1e-9);
}

TEST(WorkRate, APartRunIsARun) {
    WorkTask task = field();
    task.area = hectares(18.1);
    EXPECT_EQ(workTime(task).value().runs, 11);
    task.run.reset();
    task.loads.reset();
    const WorkTime bare = workTime(task).value();
    EXPECT_EQ(bare.runs, 0);
    EXPECT_EQ(bare.total, bare.spraying);
    EXPECT_EQ(bare.efficiency, 1.0);
}

TEST(WorkRate, RefusesWhatCannotBe) {
    WorkTask task = field();
    task.speed = Speed{};
    EXPECT_EQ(workTime(task).problem().where, "speed");
    task = field();
    task.run = metres(1e-6);
    EXPECT_EQ(workTime(task).problem().code, "work_too_many_runs");
    task = field();
    task.turn = Duration::fromSi(-1);
    EXPECT_EQ(workTime(task).problem().where, "turn");
}

}  // namespace
}  // namespace bw
