// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/model/machine.h"
#include "core/units/unit.h"

namespace bw {

class FarmSession;

/// One group of the machine form.
struct FormGroup {
    QString id;  ///< "boom"
    QString title;
    std::vector<QString> keys;  ///< as in visitFields; "sets_aboard" for the nozzle sets
    QStringList cautions;       ///< ids, shown at the top of the group
    bool isFolded = false;      ///< at first
};

/// The groups in their order.
std::vector<FormGroup> formGroups();

/// Whether a field has a place on this machine: a restrictor's fields only where one is fitted, a
/// meter's only where something may be sensed by flow. A value that is there is always shown.
bool isShown(const Machine& machine, const QString& key);
/// The unit in which a bare number of a field is read.
Unit unitOfField(const QString& key, Dimension dimension, UnitSystem system);
/// The field's words on this machine, "Pressure floor"; and within a sentence, "pressure floor".
QString labelOf(const FarmSession& session, const Machine& machine, const QString& key);
QString inSentence(const QString& label);
/// Where a person finds the value.
QString whereText(const FarmSession& session, const QString& key);
/// The word of a choice, "by-pass to the tank".
QString choiceWord(const FarmSession& session, const QString& key, const QString& choice);
/// Object name of the field's widget: "machine.limits.pressure_floor", "machine.boom.spacing".
QString fieldName(const QString& groupId, const QString& key);

}  // namespace bw
