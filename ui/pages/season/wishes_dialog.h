// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <utility>
#include <vector>

#include "core/season/set_choice.h"

class QCheckBox;
class QGridLayout;
class QSpinBox;

namespace bw {

class FarmSession;

/// The wishes that the farm file keeps; none of them if it keeps nothing readable. `owned` holds
/// only sets beside those aboard.
SetWishes keptWishes(FarmSession& session);

/// What the choice of sets should heed: nozzles ruled out, sets owned besides those aboard, spares,
/// room on the bodies, and what part of the time is spraying.
class WishesDialog : public QDialog {
    Q_OBJECT

  public:
    WishesDialog(FarmSession& session, const SetWishes& wishes, QWidget* parent);
    SetWishes wishes() const;

  private:
    QWidget* buildNozzles(const SetWishes& wishes);
    void addNozzle(QGridLayout& grid, int row, const Nozzle& nozzle, const SetWishes& wishes);
    void buildRest(class QVBoxLayout& column, const SetWishes& wishes);
    FarmSession& m_session;
    SetWishes m_before;
    std::vector<std::pair<std::string, QCheckBox*>> m_allowed;
    std::vector<std::pair<OwnedSet, QCheckBox*>> m_owned;
    QSpinBox* m_spares;
    QSpinBox* m_efficiency;
    QCheckBox* m_allAboard;
};

}  // namespace bw
