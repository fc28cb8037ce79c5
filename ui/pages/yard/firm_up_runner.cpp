// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/firm_up_runner.h"

#include <utility>

#include "core/yard/firm_up.h"

namespace bw {

FirmUpRunner::FirmUpRunner(QObject* parent) : QObject(parent) {}

FirmUpRunner::~FirmUpRunner() {
    // The thread posts to this object: it must be gone first.
    if (m_thread.joinable()) m_thread.join();
}

void FirmUpRunner::run(Inputs inputs) {
    if (m_isAsked && inputs == m_asked) return;
    m_isAsked = true;
    m_asked = std::move(inputs);
    m_check.clear();
    ++m_revision;
    // One at a time: what is asked meanwhile begins when it ends.
    if (!m_isRunning) start();
}

void FirmUpRunner::start() {
    const auto work = [this, revision = m_revision, asked = m_asked] {
        const auto first = firmUp(asked.machine, asked.nozzle, asked.job);
        const QString check = first ? QString::fromStdString(first->check) : QString();
        QMetaObject::invokeMethod(
            this, [this, revision, check] { take(revision, check); }, Qt::QueuedConnection);
    };
    m_isRunning = true;
    m_thread = std::jthread(work);
}

void FirmUpRunner::clear() {
    m_isAsked = false;
    ++m_revision;
    m_check.clear();
}

void FirmUpRunner::take(int revision, const QString& check) {
    m_isRunning = false;
    if (revision != m_revision) {
        if (m_isAsked) start();
        return;
    }
    m_check = check;
    Q_EMIT finished();
}

}  // namespace bw
