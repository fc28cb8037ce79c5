// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/model/machine_fields.h"
#include "core/text/sentences.h"
#include "ui/kit/circuit_view.h"
#include "ui/pages/cause_effect/run.h"

namespace bw {

/// What a run is told in, all from the core's codes.
class RunWords {
  public:
    RunWords(const Sentences& sentences, const NumberStyle& style)
        : m_sentences(sentences), m_style(style) {}

    /// Why the rate is what it is, one sentence after the other.
    QString why(const Run& run) const;
    /// The reading since something was moved; nothing: not enough yet.
    static std::optional<RunReading> readingOf(const Run& run);
    QString verdictTitle(const Run& run, const std::optional<RunReading>& reading) const;
    QString verdictText(const std::optional<RunReading>& reading) const;
    QString stability(const Run& run) const;
    /// Flow and pressure along the line at this moment.
    CircuitReadings circuit(const Run& run) const;

  private:
    QString say(std::string code, std::vector<Argument> arguments = {}) const;

    const Sentences& m_sentences;
    NumberStyle m_style;
};

/// The parts of a machine that teaching values stand in for, in words.
QString partsAssumed(const std::vector<std::string>& keys);
/// Page and field that mend a problem, as Page::goTo takes them: "machine#pump.kind".
QString placeOf(const Problem& problem);

}  // namespace bw
