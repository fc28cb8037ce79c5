// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <memory>

#include "core/model/machine.h"
#include "core/model/machine_fields.h"
#include "core/units/format.h"

class QGridLayout;

namespace bw {

class FarmSession;
class OriginButton;
class TextLabel;

/// One accepted edit of a machine.
using MachineChange = std::function<void(Machine&)>;

/// What a row shows: the machine in hand and how its reader likes numbers.
struct FormView {
    const FarmSession& session;
    const Machine& machine;
    NumberStyle style;
};

/// One field of the machine form: label, editor, where the value came from, what is usual, and its
/// problem below. An edit is told as a change with its words for the undo list; the row shows it
/// only when the machine comes back with it.
class MachineRow : public QWidget {
    Q_OBJECT

  public:
    /// `name` is the object name of the editor; parts of the row append to it.
    MachineRow(const QString& key, const QString& name, QWidget* parent = nullptr);

    const QString& key() const { return m_key; }
    const QString& label() const { return m_label; }
    /// What the field holds, as shown last.
    const FieldView& field() const { return m_field; }
    OriginButton* origin() const { return m_origin; }
    QString usualText() const;

    virtual void present(const FormView& view);
    virtual QWidget* editor() const = 0;
    /// The sentence of a check about this field; empty: none.
    virtual void setProblem(const QString& sentence);
    /// Forgets a text that was typed but not accepted.
    virtual void dropPending() {}
    /// Puts back what was just edited, because the machine as a whole cannot be so; what was typed
    /// stays to be mended, with the reason.
    virtual void refuse(const QString& sentence) { setProblem(sentence); }
    /// A number that waits: it was read, but the machine as a whole cannot be so yet.
    virtual bool isWaiting() const { return false; }
    /// Takes a typed text in. False if it cannot be taken.
    virtual bool commitPending() { return true; }

  Q_SIGNALS:
    void edited(const bw::MachineChange& change, const QString& undoText);
    void unknownWished();
    void originWished(bw::Origin origin);

  protected:
    /// Places the editor; `isWide`: up to the right edge, without origin and range.
    void placeEditor(QWidget* editor, bool isWide = false);
    /// Label, a space and the value in lower case: "pressure floor 1.6 bar".
    QString undoText(const QString& value) const;
    void setLabel(const QString& label);

  private:
    void buildProblem();
    void presentRange(const FormView& view);
    QString m_key;
    QString m_name;
    QString m_label;
    FieldView m_field;
    QString m_usual;
    QGridLayout* m_grid;
    TextLabel* m_labelWidget;
    OriginButton* m_origin;
    TextLabel* m_range;
    QWidget* m_problemRow = nullptr;
    TextLabel* m_problem = nullptr;
};

/// Width of the editors' column, in pixels at a body of 12.
inline constexpr double kEditorWidth = 150;

}  // namespace bw
