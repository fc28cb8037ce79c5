// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/yard_book.h"

class QGridLayout;
class QVBoxLayout;

namespace bw {

class QuantityEdit;
class SegmentedButtons;

/// The readings of one check as fields: a line for each, a row of fields for each run where the
/// check takes several. A further run opens as the last one fills.
class ReadingForm : public QWidget {
    Q_OBJECT

  public:
    explicit ReadingForm(QWidget* parent = nullptr);
    /// Builds the fields of a check; `runs`: how many runs stand open from the start.
    void setCheck(const YardCheckText& check, const NumberStyle& style, int runs);
    /// Shows what was noted. A field being typed in, or refused, keeps its text.
    void present(const YardRecord& record, const NumberStyle& style);
    /// A problem of the sum, at the reading it names (all its runs share it); clears the others.
    void setProblem(const std::string& reading, const QString& sentence);
    /// Commits what is being typed. False if something cannot be read.
    bool commitPending();
    bool hasRefused() const { return !refusedText().isEmpty(); }
    /// The first text that could not be read; empty: none.
    QString refusedText() const;
    /// The field that shows a problem; null if none does.
    QWidget* problemField() const;
    void takeFocus();

  Q_SIGNALS:
    void given(const bw::NotedReading& reading);
    void cleared(const QString& id, int run);
    void chosen(const QString& id, const QString& word);
    /// Enter in the last field.
    void finished();

  private:
    struct Field {
        std::string id;
        int run = 1;
        QuantityEdit* edit = nullptr;
        QWidget* row = nullptr;  ///< of a run: shown as the runs before it fill; else null
    };
    struct Choice {
        std::string id;
        std::vector<std::string> words;
        SegmentedButtons* box = nullptr;
    };
    void addReading(const YardReadingText& reading, const NumberStyle& style);
    void addChoice(const YardReadingText& reading);
    void addRuns(const YardCheckText& check, const NumberStyle& style);
    QuantityEdit* addField(const YardReadingText& reading, int run, const NumberStyle& style,
                           QWidget* row);
    void showRuns(int runs);
    void goOn(const QuantityEdit* from);

    QVBoxLayout* m_column;
    QWidget* m_body = nullptr;
    std::vector<Field> m_fields;
    std::vector<Choice> m_choices;
    int m_runsOpen = 1;
    int m_mostRuns = 1;
};

}  // namespace bw
