// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/case_record.h"
#include "core/units/format.h"

class QLineEdit;

namespace bw {

class ChoiceBox;
class TextLabel;

/// "Any reading" (R): a number with its unit; the unit says what it may be, and the kind can be
/// changed before Enter takes it.
class ReadingBar : public QWidget {
    Q_OBJECT

  public:
    explicit ReadingBar(QWidget* parent = nullptr);
    /// Shows itself with a text typed already, or empty.
    void open(const QString& text, const NumberStyle& style);
    /// The reading that a text is by its unit alone; nothing without a unit that is a reading's.
    static std::optional<Observation> readingIn(const QString& text, const NumberStyle& style);

  Q_SIGNALS:
    void given(const bw::Observation& observation);
    void closed();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void fillKinds();
    void take();
    NumberStyle m_style;
    QLineEdit* m_text;
    ChoiceBox* m_kind;
    TextLabel* m_problem;
};

}  // namespace bw
