// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/choice_runner.h"

#include <chrono>
#include <utility>

namespace bw {
namespace {

using Clock = std::chrono::steady_clock;
/// People wait so long without asking what goes on.
constexpr auto kQuiet = std::chrono::milliseconds(300);

}  // namespace

ChoiceRunner::ChoiceRunner(QObject* parent) : QObject(parent) {}

ChoiceRunner::~ChoiceRunner() {
    // The thread posts to this object: it must be gone first.
    m_thread.request_stop();
    if (m_thread.joinable()) m_thread.join();
}

void ChoiceRunner::run(SeasonInputs inputs, SetWishes wishes,
                       std::shared_ptr<const SeasonReckoning> before) {
    const int revision = ++m_revision;
    m_thread.request_stop();
    m_running = true;
    Q_EMIT started();
    const auto work = [this, revision, before = std::move(before), inputs = std::move(inputs),
                       wishes = std::move(wishes)](const std::stop_token& stop) {
        const auto begun = Clock::now();
        const auto tell = [&](double done) {
            if (Clock::now() - begun > kQuiet) {
                const int percent = static_cast<int>(100 * done);
                QMetaObject::invokeMethod(
                    this,
                    [this, revision, percent] {
                        if (revision == m_revision) Q_EMIT progressed(percent);
                    },
                    Qt::QueuedConnection);
            }
            return !stop.stop_requested();
        };
        auto choice =
            std::make_shared<const SetChoice>(chooseSets(inputs, wishes, tell, before.get()));
        if (choice->end == SolveEnd::Cancelled) return;
        QMetaObject::invokeMethod(
            this,
            [this, revision, choice] {
                if (revision != m_revision) return;
                m_result = choice;
                m_running = false;
                Q_EMIT finished();
            },
            Qt::QueuedConnection);
    };
    m_thread = std::jthread(work);
}

void ChoiceRunner::cancel() {
    if (!m_running) return;
    ++m_revision;
    m_thread.request_stop();
    m_running = false;
    Q_EMIT finished();
}

}  // namespace bw
