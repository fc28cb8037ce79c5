// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <memory>
#include <thread>

#include "core/season/set_choice.h"

namespace bw {

/// Chooses the sets off the UI thread, on value copies. A result that is late (something else was
/// asked for, or it was cancelled) is dropped.
class ChoiceRunner : public QObject {
    Q_OBJECT

  public:
    explicit ChoiceRunner(QObject* parent = nullptr);
    ~ChoiceRunner() override;

    /// Asks for a choice; `finished` follows. `before` spares pairings that have not changed.
    void run(SeasonInputs inputs, SetWishes wishes, std::shared_ptr<const SeasonReckoning> before);
    /// Gives up what runs; the last result stays.
    void cancel();
    /// The newest result; null before the first one.
    std::shared_ptr<const SetChoice> result() const { return m_result; }
    void forget() { m_result.reset(); }
    bool isRunning() const { return m_running; }

  Q_SIGNALS:
    void started();
    /// How far it is, 0 to 100; not told before 0.3 s have gone.
    void progressed(int percent);
    void finished();

  private:
    std::shared_ptr<const SetChoice> m_result;
    std::jthread m_thread;
    int m_revision = 0;
    bool m_running = false;
};

}  // namespace bw
