// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/season.h"

namespace bw {

class ChoiceBox;
class FarmSession;
class IconButton;
class OriginTally;

/// The page's tools in the header bar: which machine, new, duplicate, delete, class, units, and how
/// many of its values are measured, from the handbook and assumed.
class MachineHeader : public QWidget {
    Q_OBJECT

  public:
    explicit MachineHeader(const FarmSession& session, QWidget* parent = nullptr);
    void present(const Season& season, RecordId inHand);

  Q_SIGNALS:
    void machineTaken(qint64 id);
    void newWished();
    void duplicateWished();
    void deleteWished();
    void classTaken(const QString& choice);  ///< empty: not known
    void unitsTaken(bw::UnitSystem units);

  private:
    void fillFixed(const FarmSession& session);
    void presentMachines(const Season& season, RecordId inHand);
    QWidget* deeds();
    IconButton* deed(const QString& name, const QString& icon, const char* objectName,
                     void (MachineHeader::*signal)());
    ChoiceBox* m_machine;
    ChoiceBox* m_class;
    ChoiceBox* m_units;
    IconButton* m_duplicate = nullptr;
    IconButton* m_delete = nullptr;
    OriginTally* m_tally;
};

}  // namespace bw
