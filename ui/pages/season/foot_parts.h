// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/model/season.h"
#include "ui/kit/metrics.h"

class QHBoxLayout;

namespace bw {

class FarmSession;

/// A small wrapped text.
TextLabel* footText(const QString& text, Role role = Role::Ink);
/// An icon and a small wrapped text beside it.
QHBoxLayout* footRow(const QString& icon, Role role, const QString& text, Role textRole);
/// The names of jobs, "Wheat, Beet".
QString jobNames(const FarmSession& session, const std::vector<RecordId>& jobs);

}  // namespace bw
