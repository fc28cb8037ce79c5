// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <vector>

#include "core/season/season_reckoning.h"

class QGridLayout;
class QHBoxLayout;
class QVBoxLayout;

namespace bw {

class FarmSession;

/// The evidence at the foot: per machine how many jobs hold, with which nozzle each is best so far,
/// what stops the others and what that does to the dose, and what was not checked. Counting only;
/// no choice of sets.
class SeasonFoot : public QScrollArea {
    Q_OBJECT

  public:
    explicit SeasonFoot(FarmSession& session, QWidget* parent = nullptr);
    /// `machines`: those shown, in order.
    void showSeason(const SeasonReckoning& season, const std::vector<RecordId>& machines);
    /// Takes everything out.
    void clear();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* panel(const SeasonReckoning& season, RecordId machine);
    void addShares(QVBoxLayout& column, const MachineTally& tally);
    void addOthers(QVBoxLayout& column, const SeasonReckoning& season, RecordId machine);
    void addOther(QVBoxLayout& column, const JobReckoning& reckoning, const Job& job,
                  const NumberStyle& style);

    FarmSession& m_session;
    QWidget* m_content;
    QHBoxLayout* m_panels;
};

}  // namespace bw
