// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/reading_form.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/yard_words.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kFieldWidth = 186;
constexpr int kRunsBeyond = 6;  ///< that can be added to those open from the start

const NotedReading* noted(const YardRecord& record, const std::string& id, int run) {
    const auto found =
        std::find_if(record.readings.begin(), record.readings.end(),
                     [&](const NotedReading& r) { return r.id == id && r.run == run; });
    return found == record.readings.end() ? nullptr : &*found;
}

/// Takes none of the choices: what was not asked yet is not answered.
void takeNone(SegmentedButtons* box) {
    QAbstractButton* taken = box->currentIndex() < 0 ? nullptr : box->button(box->currentIndex());
    if (!taken) return;
    QButtonGroup* group = taken->group();
    const QSignalBlocker quiet(box);
    group->setExclusive(false);
    taken->setChecked(false);
    group->setExclusive(true);
}

QWidget* labelled(const YardReadingText& reading, QWidget* buddy) {
    auto* words = new QWidget;
    auto* column = new QVBoxLayout(words);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(1));
    QString text = qs(reading.label);
    if (reading.isOptional && reading.kind != ReadingKind::Choice)
        text += ReadingForm::tr(" (if known)");
    auto* label = new TextLabel(text, TextSize::Body, Role::Ink, true);
    label->setBuddy(buddy);
    column->addWidget(label->wrapped());
    if (!reading.hint.empty())
        column->addWidget(
            (new TextLabel(qs(reading.hint), TextSize::Small, Role::Quiet))->wrapped());
    return words;
}

}  // namespace

ReadingForm::ReadingForm(QWidget* parent) : QWidget(parent), m_column(new QVBoxLayout(this)) {
    m_column->setContentsMargins(0, 0, 0, 0);
}

void ReadingForm::setCheck(const YardCheckText& check, const NumberStyle& style, int runs) {
    delete m_body;
    m_fields.clear();
    m_choices.clear();
    m_runsOpen = runs;
    m_mostRuns = runs + kRunsBeyond;
    m_body = new QWidget;
    auto* column = new QVBoxLayout(m_body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(8));
    m_column->addWidget(m_body);
    bool hasRuns = false;
    for (const auto& reading : check.readings) {
        if (reading.repeats) {
            if (!hasRuns) addRuns(check, style);
            hasRuns = true;
        } else if (reading.kind == ReadingKind::Choice) {
            addChoice(reading);
        } else {
            addReading(reading, style);
        }
    }
}

QuantityEdit* ReadingForm::addField(const YardReadingText& reading, int run,
                                    const NumberStyle& style, QWidget* row) {
    const Dimension dimension =
        reading.kind == ReadingKind::Quantity ? reading.dimension : Dimension::None;
    auto* edit = new QuantityEdit(dimension, unitOfReading(reading, style.units));
    const QString name = u"yard.check."_s + qs(reading.id) +
                         (reading.repeats ? u"."_s + QString::number(run) : QString());
    edit->setObjectName(name);
    edit->line()->setObjectName(name + u".line"_s);
    edit->setLabel(reading.repeats ? tr("%1, %2").arg(qs(reading.label)).arg(run)
                                   : qs(reading.label));
    edit->setFixedWidth(px(kFieldWidth));
    connect(edit, &QuantityEdit::committed, this,
            [this, id = reading.id, run](AnyQuantity value, const QString& typed) {
                Q_EMIT given({id, run, value, ss(typed)});
            });
    connect(edit, &QuantityEdit::cleared, this,
            [this, id = qs(reading.id), run] { Q_EMIT cleared(id, run); });
    connect(edit->line(), &QLineEdit::returnPressed, this, [this, edit] {
        if (!edit->line()->isModified()) goOn(edit);
    });
    m_fields.push_back({reading.id, run, edit, row});
    return edit;
}

void ReadingForm::addReading(const YardReadingText& reading, const NumberStyle& style) {
    auto* row = new QWidget;
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(px(14));
    QuantityEdit* edit = addField(reading, 1, style, nullptr);
    line->addWidget(labelled(reading, edit), 1, Qt::AlignTop);
    line->addWidget(edit, 0, Qt::AlignTop);
    m_body->layout()->addWidget(row);
}

void ReadingForm::addChoice(const YardReadingText& reading) {
    auto* row = new QWidget;
    auto* column = new QVBoxLayout(row);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(4));
    Choice choice{reading.id, {}, new SegmentedButtons};
    choice.box->setObjectName(u"yard.check."_s + qs(reading.id));
    choice.box->setAccessibleName(qs(reading.label));
    for (const auto& one : reading.choices) {
        const int index = choice.box->addChoice(qs(one.text));
        choice.box->button(index)->setObjectName(
            u"yard.check.%1.%2"_s.arg(qs(reading.id), qs(one.id)));
        choice.words.push_back(one.id);
    }
    takeNone(choice.box);
    column->addWidget(labelled(reading, choice.box));
    column->addWidget(choice.box, 0, Qt::AlignLeft);
    connect(choice.box, &SegmentedButtons::currentIndexChanged, this,
            [this, id = qs(reading.id), words = choice.words](int index) {
                Q_EMIT chosen(id, qs(words[static_cast<std::size_t>(index)]));
            });
    m_body->layout()->addWidget(row);
    m_choices.push_back(std::move(choice));
}

void ReadingForm::addRuns(const YardCheckText& check, const NumberStyle& style) {
    std::vector<const YardReadingText*> repeated;
    for (const auto& reading : check.readings) {
        if (reading.repeats) repeated.push_back(&reading);
    }
    for (const auto* reading : repeated) m_body->layout()->addWidget(labelled(*reading, nullptr));
    if (repeated.size() > 1) {
        // Two readings a run: their names stand over the columns.
        auto* head = new QHBoxLayout;
        head->setSpacing(px(14));
        head->addStretch(1);
        for (const auto* reading : repeated) {
            auto* caption = new TextLabel(qs(reading->label), TextSize::Small, Role::Quiet);
            caption->setFixedWidth(px(kFieldWidth));
            head->addWidget(caption);
        }
        qobject_cast<QVBoxLayout*>(m_body->layout())->addLayout(head);
    }
    for (int run = 1; run <= m_mostRuns; ++run) {
        auto* row = new QWidget;
        auto* line = new QHBoxLayout(row);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(px(14));
        line->addWidget(new TextLabel(tr("No. %1").arg(run)), 1, Qt::AlignTop);
        for (const auto* reading : repeated)
            line->addWidget(addField(*reading, run, style, row), 0, Qt::AlignTop);
        m_body->layout()->addWidget(row);
    }
    showRuns(m_runsOpen);
}

void ReadingForm::showRuns(int runs) {
    for (const auto& field : m_fields) {
        if (field.row) field.row->setVisible(field.run <= runs);
    }
}

void ReadingForm::present(const YardRecord& record, const NumberStyle& style) {
    int filled = 0;
    for (const auto& field : m_fields) {
        field.edit->setDecimalMark(style.decimalMark);
        const NotedReading* reading = noted(record, field.id, field.run);
        if (reading)
            field.edit->setQuantity(reading->value, qs(reading->typed));
        else
            field.edit->setQuantity(std::nullopt);
        if (reading && field.row) filled = std::max(filled, field.run);
    }
    showRuns(std::min(m_mostRuns, std::max(m_runsOpen, filled + 1)));
    for (const auto& choice : m_choices) {
        const auto made = std::find_if(record.choices.begin(), record.choices.end(),
                                       [&](const NotedChoice& c) { return c.id == choice.id; });
        if (made == record.choices.end()) {
            takeNone(choice.box);
            continue;
        }
        const auto at = std::find(choice.words.begin(), choice.words.end(), made->word);
        const QSignalBlocker quiet(choice.box);
        if (at != choice.words.end())
            choice.box->setCurrentIndex(static_cast<int>(at - choice.words.begin()));
    }
}

void ReadingForm::setProblem(const std::string& reading, const QString& sentence) {
    bool isTold = false;
    for (const auto& field : m_fields) {
        // A text that was refused keeps its own message.
        if (field.edit->line()->isModified()) continue;
        const bool isHere = field.id == reading && field.edit->quantity() && !isTold;
        field.edit->setProblem(isHere ? sentence : QString());
        isTold = isTold || isHere;
    }
}

bool ReadingForm::commitPending() {
    bool isFine = true;
    for (const auto& field : m_fields) isFine = field.edit->commitPending() && isFine;
    return isFine;
}

QString ReadingForm::refusedText() const {
    for (const auto& field : m_fields) {
        if (field.edit->hasProblem() && field.edit->line()->isModified())
            return field.edit->line()->text();
    }
    return {};
}

void ReadingForm::goOn(const QuantityEdit* from) {
    bool isPast = false;
    for (const auto& field : m_fields) {
        if (isPast && field.edit->isVisibleTo(this))
            return field.edit->setFocus(Qt::TabFocusReason);
        isPast = isPast || field.edit == from;
    }
    if (!m_choices.empty() && m_choices.front().box->currentIndex() < 0)
        return m_choices.front().box->button(0)->setFocus(Qt::TabFocusReason);
    Q_EMIT finished();
}

QWidget* ReadingForm::problemField() const {
    const auto found = std::find_if(m_fields.begin(), m_fields.end(),
                                    [](const Field& field) { return field.edit->hasProblem(); });
    return found == m_fields.end() ? nullptr : found->edit;
}

void ReadingForm::takeFocus() {
    for (const auto& field : m_fields) {
        if (!field.edit->quantity() && field.edit->isVisibleTo(this))
            return field.edit->setFocus(Qt::OtherFocusReason);
    }
    if (!m_fields.empty()) m_fields.front().edit->setFocus(Qt::OtherFocusReason);
}

}  // namespace bw
