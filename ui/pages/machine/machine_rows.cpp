// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_rows.h"

#include <QLineEdit>

#include "core/model/curve_text.h"
#include "core/model/section_list.h"
#include "core/model/usual_ranges.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/pages/machine/list_line.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

QuantityRow::QuantityRow(const QString& key, const QString& name, Dimension dimension)
    : MachineRow(key, name),
      m_edit(new QuantityEdit(dimension, unitOfField(key, dimension, UnitSystem::Metric))),
      m_dimension(dimension) {
    placeEditor(m_edit);
    m_edit->setObjectName(name + u".edit"_s);
    m_edit->line()->setObjectName(name);
    m_edit->line()->setFixedWidth(px(kEditorWidth));
    if (const UsualRange* range = usualRange("machine." + ss(key)))
        m_edit->setBounds(range->possibleFrom, range->possibleTo);
    connect(m_edit, &QuantityEdit::committed, this, &QuantityRow::take);
    connect(m_edit, &QuantityEdit::cleared, this, [this] {
        Q_EMIT edited([key = ss(this->key())](Machine& m) { clearField(m, key); },
                      undoText(tr("not known")));
    });
    // The field forgets a problem that is not its own when it is left unchanged, or put back.
    const auto again = [this] { setProblem(m_checkProblem); };
    connect(m_edit->line(), &FigureLine::focusLeft, this, again);
    connect(m_edit->line(), &QLineEdit::returnPressed, this, again);
    connect(m_edit->line(), &FigureLine::escaped, this, [this] {
        m_isWaiting = false;
        setProblem(m_checkProblem);
    });
}

QWidget* QuantityRow::editor() const {
    return m_edit ? m_edit->line() : nullptr;
}

void QuantityRow::take(AnyQuantity quantity, const QString& typed) {
    m_isWaiting = false;
    m_given = typed;
    Q_EMIT edited([key = ss(key()), quantity,
                   text = ss(typed)](Machine& m) { setField(m, key, quantity, text); },
                  undoText(typed));
}

void QuantityRow::refuse(const QString& sentence) {
    const QString text = m_given;
    const bool isKnown = field().isKnown;
    m_edit->setQuantity(isKnown ? std::optional(field().value) : std::nullopt,
                        QString::fromStdString(field().typed));
    const QString kept = field().typed.empty() ? shownIn(field().value, m_edit->unit(), m_style)
                                               : QString::fromStdString(field().typed);
    m_edit->line()->setUnitText({});
    m_edit->line()->setText(text);
    m_edit->line()->setModified(true);
    m_edit->setProblem(
        sentence + u' ' +
        (isKnown ? tr("Kept until mended: %1.").arg(kept) : tr("Stays not known until mended.")));
    m_isWaiting = true;
}

bool QuantityRow::isRefusing() const {
    return m_edit->line()->isModified() && m_edit->hasProblem();
}

void QuantityRow::present(const FormView& view) {
    MachineRow::present(view);
    m_style = view.style;
    if (!isRefusing() && !m_edit->line()->isModified()) {
        m_edit->setDecimalMark(view.style.decimalMark);
        m_edit->setUnit(unitOfField(key(), m_dimension, view.machine.units));
    }
    m_edit->setLabel(label());
    m_edit->setPlaceholder(tr("not known"));
    m_edit->setQuantity(field().isKnown ? std::optional(field().value) : std::nullopt,
                        QString::fromStdString(field().typed));
}

void QuantityRow::setProblem(const QString& sentence) {
    m_checkProblem = sentence;
    if (!isRefusing()) m_edit->setProblem(sentence);
}

void QuantityRow::dropPending() {
    if (m_edit->line()->isModified()) Q_EMIT m_edit->line()->escaped();
}

bool QuantityRow::commitPending() {
    return m_edit->commitPending();
}

ChoiceRow::ChoiceRow(const QString& key, const QString& name)
    : MachineRow(key, name), m_box(new ChoiceBox) {
    placeEditor(m_box);
    m_box->setFixedWidth(px(kEditorWidth));
    m_box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    connect(m_box, &QComboBox::activated, this, &ChoiceRow::take);
}

QWidget* ChoiceRow::editor() const {
    return m_box;
}

void ChoiceRow::fill(const FormView& view) {
    if (m_box->count() > 0) return;
    m_box->addItem(tr("not known"), QString());
    if (field().kind == FieldKind::WholeNumber) {
        constexpr int kMost = 12;
        for (int i = 1; i <= kMost; ++i) m_box->addItem(QString::number(i), QString::number(i));
        return;
    }
    for (const auto& choice : field().choices)
        m_box->addItem(choiceWord(view.session, key(), qs(choice)), qs(choice));
}

void ChoiceRow::present(const FormView& view) {
    MachineRow::present(view);
    fill(view);
    m_box->setAccessibleName(label());
    QString data;
    if (field().isKnown)
        data = field().kind == FieldKind::WholeNumber
                   ? QString::number(static_cast<int>(field().value.si))
                   : qs(field().choice);
    m_box->setCurrentData(data);
    m_box->setToolTip(m_box->currentText());
}

void ChoiceRow::take(int index) {
    const QString data = m_box->itemData(index).toString();
    const auto choice = ss(data);
    const auto fieldKey = ss(key());
    const QString words = undoText(m_box->itemText(index));
    if (data.isEmpty()) {
        Q_EMIT edited([fieldKey](Machine& m) { clearField(m, fieldKey); }, words);
    } else if (field().kind == FieldKind::WholeNumber) {
        const AnyQuantity number{Dimension::None, data.toDouble()};
        Q_EMIT edited([fieldKey, number](Machine& m) { setField(m, fieldKey, number); }, words);
    } else {
        Q_EMIT edited([fieldKey, choice](Machine& m) { setField(m, fieldKey, choice); }, words);
    }
}

ListRow::ListRow(const QString& key, const QString& name)
    : MachineRow(key, name), m_line(new ListLine) {
    placeEditor(m_line);
    m_line->setFixedWidth(px(kEditorWidth));
    auto* line = static_cast<ListLine*>(m_line);
    connect(line, &QLineEdit::returnPressed, this, [this] { commit(); });
    connect(line, &ListLine::focusLeft, this, [this] { commit(); });
    connect(line, &ListLine::escaped, this, [this] {
        dropPending();
        m_line->selectAll();
    });
}

QWidget* ListRow::editor() const {
    return m_line;
}

void ListRow::present(const FormView& view) {
    MachineRow::present(view);
    m_style = view.style;
    m_line->setAccessibleName(label());
    m_line->setPlaceholderText(tr("not known"));
    const Machine& m = view.machine;
    m_shown.clear();
    if (field().kind == FieldKind::Sections && m.sections)
        m_shown = qs(sectionsText(m.sections->value));
    if (field().kind == FieldKind::NozzleNumbers && m.boomPipe.feeds)
        m_shown = qs(nozzleNumbersText(m.boomPipe.feeds->value));
    if (field().kind == FieldKind::Curve && m.pump.curve)
        m_shown = qs(curveText(m.pump.curve->value, view.style));
    if (!m_line->isModified()) showValue();
}

void ListRow::showValue() {
    m_line->setText(m_shown);
    m_line->setCursorPosition(0);
    m_line->setModified(false);
    m_line->setToolTip(m_shown);
}

void ListRow::dropPending() {
    m_isRefusing = false;
    showValue();
    setProblem(m_checkProblem);
}

bool ListRow::commitPending() {
    return commit();
}

bool ListRow::commit() {
    const QString text = m_line->text().trimmed();
    if (!m_line->isModified()) return true;
    if (text == m_shown) {
        dropPending();
        return true;
    }
    if (text.isEmpty()) {
        m_line->setModified(false);
        m_isRefusing = false;
        Q_EMIT edited([key = ss(key())](Machine& m) { clearField(m, key); },
                      undoText(tr("not known")));
        return true;
    }
    if (field().kind == FieldKind::NozzleNumbers) return takeNozzles(text);
    return field().kind == FieldKind::Sections ? takeSections(text) : takeCurve(text);
}

bool ListRow::takeNozzles(const QString& text) {
    const auto read = parseNozzleNumbers(ss(text));
    if (!read) return refuseText(read.problem());
    m_line->setModified(false);
    m_isRefusing = false;
    Q_EMIT edited([nozzles = *read](Machine& m) { setFeeds(m, nozzles); },
                  undoText(qs(nozzleNumbersText(*read))));
    return true;
}

bool ListRow::takeSections(const QString& text) {
    const auto read = parseSections(ss(text));
    if (!read) return refuseText(read.problem());
    m_line->setModified(false);
    m_isRefusing = false;
    Q_EMIT edited([sections = *read](Machine& m) { setSections(m, sections); },
                  undoText(qs(sectionsText(*read))));
    return true;
}

bool ListRow::takeCurve(const QString& text) {
    const auto read = parseCurve(ss(text), m_style.units, marksOf(m_style));
    if (!read) return refuseText(read.problem());
    m_line->setModified(false);
    m_isRefusing = false;
    Q_EMIT edited([curve = *read](Machine& m) { setCurve(m, curve); },
                  undoText(qs(curveText(*read, m_style))));
    return true;
}

bool ListRow::refuseText(const Problem& problem) {
    QString sentence = sentenceOf(problem, m_style);
    if (!m_shown.isEmpty()) sentence += u' ' + tr("Kept until mended: %1.").arg(m_shown);
    m_isRefusing = true;
    MachineRow::setProblem(sentence);
    return false;
}

void ListRow::setProblem(const QString& sentence) {
    m_checkProblem = sentence;
    if (!m_isRefusing) MachineRow::setProblem(sentence);
}

}  // namespace bw
