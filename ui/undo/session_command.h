// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoCommand>
#include <vector>

#include "core/store/record_change.h"

namespace bw {

class FarmSession;

/// One undo step: changes that are already stored when the step is pushed, because a step on the
/// stack cannot refuse.
class SessionCommand : public QUndoCommand {
  public:
    SessionCommand(FarmSession& session, std::vector<RecordChange> changes, const QString& text);
    void undo() override;
    void redo() override;

  private:
    FarmSession& m_session;
    std::vector<RecordChange> m_changes;
    bool m_isDone = true;  // what the file holds, which may differ from what the stack believes
};

}  // namespace bw
