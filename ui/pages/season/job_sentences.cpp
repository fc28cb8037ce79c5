// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/job_sentences.h"

#include <QCoreApplication>

#include "core/window/advice.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

QString offSentence(const PairVerdict& pair, const Sentences& sentences, const NumberStyle& style) {
    if (!pair.off) return {};
    const auto dose = doseFact(pair.off->ratio, style.units);
    if (!dose) return {};
    return QCoreApplication::translate("Season", "At %1: %2. %3")
        .arg(shown(pair.off->speed, style), shown(pair.off->rate, style),
             qs(sentences.of(*dose, style)));
}

QString pairSentence(const Machine& machine, const Nozzle& nozzle, const Job& job,
                     const Sentences& sentences, const NumberStyle& style) {
    const auto model = modelInBetterPosition(machine, nozzle, job);
    if (!model) return qs(sentences.of(model.problem(), style));
    QString text = qs(sentenceOf(verdictOf(*model, model->window()), sentences, style));
    const QString off = offSentence(pairVerdict(machine, nozzle, job), sentences, style);
    return off.isEmpty() ? text : text + u' ' + off;
}

}  // namespace bw
