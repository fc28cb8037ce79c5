// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_evidence.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <set>

#include "core/model/checks.h"
#include "core/window/live_checks.h"
#include "core/window/rests_on.h"
#include "core/window/verdict.h"
#include "ui/kit/cautions.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kMostRests = 6;

QString said(const FormView& view, const Fact& fact) {
    return qs(view.session.sentences().of(fact, view.style));
}

void link(EvidenceRow& row, const FormView& view, const QString& key) {
    if (key.isEmpty()) return;
    if (key != u"name"_s && key != u"sets_aboard"_s && !isShown(view.machine, key)) return;
    row.link = u"field:"_s + key;
    row.linkText = key == u"sets_aboard"_s ? MachineEvidence::tr("Nozzle set aboard")
                   : key == u"name"_s      ? MachineEvidence::tr("Name")
                                           : labelOf(view.session, view.machine, key);
}

QString iconOfTopic(const std::string& topic) {
    if (topic == "floor") return u"floor"_s;
    if (topic == "ceiling") return u"ceiling"_s;
    if (topic == "pump") return u"pump"_s;
    if (topic == "width") return u"machine"_s;
    return topic == "strainers" ? u"find"_s : u"check"_s;
}

EvidenceRow rowOf(const FormView& view, const LiveCheck& check) {
    EvidenceRow row;
    const bool isFine = check.state == CheckState::Fine;
    const bool asks = check.state == CheckState::Asks;
    row.icon = check.state == CheckState::NotChecked ? u"unchecked"_s : iconOfTopic(check.topic);
    row.iconRole = isFine ? Role::Ink : asks ? Role::Limit : Role::Unchecked;
    row.textRole = check.state == CheckState::NotChecked ? Role::Unchecked : Role::Ink;
    row.text = said(view, check.what);
    if (!isFine) link(row, view, qs(check.where));
    return row;
}

/// Problems of single fields that the live checks do not say already.
void addProblems(const FormView& view, const std::vector<LiveCheck>& checks,
                 QVector<EvidenceRow>& rows, bool areNotes) {
    std::set<std::string> told;
    for (const auto& check : checks) told.insert(check.what.code);
    for (const auto& problem : checkMachine(view.machine)) {
        const bool isNote = problem.severity == Severity::Note;
        if (isNote != areNotes || told.count("problem." + problem.code)) continue;
        EvidenceRow row;
        row.icon = isNote ? u"unchecked"_s : u"caution"_s;
        row.iconRole = isNote ? Role::Unchecked : Role::Limit;
        row.textRole = isNote ? Role::Unchecked : Role::Ink;
        row.text = qs(view.session.sentences().of(problem, view.style));
        link(row, view, qs(problem.where));
        rows.append(row);
    }
}

/// What asks for work and is not checked, told before what is fine.
EvidenceSection checksSection(const FormView& view, const std::vector<LiveCheck>& checks) {
    EvidenceSection section{MachineEvidence::tr("Live checks"), {}};
    const auto add = [&](CheckState state) {
        for (const auto& check : checks) {
            if (check.state == state) section.rows.append(rowOf(view, check));
        }
    };
    add(CheckState::Asks);
    addProblems(view, checks, section.rows, false);
    add(CheckState::NotChecked);
    addProblems(view, checks, section.rows, true);
    add(CheckState::Fine);
    return section;
}

EvidenceSection uncheckedSection(const FormView& view, const WindowModel& model) {
    EvidenceSection section{
        MachineEvidence::tr("Not checked with %1").arg(QString::fromStdString(model.job().name)),
        {}};
    for (const auto& unchecked : whatIsUnchecked(model, model.window(view.machine.units))) {
        EvidenceRow row;
        row.icon = u"unchecked"_s;
        row.iconRole = Role::Unchecked;
        row.textRole = Role::Unchecked;
        row.text = said(view, unchecked.what);
        section.rows.append(row);
    }
    if (section.rows.isEmpty()) {
        EvidenceRow row;
        row.icon = u"check"_s;
        row.text = MachineEvidence::tr("Nothing left open.");
        section.rows.append(row);
    }
    return section;
}

EvidenceSection restsSection(const FormView& view, const WindowModel& model) {
    EvidenceSection section{MachineEvidence::tr("Assumed, and how far it moves the answer"), {}};
    const std::string machine = "machine.";
    for (const auto& value : restsOn(view.machine, model.nozzle(), model.job())) {
        if (value.origin != Origin::Assumed || value.where.compare(0, 8, machine) != 0) continue;
        if (section.rows.size() == kMostRests) break;
        EvidenceRow row;
        row.icon = u"origin:assumed"_s;
        link(row, view, qs(value.where.substr(8)));
        row.strong = labelOf(view.session, view.machine, qs(value.where.substr(8)));
        row.linkText = MachineEvidence::tr("change");
        if (value.move) row.quiet = said(view, moveFact(*value.move));
        section.rows.append(row);
    }
    if (section.rows.isEmpty()) {
        EvidenceRow row;
        row.text = MachineEvidence::tr("Nothing that this answer uses is assumed.");
        section.rows.append(row);
    }
    return section;
}

/// Before the advice to move floor or ceiling.
QStringList cautionsFor(const std::vector<LiveCheck>& checks) {
    QStringList ids;
    for (const auto& check : checks) {
        if (check.state != CheckState::Asks) continue;
        if (check.topic == "floor" && !ids.contains(u"C20"_s)) ids << u"C8"_s << u"C20"_s;
        if (check.topic == "ceiling" && !ids.contains(u"C10"_s)) ids << u"C8"_s << u"C10"_s;
    }
    if (!ids.isEmpty()) ids << u"C24"_s;
    ids.removeDuplicates();
    return ids;
}

}  // namespace

MachineEvidence::MachineEvidence(QWidget* parent)
    : QScrollArea(parent),
      m_caution(new CautionBox),
      m_checks(new EvidenceList),
      m_rests(new EvidenceList) {
    setObjectName(u"machine.evidence.scroll"_s);
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_checks->setObjectName(u"machine.evidence.checks"_s);
    m_rests->setObjectName(u"machine.evidence.rests"_s);
    auto* content = new QWidget;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(4));
    auto* box = new QHBoxLayout;
    box->setContentsMargins(px(14), px(6), px(12), 0);
    box->addWidget(m_caution);
    column->addLayout(box);
    auto* row = new QHBoxLayout;
    row->setSpacing(0);
    row->addWidget(m_checks, 3);
    row->addWidget(new HairLine(Qt::Vertical));
    row->addWidget(m_rests, 2);
    column->addLayout(row, 1);
    setWidget(content);
    for (EvidenceList* list : {m_checks, m_rests}) {
        connect(list, &EvidenceList::linkActivated, this, [this](const QString& link) {
            const QString target = link.section(u':', 1);
            if (link.startsWith(u"page:"_s))
                Q_EMIT pageWished(target);
            else
                Q_EMIT fieldWished(target);
        });
    }
}

void MachineEvidence::present(const FormView& view, const std::vector<Job>& jobs,
                              const WindowModel* model) {
    std::vector<Nozzle> nozzles;
    for (const auto& stored : view.session.season().nozzles) nozzles.push_back(stored.nozzle);
    const auto checks = liveChecks(view.machine, jobs, nozzles);
    m_caution->setTexts(cautionTexts(cautionsFor(checks)), true);
    m_checks->setSections({checksSection(view, checks)});
    if (model) {
        m_rests->setSections({uncheckedSection(view, *model), restsSection(view, *model)});
        return;
    }
    EvidenceRow row;
    row.text = tr("With a job and a nozzle this shows what is not checked, and what is assumed.");
    row.linkText = tr("Jobs are in the season");
    row.link = u"page:season"_s;
    m_rests->setSections({EvidenceSection{tr("What the answers rest on"), {row}}});
}

}  // namespace bw
