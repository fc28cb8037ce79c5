// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/job_sentences.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/jobs_table.h"
#include "ui/pages/season/matrix_model.h"
#include "ui/pages/season/matrix_view.h"
#include "ui/pages/season/season_page.h"
#include "ui/pages/season/season_runner.h"
#include "ui/undo/farm_session.h"

/// The line under the table.
namespace bw {

using namespace Qt::StringLiterals;

QString SeasonPage::sentenceInHand(bool& isUnchecked) const {
    const bool ofMatrix = m_matrix->hasFocus();
    const QModelIndex at = ofMatrix ? m_matrix->currentIndex() : m_table->currentIndex();
    const SeasonRow* row = m_model->rowAt(at.row());
    if (!row) return {};
    if (row->kind == SeasonRow::Kind::NewJob)
        return tr(
            "Type a name, or paste a block from a spreadsheet: with a line of headings, or "
            "column by column as they stand here.");
    const Machine* machine = session().machine(row->machine);
    const Job* job = session().job(row->job);
    const SeasonReckoning* result = m_runner->result();
    const JobReckoning* reckoning = result ? result->of(row->job) : nullptr;
    if (!machine || !job) return {};
    if (!reckoning) return tr("Reckoning.");
    const NumberStyle style = session().styleOf(*machine);
    const auto& verdict = reckoning->verdict;
    isUnchecked = verdict.standing == JobStanding::NotChecked;
    const StoredNozzle* column = ofMatrix ? m_matrixModel->nozzleAt(at.column()) : nullptr;
    const Nozzle* nozzle = column ? &column->nozzle : session().nozzleNamed(verdict.nozzle);
    if (!column && verdict.problem)
        return qs(job->name) + u": "_s + qs(session().sentences().of(*verdict.problem, style));
    if (!nozzle) return {};
    return tr("%1 with %2: %3")
        .arg(qs(job->name), qs(nozzle->name),
             pairSentence(*machine, *nozzle, *job, session().sentences(), style));
}

void SeasonPage::showMessage() {
    const QModelIndex at = m_table->currentIndex();
    const QString problem = m_matrix->hasFocus() ? QString() : at.data(ProblemRole).toString();
    if (!problem.isEmpty()) {
        const auto column = static_cast<JobColumn>(at.column());
        const Job* job = m_model->jobAt(at);
        const QString where =
            job ? tr("%1, %2: ").arg(qs(job->name), wordsOf(column)) : wordsOf(column) + u": "_s;
        say(where + problem, true, false);
        return;
    }
    bool isUnchecked = false;
    const QString sentence = sentenceInHand(isUnchecked);
    say(sentence, false, isUnchecked);
}

void SeasonPage::say(const QString& text, bool isProblem, bool isUnchecked) {
    const Role role = isProblem ? Role::Limit : isUnchecked ? Role::Unchecked : Role::Ink;
    m_messageIcon->setIcon(isProblem     ? u"caution"_s
                           : isUnchecked ? u"unchecked"_s
                                         : u"window"_s,
                           isProblem || isUnchecked ? role : Role::Quiet);
    m_message->setRole(role);
    m_message->setText(text);
    m_message->setToolTip(text);
}

}  // namespace bw
