// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_runner.h"

#include <utility>

namespace bw {
namespace {

/// Pairings done at once: a few milliseconds on an old office computer.
constexpr std::size_t kAtOnce = 150;

}  // namespace

SeasonRunner::SeasonRunner(QObject* parent) : QObject(parent) {}

SeasonRunner::~SeasonRunner() {
    // The thread posts to this object: it must be gone first.
    m_thread.request_stop();
    if (m_thread.joinable()) m_thread.join();
}

void SeasonRunner::run(SeasonInputs inputs) {
    if (m_running && inputs == m_asked) return;
    ++m_revision;
    m_thread.request_stop();
    if (pairsToReckon(inputs, m_result.get()) <= kAtOnce) {
        auto done = reckonSeason(std::move(inputs), m_result.get());
        take(m_revision, std::make_shared<const SeasonReckoning>(std::move(*done)));
        return;
    }
    m_asked = inputs;
    m_running = true;
    Q_EMIT started();
    const auto work = [this, revision = m_revision, before = m_result,
                       asked = std::move(inputs)](const std::stop_token& stop) {
        auto done = reckonSeason(asked, before.get(), [&] { return stop.stop_requested(); });
        if (!done) return;
        auto result = std::make_shared<const SeasonReckoning>(std::move(*done));
        QMetaObject::invokeMethod(
            this, [this, revision, result] { take(revision, result); }, Qt::QueuedConnection);
    };
    m_thread = std::jthread(work);
}

void SeasonRunner::take(int revision, std::shared_ptr<const SeasonReckoning> result) {
    if (revision != m_revision) return;
    m_result = std::move(result);
    m_running = false;
    Q_EMIT finished();
}

}  // namespace bw
