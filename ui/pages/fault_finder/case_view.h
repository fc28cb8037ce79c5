// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/diagnosis/case_numbers.h"
#include "core/diagnosis/findings.h"
#include "core/text/sentences.h"
#include "ui/kit/palette.h"

namespace bw {

/// One answer that a card offers.
struct CardAnswer {
    QString id;
    QString text;
    QString meaning;  ///< what it would mean here
};

/// The figure that a card takes.
struct CardEntry {
    Dimension dimension = Dimension::None;
    Unit unit = Unit::None;
    QString label;
    std::optional<AnyQuantity> value;
    QString typed;
};

/// All that a question card shows. Cautions are ids; they stand before the answers.
struct CardContent {
    QString id;     ///< "start.symptom" or the check
    QString lead;   ///< "Check 2"
    QString place;  ///< "from the cab, while working"
    bool opensLine = false;
    QString effort;  ///< "2 min, no tools"
    QString question;
    QString reason;
    QStringList cautions;
    std::vector<CardAnswer> answers;
    std::optional<CardEntry> entry;
    QString healthy;
    QStringList expected;  ///< "38.3 gal/min with a blocked line strainer"
    QString howTo;
    QString why;
    QString given;  ///< answer id already given; it can be changed
    bool canReturn = false;
};

/// The questions before the first check; then the checks, then the end.
enum class Step {
    Symptom,
    Tank,
    Company,
    Place,
    Machine,
    Job,
    Nozzle,
    Numbers,
    Check,
    End,
    NotCovered
};

/// A case as the page shows it: the record, what the engine makes of it, and both in words. Made
/// anew whenever the record changes.
class CaseView {
  public:
    CaseView(CaseRecord record, NumberStyle style, const Sentences& sentences);

    const CaseRecord& record() const { return m_record; }
    const CallState& state() const { return m_state; }
    const CaseNumbers& numbers() const { return m_numbers; }
    const std::vector<Finding>& findings() const { return m_findings; }
    const NumberStyle& style() const { return m_style; }

    /// The first thing that is still open.
    Step openStep() const;
    /// The card of a check: the next one unless named.
    CardContent checkCard(const QString& checkId, const NextCheck* next) const;
    QString words(const Fact& fact) const;
    QString words(const Problem& problem) const;
    QString shortName(const std::string& check) const;
    QString nameOf(const Finding& finding) const;
    QString answerText(const Observation& observation) const;
    /// "blocked line strainer reads low" of a cause id.
    QString phraseOf(const std::string& cause) const;
    /// What an answer would do to the bars, in words.
    QString outlook(const Observation& observation) const;

  private:
    QStringList expectedLines(const NextCheck& next) const;
    std::vector<CardAnswer> answersOf(const Check& check) const;

    CaseRecord m_record;
    NumberStyle m_style;
    const Sentences& m_sentences;
    CallState m_state;
    CaseNumbers m_numbers;
    std::vector<Finding> m_findings;
};

/// Our word for a complaint, and the caller's ways of saying it.
QString symptomName(Symptom symptom);
QString symptomInTheirWords(Symptom symptom);
/// "likely", "possible", "less likely".
QString wordOf(Likeliness likeliness);
/// "open", "most likely found", "proved", "not proved".
QString stateName(CaseState state);
/// A safety answer in words: key "tank", "company" or "place".
QString safetyWords(const QString& key, const std::string& answer);
/// The choices of a safety question.
std::vector<CardAnswer> safetyChoices(const QString& key);
std::vector<CardAnswer> symptomChoices();
/// "in the cab, working" …
QString placeName(CheckPlace place);
/// The unit in which a reading is asked and shown: of one nozzle's catch in small measures.
Unit readingUnit(const std::string& check, UnitSystem units);
/// The dimension of a reading's check, "speed" among them; nothing for word answers.
std::optional<Dimension> readingDimension(const std::string& check);

}  // namespace bw
