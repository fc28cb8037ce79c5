// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

#include "core/window/speed_window.h"
#include "ui/pages/machine/machine_row.h"

namespace bw {

class CautionBox;
class EvidenceList;

/// The foot of the page: what was looked at while entering, what is not checked, and which assumed
/// values an answer rests on.
class MachineEvidence : public QScrollArea {
    Q_OBJECT

  public:
    explicit MachineEvidence(QWidget* parent = nullptr);
    /// `model`: the pairing of the circuit; null if there is none to speak of.
    void present(const FormView& view, const std::vector<Job>& jobs, const WindowModel* model);

  Q_SIGNALS:
    void fieldWished(const QString& key);
    void pageWished(const QString& pageId);

  private:
    CautionBox* m_caution;
    EvidenceList* m_checks;
    EvidenceList* m_rests;
};

}  // namespace bw
