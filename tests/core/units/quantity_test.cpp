// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/quantity.h"

#include <gtest/gtest.h>

#include <limits>
#include <type_traits>

#include "core/units/unit.h"

namespace bw {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
    a < b;
};
template <class A, class B>
concept Assignable = requires(A a, B b) {
    a = b;
};

// What the compiler must accept, with the right dimension.
static_assert(std::is_same_v<decltype(AreaRate{} * Speed{} * Length{}), Flow>);
static_assert(std::is_same_v<decltype(Flow{} / (Speed{} * Length{})), AreaRate>);
static_assert(std::is_same_v<decltype(Flow{} / (AreaRate{} * Length{})), Speed>);
static_assert(std::is_same_v<decltype(Volume{} / Area{}), AreaRate>);
static_assert(std::is_same_v<decltype(Volume{} / Duration{}), Flow>);
static_assert(std::is_same_v<decltype(Length{} * Length{}), Area>);
static_assert(std::is_same_v<decltype(Length{} / Duration{}), Speed>);
static_assert(std::is_same_v<decltype(Mass{} / Volume{}), Density>);
static_assert(std::is_same_v<decltype(MassRate{} / Density{}), AreaRate>);
static_assert(std::is_same_v<decltype(Mass{} / Area{}), MassRate>);
static_assert(std::is_same_v<decltype(Speed{} * Length{}), KinematicViscosity>);
static_assert(std::is_same_v<decltype(Pressure{} / Pressure{}), double>);
static_assert(std::is_same_v<decltype(AreaRate{} * Area{} / Volume{}), double>);
static_assert(std::is_same_v<decltype(SquareLoss{} * (Flow{} * Flow{})), Pressure>);
static_assert(std::is_same_v<decltype(2.0 * Flow{}), Flow> &&
              std::is_same_v<decltype(Flow{} / 2.0), Flow>);

// What it must refuse: a rate is no length, a pressure no flow, a bare number nothing at all.
static_assert(!std::is_same_v<AreaRate, Length>);
static_assert(!Addable<AreaRate, Length> && !Addable<Flow, Volume> && !Addable<Pressure, double>);
static_assert(!Comparable<Pressure, Flow> && !Comparable<Speed, double> &&
              !Comparable<AreaRate, Length>);
static_assert(!Assignable<Pressure, double> && !Assignable<AreaRate, Length> &&
              !Assignable<double, Pressure>);
static_assert(!std::is_convertible_v<double, Pressure> &&
              !std::is_constructible_v<Pressure, double>);
static_assert(!std::is_convertible_v<Pressure, double>);
static_assert(std::is_trivially_copyable_v<Flow> && sizeof(Flow) == sizeof(double));

// Constant expressions reckon as the program does: 150 L/ha at 36 km/h and 0.5 m are 75 mL/s.
static_assert((AreaRate::fromSi(150e-7) * Speed::fromSi(10) * Length::fromSi(0.5)).si() >
              74.999e-6);
static_assert((AreaRate::fromSi(150e-7) * Speed::fromSi(10) * Length::fromSi(0.5)).si() <
              75.001e-6);

TEST(Quantity, AddsSubtractsScalesAndCompares) {
    Length a = Length::fromSi(3);
    a += Length::fromSi(2);
    a -= Length::fromSi(1);
    EXPECT_DOUBLE_EQ(a.si(), 4);
    EXPECT_DOUBLE_EQ((-a).si(), -4);
    EXPECT_DOUBLE_EQ((a * 0.5 + a / 4.0 - Length::fromSi(1)).si(), 2);
    EXPECT_LT(Length::fromSi(1), a);
    EXPECT_EQ(a, Length::fromSi(4));
    EXPECT_DOUBLE_EQ(Length{}.si(), 0);
}

TEST(Quantity, KnowsWhenItIsNoNumber) {
    EXPECT_TRUE(Flow::fromSi(1).isFinite());
    EXPECT_FALSE(Flow::fromSi(std::numeric_limits<double>::infinity()).isFinite());
    EXPECT_FALSE((Flow{} / 0.0).isFinite());
}

TEST(Quantity, EveryDimensionHasItsTypeAtRunTime) {
    EXPECT_EQ(anyQuantity(Pressure::fromSi(5)).dimension, Dimension::Pressure);
    EXPECT_EQ(anyQuantity(AreaRate::fromSi(5)).dimension, Dimension::AreaRate);
    EXPECT_EQ(anyQuantity(Length::fromSi(5)).dimension, Dimension::Length);
    EXPECT_EQ(anyQuantity(5.0).dimension, Dimension::None);
    EXPECT_DOUBLE_EQ(anyQuantity(Flow::fromSi(7)).si, 7);
}

}  // namespace
}  // namespace bw
