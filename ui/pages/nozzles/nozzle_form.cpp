// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/nozzles/nozzle_form.h"

#include <QCheckBox>
#include <QGridLayout>
#include <utility>

#include "core/model/band_text.h"
#include "core/model/checks.h"
#include "core/model/typed_over.h"
#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/nozzles/text_field.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// The unit in which a value was typed; the reader's own where none was.
template <class T>
Unit typedUnit(const Known<T>& known, const NumberStyle& style) {
    const Unit own = displayUnit(style.units, kDimensionOf<T>);
    if (!known || known->typed.empty()) return own;
    const auto read = parseQuantity(known->typed, kDimensionOf<T>, own, marksOf(style));
    return read ? read->unit : own;
}

/// Tables stay in the units of the nozzle's own sheet: bar bounds shown as psi are nobody's
/// numbers.
BandStyle bandStyle(const Nozzle& nozzle, const NumberStyle& style) {
    return {typedUnit(nozzle.at, style), typedUnit(nozzle.flow, style), marksOf(style)};
}

QString shortOrigin(Origin origin) {
    switch (origin) {
        case Origin::Measured:
            return NozzleForm::tr("measured");
        case Origin::Handbook:
            return NozzleForm::tr("handbook");
        case Origin::Assumed:
            return NozzleForm::tr("assumed");
    }
    return {};
}

/// The first error of the whole nozzle that belongs to a field, as a sentence.
QString problemAt(const Nozzle& nozzle, const QString& field, const NumberStyle& style) {
    for (const auto& problem : checkNozzle(nozzle)) {
        const QString where = qs(problem.where);
        if (problem.severity == Severity::Error &&
            (where == field || where.startsWith(field + u'[')))
            return sentenceOf(problem, style);
    }
    return {};
}

}  // namespace

NozzleForm::NozzleForm(const FarmSession& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_grid(new QGridLayout(this)) {
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(px(8));
    m_grid->setVerticalSpacing(px(4));
    m_grid->setColumnStretch(1, 1);
    addNames();
    addFlow();
    addPressures();
    addTables();
    addRest();
    addBuild();
    addAccept();
}

TextLabel* NozzleForm::addText(const QString& name, const QString& label, const QString& hint,
                               TextField*& field) {
    auto* caption = new TextLabel(label, TextSize::Body, Role::Ink, false, this);
    field = new TextField(this);
    field->setObjectName(u"nozzles.form."_s + name);
    field->line()->setObjectName(u"nozzles.form."_s + name + u".line"_s);
    field->line()->setAccessibleName(label);
    field->line()->setPlaceholderText(hint);
    field->line()->setToolTip(hint);
    caption->setBuddy(field->line());
    m_grid->addWidget(caption, m_row, 0, Qt::AlignTop);
    m_grid->addWidget(field, m_row, 1);
    m_fields.push_back(field->line());
    ++m_row;
    return caption;
}

QuantityEdit* NozzleForm::addQuantity(const QString& name, const QString& label,
                                      Dimension dimension, Unit unit) {
    auto* caption = new TextLabel(label, TextSize::Body, Role::Ink, false, this);
    auto* edit = new QuantityEdit(dimension, unit, this);
    edit->setObjectName(u"nozzles.form."_s + name);
    edit->line()->setObjectName(u"nozzles.form."_s + name + u".line"_s);
    edit->setLabel(label);
    caption->setBuddy(edit->line());
    m_grid->addWidget(caption, m_row, 0, Qt::AlignTop);
    m_grid->addWidget(edit, m_row, 1);
    ++m_row;
    return edit;
}

ChoiceBox* NozzleForm::addOrigin(const QString& name, int row, std::function<void(Origin)> take) {
    auto* box = new ChoiceBox(this);
    for (const auto origin : {Origin::Measured, Origin::Handbook, Origin::Assumed})
        box->addItem(shortOrigin(origin), int(origin));
    box->setObjectName(u"nozzles.form."_s + name + u".origin"_s);
    box->setAccessibleName(tr("Where the value came from"));
    m_grid->addWidget(box, row, 2, Qt::AlignTop);
    connect(box, &QComboBox::activated, this, [box, take = std::move(take)] {
        take(static_cast<Origin>(box->currentData().toInt()));
    });
    m_fields.push_back(box);
    return box;
}

std::string NozzleForm::dayOf(Origin origin) const {
    return origin == Origin::Measured ? ss(m_session.now().date().toString(Qt::ISODate))
                                      : std::string();
}

template <class T>
void NozzleForm::bind(QuantityEdit* edit, const QString& name, const QString& words,
                      Known<T> Nozzle::*field) {
    const auto change = [this, field](const Known<T>& value, const QString& text) {
        Nozzle next = m_nozzle;
        next.*field = value;
        give(next, text);
    };
    connect(edit, &QuantityEdit::committed, this,
            [this, field, change, words](AnyQuantity q, const QString& typed) {
                T value{};
                if constexpr (std::is_same_v<T, double>)
                    value = q.si;
                else
                    value = T::fromSi(q.si);
                change(typedOver(m_nozzle.*field, value, ss(typed)), words + u' ' + typed);
            });
    connect(edit, &QuantityEdit::cleared, this,
            [change, words] { change(std::nullopt, tr("%1 unknown").arg(words)); });
    auto* origin = addOrigin(name, m_row - 1, [this, field, change, words](Origin o) {
        Known<T> value = m_nozzle.*field;
        if (!value) return;
        value->origin = o;
        value->date = dayOf(o);
        change(value, tr("%1 %2").arg(words, originWord(o)));
    });
    m_shows.push_back([this, edit, origin, field, name] {
        edit->setKnown(m_nozzle.*field);
        if (!edit->isRefused())
            edit->setProblem(m_locked ? QString() : problemAt(m_nozzle, name, m_style));
        edit->setReadOnly(m_locked);
        origin->setVisible((m_nozzle.*field).has_value());
        if (m_nozzle.*field) origin->setCurrentData(int((m_nozzle.*field)->origin));
    });
}

template <class T>
void NozzleForm::bindTable(TextField* field, const QString& name, const QString& words,
                           Known<T> Nozzle::*member,
                           std::function<Result<T>(const std::string&)> read,
                           std::function<std::string(const T&)> write) {
    connect(field, &TextField::committed, this,
            [this, field, member, words, read, name](const QString& text) {
                const auto rows = read(ss(text));
                if (!rows) return field->setProblem(sentenceOf(rows.problem(), m_style));
                Nozzle next = m_nozzle;
                if (rows->empty()) {
                    (next.*member).reset();
                } else {
                    next.*member = typedOver(m_nozzle.*member, *rows, ss(text));
                }
                if (const QString problem = problemAt(next, name, m_style); !problem.isEmpty())
                    return field->setProblem(problem);
                give(next, rows->empty() ? tr("%1 unknown").arg(words) : words);
            });
    auto* origin = addOrigin(name, m_row - 1, [this, member, words](Origin o) {
        Nozzle next = m_nozzle;
        if (!(next.*member)) return;
        (next.*member)->origin = o;
        (next.*member)->date = dayOf(o);
        give(next, tr("%1 %2").arg(words, originWord(o)));
    });
    m_shows.push_back([this, field, member, origin, write] {
        field->setStored(m_nozzle.*member ? qs(write((m_nozzle.*member)->value)) : QString());
        origin->setVisible((m_nozzle.*member).has_value());
        if (m_nozzle.*member) origin->setCurrentData(int((m_nozzle.*member)->origin));
    });
}

template <class E>
void NozzleForm::addChoice(const QString& name, const QString& label, const QString& words,
                           Known<E> Nozzle::*field,
                           const std::vector<std::pair<E, QString>>& choices) {
    auto* caption = new TextLabel(label, TextSize::Body, Role::Ink, false, this);
    auto* box = new ChoiceBox(this);
    box->setObjectName(u"nozzles.form."_s + name);
    box->setAccessibleName(label);
    box->addItem(tr("not known"), -1);
    for (const auto& [value, text] : choices) box->addItem(text, int(value));
    caption->setBuddy(box);
    m_grid->addWidget(caption, m_row, 0);
    m_grid->addWidget(box, m_row++, 1);
    m_fields.push_back(box);
    connect(box, &QComboBox::activated, this, [this, box, field, words] {
        const int taken = box->currentData().toInt();
        Known<E> value = m_nozzle.*field;
        if (taken < 0)
            value.reset();
        else if (!value)
            value = Sourced<E>(static_cast<E>(taken));
        else
            value->value = static_cast<E>(taken);
        Nozzle next = m_nozzle;
        next.*field = value;
        give(next,
             taken < 0 ? tr("%1 unknown").arg(words) : tr("%1 %2").arg(words, box->currentText()));
    });
    auto* origin = addOrigin(name, m_row - 1, [this, field, words](Origin o) {
        Nozzle next = m_nozzle;
        if (!(next.*field)) return;
        (next.*field)->origin = o;
        (next.*field)->date = dayOf(o);
        give(next, tr("%1 %2").arg(words, originWord(o)));
    });
    m_shows.push_back([this, box, field, origin] {
        const auto& value = m_nozzle.*field;
        box->setCurrentData(value ? int(value->value) : -1);
        origin->setVisible(value.has_value());
        if (value) origin->setCurrentData(int(value->origin));
    });
}

void NozzleForm::addNames() {
    const auto plain = [this](TextField* field, std::string Nozzle::*member, const QString& words) {
        connect(field, &TextField::committed, this,
                [this, field, member, words](const QString& text) {
                    if (member == &Nozzle::name && text.trimmed().isEmpty())
                        return field->setProblem(tr("A nozzle needs a name."));
                    Nozzle next = m_nozzle;
                    next.*member = ss(text.trimmed());
                    give(next, tr("%1 %2").arg(words, text.trimmed()));
                });
        m_shows.push_back([this, field, member] { field->setStored(qs(m_nozzle.*member)); });
    };
    TextField* field = nullptr;
    addText(u"name"_s, tr("Name"), tr("as on your sheet"), field);
    m_name = field->line();
    plain(field, &Nozzle::name, tr("nozzle name"));
    addText(u"family"_s, tr("Family"), tr("nozzles of one kind in several sizes"), field);
    plain(field, &Nozzle::family, tr("family"));
    addText(u"size"_s, tr("Size code"), tr("03, 04 … of ISO 10625; empty if it has none"), field);
    plain(field, &Nozzle::sizeCode, tr("size code"));
}

void NozzleForm::addFlow() {
    bind(addQuantity(u"flow"_s, tr("Flow of one"), Dimension::Flow, Unit::LitrePerMinute),
         u"flow"_s, tr("flow"), &Nozzle::flow);
    bind(addQuantity(u"at"_s, tr("at a pressure of"), Dimension::Pressure, Unit::Bar), u"at"_s,
         tr("rated at"), &Nozzle::at);
}

void NozzleForm::addPressures() {
    bind(addQuantity(u"pressure_min"_s, tr("Lowest pressure"), Dimension::Pressure, Unit::Bar),
         u"pressure_min"_s, tr("lowest pressure"), &Nozzle::pressureMin);
    bind(addQuantity(u"pressure_max"_s, tr("Highest pressure"), Dimension::Pressure, Unit::Bar),
         u"pressure_max"_s, tr("highest pressure"), &Nozzle::pressureMax);
}

void NozzleForm::addTables() {
    TextField* field = nullptr;
    const auto pressure = [this] { return bandStyle(m_nozzle, m_style).pressure; };
    m_dropletLabel =
        addText(u"droplets"_s, tr("Droplets"), tr("VC up to 1.6, C up to 3, M up to 6"), field);
    bindTable<std::vector<DropletBand>>(
        field, u"droplets"_s, tr("droplet table"), &Nozzle::droplets,
        [this](const std::string& text) {
            return parseDropletBands(text, bare(m_nozzle.pressureMin),
                                     bandStyle(m_nozzle, m_style));
        },
        [this, pressure](const auto& bands) {
            return dropletBandText(bands, pressure(), m_style.decimalMark);
        });
    m_driftLabel =
        addText(u"drift"_s, tr("Drift reduction"), tr("90 % up to 2, 75 % up to 3"), field);
    bindTable<std::vector<DriftBand>>(
        field, u"drift"_s, tr("drift table"), &Nozzle::drift,
        [this](const std::string& text) {
            return parseDriftBands(text, bare(m_nozzle.pressureMin), bandStyle(m_nozzle, m_style));
        },
        [this, pressure](const auto& bands) {
            return driftBandText(bands, pressure(), m_style.decimalMark);
        });
    m_tableLabel = addText(
        u"table"_s, tr("Flow table"),
        tr("pressure flow; pressure flow … or paste two columns; replaces the flow above"), field);
    bindTable<std::vector<FlowPoint>>(
        field, u"table"_s, tr("flow table"), &Nozzle::table,
        [this](const std::string& text) {
            return parseFlowTable(text, bandStyle(m_nozzle, m_style));
        },
        [this, pressure](const auto& rows) {
            return flowTableText(rows, pressure(), bandStyle(m_nozzle, m_style).flow,
                                 m_style.decimalMark);
        });
}

void NozzleForm::addRest() {
    bind(addQuantity(u"spray_angle"_s, tr("Spray angle, °"), Dimension::None, Unit::None),
         u"spray_angle"_s, tr("spray angle"), &Nozzle::sprayAngle);
    bind(addQuantity(u"price"_s, tr("Price of one"), Dimension::None, Unit::None), u"price"_s,
         tr("price"), &Nozzle::price);
}

/// How it is made: the mesh before it goes by the passage, its wear by the material.
void NozzleForm::addBuild() {
    auto* passage =
        addQuantity(u"passage"_s, tr("Smallest passage"), Dimension::Length, Unit::Millimetre);
    bind(passage, u"passage"_s, tr("passage"), &Nozzle::passage);
    addChoice<NozzleKind>(u"kind"_s, tr("Kind"), tr("kind"), &Nozzle::kind,
                          {{NozzleKind::Fan, tr("fan")},
                           {NozzleKind::Stream, tr("stream")},
                           {NozzleKind::Plate, tr("bar with plates")}});
    addChoice<NozzleMaterial>(u"material"_s, tr("Material"), tr("material"), &Nozzle::material,
                              {{NozzleMaterial::Polymer, tr("polymer")},
                               {NozzleMaterial::StainlessSteel, tr("stainless steel")},
                               {NozzleMaterial::HardenedSteel, tr("hardened steel")},
                               {NozzleMaterial::Ceramic, tr("ceramic")},
                               {NozzleMaterial::Brass, tr("brass")},
                               {NozzleMaterial::Other, tr("other")}});
}

void NozzleForm::addAccept() {
    auto* accept = new QCheckBox(tr("Take it for jobs although a table is missing"), this);
    accept->setObjectName(u"nozzles.form.accept_unchecked"_s);
    accept->setToolTip(
        tr("Without this, a nozzle whose range, droplets or drift class are not checked holds no "
           "job."));
    m_grid->addWidget(accept, m_row++, 1, 1, 2);
    connect(accept, &QCheckBox::clicked, this, [this](bool on) {
        Nozzle next = m_nozzle;
        next.acceptUnchecked = on;
        give(next, on ? tr("take unchecked nozzle") : tr("do not take unchecked nozzle"));
    });
    m_fields.push_back(accept);
    m_shows.push_back([this, accept] { accept->setChecked(m_nozzle.acceptUnchecked); });
}

void NozzleForm::give(const Nozzle& nozzle, const QString& undoText) {
    m_nozzle = nozzle;
    Q_EMIT edited(nozzle, undoText);
}

void NozzleForm::setNozzle(const Nozzle& nozzle, const NumberStyle& style, bool locked) {
    m_nozzle = nozzle;
    m_style = style;
    m_locked = locked;
    for (auto* edit : findChildren<QuantityEdit*>()) {
        const QString name = edit->objectName();
        if (name.endsWith(u"flow"_s))
            edit->setUnit(displayUnit(style.units, Dimension::Flow));
        else if (name.contains(u"pressure"_s) || name.endsWith(u".at"_s))
            edit->setUnit(displayUnit(style.units, Dimension::Pressure));
        else if (name.endsWith(u"passage"_s))
            edit->setUnit(style.units == UnitSystem::Us ? Unit::Inch : Unit::Millimetre);
        edit->setDecimalMark(style.decimalMark);
    }
    const QString unit = symbol(bandStyle(nozzle, style).pressure);
    m_dropletLabel->setText(tr("Droplets, %1").arg(unit));
    m_driftLabel->setText(tr("Drift reduction, %1").arg(unit));
    m_tableLabel->setText(tr("Flow table, %1 %2").arg(unit, symbol(bandStyle(nozzle, style).flow)));
    for (auto* field : m_fields) field->setEnabled(!locked);
    for (const auto& show : m_shows) show();
}

void NozzleForm::forgetTyped() {
    for (auto* edit : findChildren<QuantityEdit*>()) edit->forgetTyped();
    for (auto* field : findChildren<TextField*>()) field->forgetTyped();
}

void NozzleForm::startNaming() {
    m_name->setFocus();
    m_name->selectAll();
}

}  // namespace bw
