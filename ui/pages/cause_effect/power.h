// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace bw {

/// The computer says that it runs on its battery (Linux: /sys/class/power_supply). False where it
/// says nothing.
bool isOnBattery();

}  // namespace bw
