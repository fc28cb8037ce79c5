// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <vector>

#include "core/season/set_choice.h"

class QGridLayout;
class QHBoxLayout;
class QVBoxLayout;

namespace bw {

class FarmSession;

/// The choice of sets at the foot: for each machine its sets, the jobs each runs and what it costs,
/// and beside them what is left over, the other choices and what was not checked.
class ChoiceFoot : public QScrollArea {
    Q_OBJECT

  public:
    explicit ChoiceFoot(FarmSession& session, QWidget* parent = nullptr);
    /// `machines`: those shown, in order.
    void showChoice(const SetChoice& choice, const std::vector<RecordId>& machines);
    /// Says what goes on, while a choice is being worked out.
    void showProgress(int percent);
    void clear();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QVBoxLayout* addPanel(const QString& name, const QString& title, int stretch);
    void addMachine(const SetChoice& choice, RecordId machine);
    void addSet(QGridLayout& grid, const ChosenSet& set, const FittedSet& fitted);
    QString without(const ChosenSet& set, RecordId machine) const;
    void addRest(const SetChoice& choice, const std::vector<RecordId>& machines);
    void addCost(QVBoxLayout& column, const SetPlan& plan);
    void addLeftOver(QVBoxLayout& column, const UncoveredJob& left);
    void addNotChecked(QVBoxLayout& column, const SetChoice& choice);

    FarmSession& m_session;
    QWidget* m_content;
    QHBoxLayout* m_panels;
};

}  // namespace bw
