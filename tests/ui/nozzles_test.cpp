// SPDX-License-Identifier: GPL-3.0-or-later
// The Nozzles page by keys and mouse, on a copy of the demo season.
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QTableView>
#include <QTest>

#include "app/page_list.h"
#include "tests/ui/shell/frame_fixture.h"

namespace bw {
namespace {
}  // namespace
}  // namespace bw
