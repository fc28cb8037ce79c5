// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/undo/session_command.h"

#include <utility>

#include "ui/undo/farm_session.h"

namespace bw {

SessionCommand::SessionCommand(FarmSession& session, std::vector<RecordChange> changes,
                               const QString& text)
    : QUndoCommand(text), m_session(session), m_changes(std::move(changes)) {}

void SessionCommand::undo() {
    if (m_isDone && m_session.replay(takenBack(m_changes))) m_isDone = false;
}

void SessionCommand::redo() {
    if (!m_isDone && m_session.replay(m_changes)) m_isDone = true;
}

}  // namespace bw
