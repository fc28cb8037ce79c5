// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/model/nozzle.h"
#include "core/units/format.h"

class QCheckBox;
class QGridLayout;
class QLineEdit;

namespace bw {

class ChoiceBox;
class FarmSession;
class QuantityEdit;
class TextField;
class TextLabel;

/// The values of one nozzle, each with where it came from. Every accepted entry is given out at
/// once as a whole new nozzle; what cannot be taken says why under its field and changes nothing.
class NozzleForm : public QWidget {
    Q_OBJECT

  public:
    explicit NozzleForm(const FarmSession& session, QWidget* parent = nullptr);
    /// Shows a nozzle; `locked` (a size of the standard) cannot be edited. Refused entries stay
    /// beside their field.
    void setNozzle(const Nozzle& nozzle, const NumberStyle& style, bool locked);
    /// Another nozzle is in hand: what was refused for the one before goes.
    void forgetTyped();
    /// Puts the cursor into the name, its text selected: after adding a nozzle.
    void startNaming();

  Q_SIGNALS:
    /// The nozzle as it should be, and what was changed in the user's words.
    void edited(const bw::Nozzle& nozzle, const QString& undoText);

  private:
    TextLabel* addText(const QString& name, const QString& label, const QString& hint,
                       TextField*& field);
    QuantityEdit* addQuantity(const QString& name, const QString& label, Dimension dimension,
                              Unit unit);
    ChoiceBox* addOrigin(const QString& name, int row, std::function<void(Origin)> take);
    void addNames();
    void addFlow();
    void addPressures();
    void addTables();
    void addRest();
    void addBuild();
    void addAccept();
    template <class T>
    void bind(QuantityEdit* edit, const QString& name, const QString& words,
              Known<T> Nozzle::*field);
    /// A box of the choices of an enum with their words, "not known" first.
    template <class E>
    void addChoice(const QString& name, const QString& label, const QString& words,
                   Known<E> Nozzle::*field, const std::vector<std::pair<E, QString>>& choices);
    template <class T>
    void bindTable(TextField* field, const QString& name, const QString& words,
                   Known<T> Nozzle::*member, std::function<Result<T>(const std::string&)> read,
                   std::function<std::string(const T&)> write);
    void give(const Nozzle& nozzle, const QString& undoText);

    /// The day that a value bears once its origin is set: today's if it was measured, else none.
    std::string dayOf(Origin origin) const;

    const FarmSession& m_session;
    QGridLayout* m_grid;
    Nozzle m_nozzle;
    NumberStyle m_style;
    bool m_locked = false;
    int m_row = 0;
    QLineEdit* m_name = nullptr;
    TextLabel* m_dropletLabel = nullptr;
    TextLabel* m_driftLabel = nullptr;
    TextLabel* m_tableLabel = nullptr;
    std::vector<std::function<void()>> m_shows;  ///< bring each field up to the nozzle in hand
    std::vector<QWidget*> m_fields;
};

}  // namespace bw
