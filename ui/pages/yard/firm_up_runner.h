// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <thread>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// Finds, off the UI thread and on value copies, which yard check would firm the answer of a job up
/// most. A result that is late is dropped.
class FirmUpRunner : public QObject {
    Q_OBJECT

  public:
    struct Inputs {
        Machine machine;
        Nozzle nozzle;
        Job job;
        bool operator==(const Inputs&) const = default;
    };
    explicit FirmUpRunner(QObject* parent = nullptr);
    ~FirmUpRunner() override;

    void run(Inputs inputs);
    /// There is nothing to ask for: no job, no nozzle.
    void clear();
    /// Id of the check for the inputs asked last; empty while it is being found, or if none does.
    const QString& check() const { return m_check; }

  Q_SIGNALS:
    void finished();

  private:
    void start();
    void take(int revision, const QString& check);
    bool m_isAsked = false;
    bool m_isRunning = false;
    Inputs m_asked;
    QString m_check;
    std::jthread m_thread;
    int m_revision = 0;
};

}  // namespace bw
