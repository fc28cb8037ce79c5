// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/call.h"
#include "core/model/checks.h"
#include "core/window/speed_window.h"
