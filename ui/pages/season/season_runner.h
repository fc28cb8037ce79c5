// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <memory>
#include <thread>

#include "core/season/season_reckoning.h"

namespace bw {

/// Reckons the season off the UI thread, on value copies. Small changes are done at once. A result
/// that is late (something else was asked for meanwhile) is dropped.
class SeasonRunner : public QObject {
    Q_OBJECT

  public:
    explicit SeasonRunner(QObject* parent = nullptr);
    ~SeasonRunner() override;

    /// Asks for the verdicts of these inputs. `finished` follows, at once if little has changed.
    void run(SeasonInputs inputs);
    /// The newest result; null before the first one.
    const SeasonReckoning* result() const { return m_result.get(); }
    std::shared_ptr<const SeasonReckoning> shared() const { return m_result; }
    bool isRunning() const { return m_running; }

  Q_SIGNALS:
    void started();
    void finished();

  private:
    void take(int revision, std::shared_ptr<const SeasonReckoning> result);
    std::shared_ptr<const SeasonReckoning> m_result;
    SeasonInputs m_asked;
    std::jthread m_thread;
    int m_revision = 0;
    bool m_running = false;
};

}  // namespace bw
