// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/fault_place.h"

#include <gtest/gtest.h>

#include "core/simulation/fault.h"

namespace bw {
namespace {

TEST(FaultPlace, EveryCauseOfTheLoopHasOne) {
    for (const auto& cause : injectableCauses()) EXPECT_TRUE(faultPlace(cause)) << cause;
    EXPECT_EQ(faultPlace("line_strainer"), FaultPlace::Line);
    EXPECT_FALSE(faultPlace("electrical_fault"));
}

}  // namespace
}  // namespace bw
