// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

/// The statements of each step, one file a step.
namespace bw::steps {

QStringList m0001First();
QStringList m0002Yard();

}  // namespace bw::steps
