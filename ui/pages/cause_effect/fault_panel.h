// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/simulation/fault.h"
#include "core/text/sentences.h"
#include "core/units/format.h"

class QLineEdit;
class QListWidget;
class QListWidgetItem;
class QVBoxLayout;

namespace bw {

class LeverRow;
class TextLabel;

/// The faults: those put in, each with how bad it is, and a list of all to search. Space or a click
/// puts one in or takes it out.
class FaultPanel : public QWidget {
    Q_OBJECT

  public:
    explicit FaultPanel(const Sentences& sentences, QWidget* parent = nullptr);
    void setFaults(const std::vector<Fault>& faults, const NumberStyle& style);
    /// The name of a cause, as in the fault finder.
    QString nameOf(const std::string& cause) const;

  Q_SIGNALS:
    /// Another set of faults, or another severity; `words` say what was moved.
    void changed(const std::vector<bw::Fault>& faults, const QString& words);

  private:
    void fillList();
    void search(const QString& text);
    void showRows(const NumberStyle& style);
    void toggle(QListWidgetItem* item);
    void put(const std::string& cause, double severity);
    void take(const std::string& cause);

    const Sentences& m_sentences;
    std::vector<Fault> m_faults;
    QVBoxLayout* m_rows;
    std::vector<LeverRow*> m_levers;  ///< one a fault, in order
    TextLabel* m_none;
    QLineEdit* m_search;
    QListWidget* m_list;
};

}  // namespace bw
