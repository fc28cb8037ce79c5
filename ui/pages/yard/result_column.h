// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/kit/evidence.h"

class QVBoxLayout;

namespace bw {

/// The column at the right: what came out, how, and at its foot the deeds that follow from it.
class ResultColumn : public QWidget {
    Q_OBJECT

  public:
    explicit ResultColumn(QWidget* parent = nullptr);
    void setVerdict(const QString& title, const QString& text, Tone tone);
    void setSections(const QVector<EvidenceSection>& sections);
    VerdictPanel* verdict() const { return m_verdict; }
    EvidenceList* list() const { return m_list; }
    /// Where the deeds go; never scrolled away.
    QVBoxLayout* foot() const { return m_foot; }

  private:
    VerdictPanel* m_verdict;
    EvidenceList* m_list;
    QVBoxLayout* m_foot;
};

}  // namespace bw
