// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/candidate_set.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "core/window/candidates.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr std::size_t kMost = 6;
constexpr std::size_t kMostSizes = 3;

bool holds(const std::vector<std::string>& list, const std::string& name) {
    return std::find(list.begin(), list.end(), name) != list.end();
}

/// The sizes in the record that the machine's units go with.
std::vector<Nozzle> sizesFor(UnitSystem units) {
    const bool us = units == UnitSystem::Us;
    std::vector<Nozzle> out;
    for (const auto& size : builtInNozzles()) {
        const bool isUs = size.name.find("(US record)") != std::string::npos;
        if (isUs == us) out.push_back(size);
    }
    return out;
}

const Nozzle* find(const std::vector<Nozzle>& nozzles, const std::string& name) {
    const auto it =
        std::find_if(nozzles.begin(), nozzles.end(), [&](const auto& n) { return n.name == name; });
    return it == nozzles.end() ? nullptr : &*it;
}

QJsonArray arrayOf(const std::vector<std::string>& names) {
    QJsonArray out;
    for (const auto& name : names) out.append(qs(name));
    return out;
}

std::vector<std::string> namesIn(const QJsonValue& value) {
    std::vector<std::string> out;
    for (const auto& name : value.toArray()) out.push_back(ss(name.toString()));
    return out;
}

}  // namespace

std::vector<Nozzle> CandidateSet::candidates(RecordId job, const Machine& machine,
                                             const Job& theJob,
                                             const std::vector<StoredNozzle>& own) const {
    std::vector<Nozzle> mine;
    for (const auto& stored : own) mine.push_back(stored.nozzle);
    auto names = nearestNozzles(machine, theJob, mine, kMost);
    if (mine.empty()) names = nearestNozzles(machine, theJob, sizesFor(machine.units), kMostSizes);
    const auto alsoTake = [&names](const std::string& name) {
        if (!name.empty() && !holds(names, name)) names.push_back(name);
    };
    alsoTake(theJob.pinnedNozzle);
    for (const auto& set : machine.setsAboard) alsoTake(set.nozzle);
    const auto found = m_choices.find(job);
    const Choice choice = found == m_choices.end() ? Choice{} : found->second;
    for (const auto& name : choice.added) alsoTake(name);
    std::vector<Nozzle> out;
    for (const auto& name : names) {
        if (holds(choice.removed, name)) continue;
        const Nozzle* nozzle = find(mine, name);
        if (!nozzle) nozzle = find(builtInNozzles(), name);
        if (nozzle) out.push_back(*nozzle);
    }
    return out;
}

void CandidateSet::add(RecordId job, const std::string& nozzle) {
    Choice& choice = m_choices[job];
    std::erase(choice.removed, nozzle);
    if (!holds(choice.added, nozzle)) choice.added.push_back(nozzle);
}

void CandidateSet::remove(RecordId job, const std::string& nozzle) {
    Choice& choice = m_choices[job];
    std::erase(choice.added, nozzle);
    if (!holds(choice.removed, nozzle)) choice.removed.push_back(nozzle);
    if (choice.inHand == nozzle) choice.inHand.clear();
}

void CandidateSet::takeInHand(RecordId job, const std::string& nozzle) {
    m_choices[job].inHand = nozzle;
}

std::string CandidateSet::inHand(RecordId job) const {
    const auto found = m_choices.find(job);
    return found == m_choices.end() ? std::string() : found->second.inHand;
}

QString CandidateSet::text() const {
    QJsonObject all;
    for (const auto& [job, choice] : m_choices) {
        all.insert(QString::number(job), QJsonObject{{u"added"_s, arrayOf(choice.added)},
                                                     {u"removed"_s, arrayOf(choice.removed)},
                                                     {u"in_hand"_s, qs(choice.inHand)}});
    }
    return QString::fromUtf8(QJsonDocument(all).toJson(QJsonDocument::Compact));
}

void CandidateSet::read(const QString& text) {
    m_choices.clear();
    const QJsonObject all = QJsonDocument::fromJson(text.toUtf8()).object();
    for (auto it = all.begin(); it != all.end(); ++it) {
        const QJsonObject choice = it.value().toObject();
        m_choices[it.key().toLongLong()] = {namesIn(choice.value(u"added"_s)),
                                            namesIn(choice.value(u"removed"_s)),
                                            ss(choice.value(u"in_hand"_s).toString())};
    }
}

}  // namespace bw
