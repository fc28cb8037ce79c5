// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/model/case_record.h"
#include "core/units/format.h"

class QGridLayout;

namespace bw {

class Button;
class CautionBox;
class ChoiceBox;
class QuantityEdit;
class SegmentedButtons;
class TextLabel;

/// The numbers of a call, every one skippable: Enter goes to the next. For a machine of the file
/// only what the display shows and the target; for one that is not in the file the machine too.
class NumbersForm : public QWidget {
    Q_OBJECT

  public:
    explicit NumbersForm(QWidget* parent = nullptr);
    void setRecord(const CaseRecord& record, const NumberStyle& style);
    /// Writes what stands in the form into a record. Fields that cannot be read are left out.
    void writeInto(CaseRecord& record) const;
    void takeFocus();
    /// Whether this reading is one of the numbers of a call.
    static bool asksFor(std::string_view check);

  Q_SIGNALS:
    void finished();
    void unitsChosen(bw::UnitSystem units);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    struct Row {
        QWidget* label;
        QWidget* control;
        bool callerOnly;
    };
    QuantityEdit* addQuantity(const QString& name, const QString& label, Dimension dimension,
                              bool callerOnly);
    void addRow(const QString& label, QWidget* control, bool callerOnly);
    SegmentedButtons* addChoices(const QString& name, const QString& label,
                                 const QStringList& choices);
    ChoiceBox* addSizes();
    void build();
    void placeRows();
    void watch(QWidget* control);
    void next(QWidget* after);
    void writeCaller(CaseRecord& record) const;
    void commitAll() const;

    bool m_isCaller = false;
    NumberStyle m_style;
    std::vector<Row> m_rows;
    QGridLayout* m_grid = nullptr;
    TextLabel* m_title = nullptr;
    TextLabel* m_intro = nullptr;
    SegmentedButtons* m_units = nullptr;
    QuantityEdit* m_width = nullptr;
    QuantityEdit* m_count = nullptr;
    QuantityEdit* m_spacing = nullptr;
    ChoiceBox* m_size = nullptr;
    SegmentedButtons* m_senses = nullptr;
    SegmentedButtons* m_pulsed = nullptr;
    QuantityEdit* m_rate = nullptr;
    QuantityEdit* m_speed = nullptr;
    QuantityEdit* m_shownRate = nullptr;
    QuantityEdit* m_shownFlow = nullptr;
    QuantityEdit* m_pressure = nullptr;
    Button* m_done = nullptr;
};

}  // namespace bw
