// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/season.h"
#include "core/window/line_reading.h"
#include "ui/pages/machine/machine_row.h"

namespace bw {

class ChoiceBox;
class CircuitView;
struct CircuitReadings;
class TextLabel;

/// The drawn circuit with flow and pressure at each point for a job, a speed and a nozzle, and
/// where the pressure goes.
class CircuitPanel : public QWidget {
    Q_OBJECT

  public:
    explicit CircuitPanel(QWidget* parent = nullptr);
    void present(const FormView& view, RecordId machine, RecordId job);
    void setFieldInHand(const QString& key);
    /// Nozzle and job that the readings stand for; null if they cannot be reckoned.
    const WindowModel* model() const { return m_model ? &*m_model : nullptr; }

  Q_SIGNALS:
    void jobTaken(qint64 job);
    void partTaken(const QString& fieldKey);
    void nozzleTaken();  ///< another nozzle or speed than before

  private:
    void build();
    void presentJobs(const FormView& view, RecordId machine, RecordId job);
    void presentSpeeds(const FormView& view, const Job& job);
    void presentNozzles(const FormView& view, const Job& job);
    void presentReadings(const FormView& view);
    CircuitReadings readingsOf(const FormView& view, const LineReading& line) const;
    QString missingText(const FormView& view) const;
    QString noteOf(const FormView& view, const LineReading& line) const;
    Speed speedTaken() const;

    ChoiceBox* m_job;
    ChoiceBox* m_speed;
    ChoiceBox* m_nozzle;
    TextLabel* m_note;
    CircuitView* m_view;
    std::optional<WindowModel> m_model;
    RecordId m_shownJob = 0;
};

}  // namespace bw
