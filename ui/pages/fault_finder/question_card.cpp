// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/question_card.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/diagnosis/evidence.h"
#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

QuestionCard::QuestionCard(QWidget* parent) : QWidget(parent) {
    build();
}

void QuestionCard::build() {
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_scroll = new QScrollArea;
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    outer->addWidget(m_scroll);
    auto* paper = new RolePanel(Role::Raised);
    m_scroll->setWidget(paper);
    auto* column = new QVBoxLayout(paper);
    const int side = px(theme().isProjector() ? 2 : 18);
    column->setContentsMargins(side, px(8), side, px(10));
    column->setSpacing(px(7));
    buildTop(column);
    m_caution = new CautionBox;
    m_caution->setObjectName(u"finder.card.caution"_s);
    column->addWidget(m_caution);
    m_rowLayout = new QGridLayout;
    m_rowLayout->setSpacing(px(theme().isProjector() ? 4 : 5));
    column->addLayout(m_rowLayout);
    buildEntry(column);
    m_back = new Button(tr("Leave it as it was"), u"back"_s);
    m_back->setObjectName(u"finder.card.return"_s);
    column->addWidget(m_back, 0, Qt::AlignLeft);
    column->addStretch(1);
    connect(m_back, &QAbstractButton::clicked, this, &QuestionCard::returned);
}

void QuestionCard::buildTop(QVBoxLayout* column) {
    auto* row = new QHBoxLayout;
    row->setSpacing(px(4));
    m_lead = new TextLabel({}, TextSize::Small);
    m_lead->setObjectName(u"finder.card.lead"_s);
    m_lead->setTextFormat(Qt::RichText);
    m_howToButton = new Button(tr("how to"), {}, Button::Kind::Flat);
    m_howToButton->setObjectName(u"finder.card.howToKey"_s);
    m_howToButton->setKey(Qt::Key_H, false);
    m_whyButton = new Button(tr("why this one"), {}, Button::Kind::Flat);
    m_whyButton->setObjectName(u"finder.card.whyKey"_s);
    m_whyButton->setKey(Qt::Key_W, false);
    row->addWidget(m_lead->wrapped(), 1);
    row->addWidget(m_howToButton);
    row->addWidget(m_whyButton);
    column->addLayout(row);
    const auto add = [&](TextLabel*& label, const QString& name, TextSize size, Role role,
                         bool bold) {
        label = new TextLabel({}, size, role, bold);
        label->setObjectName(u"finder.card."_s + name);
        column->addWidget(label->wrapped());
    };
    add(m_question, u"question"_s, TextSize::Verdict, Role::Ink, true);
    add(m_reason, u"reason"_s, TextSize::Body, Role::Ink, false);
    add(m_howTo, u"howTo"_s, TextSize::Body, Role::Ink, false);
    add(m_why, u"why"_s, TextSize::Body, Role::Quiet, false);
    connect(m_howToButton, &QAbstractButton::clicked, this, &QuestionCard::toggleHowTo);
    connect(m_whyButton, &QAbstractButton::clicked, this, &QuestionCard::toggleWhy);
}

void QuestionCard::buildEntry(QVBoxLayout* column) {
    m_entryRow = new QWidget;
    auto* row = new QHBoxLayout(m_entryRow);
    row->setContentsMargins(0, px(2), 0, 0);
    row->setSpacing(px(12));
    auto* words = new QVBoxLayout;
    words->setSpacing(px(2));
    m_healthy = new TextLabel;
    m_healthy->setObjectName(u"finder.card.healthy"_s);
    m_healthy->setTextFormat(Qt::RichText);
    m_expected = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_expected->setObjectName(u"finder.card.expected"_s);
    words->addWidget(m_healthy->wrapped());
    words->addWidget(m_expected->wrapped());
    row->addLayout(words, 1);
    m_entryHint = new TextLabel({}, TextSize::Small, Role::Quiet);
    row->addWidget(m_entryHint, 0, Qt::AlignTop);
    m_entryPlace = new QVBoxLayout;
    row->addLayout(m_entryPlace);
    column->addWidget(m_entryRow);
}

void QuestionCard::setContent(const CardContent& content, const NumberStyle& style) {
    dropEntry();
    const bool isSame = content.id == m_content.id;
    m_content = content;
    showTop(isSame);
    m_caution->setTexts(cautionTexts(content.cautions));
    showAnswers();
    showEntry(style);
    m_back->setVisible(content.canReturn);
    if (!isSame) m_scroll->verticalScrollBar()->setValue(0);
}

/// What was unfolded stays so while the question is the same.
void QuestionCard::showTop(bool isSame) {
    const QString place = m_content.place.toHtmlEscaped();
    QStringList parts{u"<b>"_s + m_content.lead.toHtmlEscaped() + u"</b>"_s};
    if (!place.isEmpty())
        parts.append(m_content.opensLine
                         ? u"<font color=\"%1\">%2</font>"_s.arg(color(Role::Limit).name(), place)
                         : place);
    if (!m_content.effort.isEmpty()) parts.append(m_content.effort.toHtmlEscaped());
    m_lead->setText(parts.join(u" · "_s));
    m_question->setText(m_content.question);
    m_reason->setText(m_content.reason);
    // On a wall the class thinks first, and the keys stand at its foot.
    const bool isWall = theme().isProjector();
    m_reason->setVisible(!m_content.reason.isEmpty() && !isWall);
    m_howTo->setText(m_content.howTo);
    if (!isSame) m_howTo->hide();
    m_howToButton->setVisible(!m_content.howTo.isEmpty() && !isWall);
    m_why->setText(m_content.why);
    if (!isSame) m_why->hide();
    m_whyButton->setVisible(!m_content.why.isEmpty() && !isWall);
}

bool QuestionCard::isPureFigure() const {
    return m_content.entry && m_content.answers.size() <= 1;
}

void QuestionCard::showAnswers() {
    for (AnswerRow* row : m_rows) {
        row->hide();
        row->deleteLater();
    }
    m_rows.clear();
    int number = 0;
    // On a wall many answers stand in two columns, so that all are in the picture.
    constexpr int kMostInColumn = 4;
    const int count = std::max(1, static_cast<int>(m_content.answers.size()));
    const bool isSplit = theme().isProjector() && count > kMostInColumn;
    const int perColumn = isSplit ? (count + 1) / 2 : count;
    for (const auto& answer : m_content.answers) {
        ++number;
        const QString key = isPureFigure() ? u"↵"_s
                            : number <= 9  ? QString::number(number)
                                           : u"·"_s;
        QString meaning = answer.meaning;
        if (!m_content.given.isEmpty() && answer.id == m_content.given)
            meaning = tr("given now. ") + meaning;
        auto* row = new AnswerRow(key, answer.text, meaning);
        row->setObjectName(u"finder.card.answer."_s + answer.id);
        row->installEventFilter(this);
        connect(row, &QAbstractButton::clicked, this,
                [this, id = answer.id] { Q_EMIT answered(id); });
        m_rowLayout->addWidget(row, (number - 1) % perColumn, (number - 1) / perColumn);
        m_rows.push_back(row);
    }
}

/// The old figure field goes first: it must not commit again while the focus moves away from it.
void QuestionCard::dropEntry() {
    if (!m_entry) return;
    QuantityEdit* old = m_entry;
    m_entry = nullptr;
    old->disconnect(this);
    old->line()->disconnect(this);
    old->hide();
    old->deleteLater();
}

void QuestionCard::showEntry(const NumberStyle& style) {
    m_entryRow->setVisible(m_content.entry.has_value());
    if (!m_content.entry) return;
    const CardEntry& entry = *m_content.entry;
    m_entry = new QuantityEdit(entry.dimension, entry.unit);
    m_entry->setObjectName(u"finder.card.figure"_s);
    m_entry->line()->setObjectName(u"finder.card.figure.line"_s);
    m_entry->setLabel(entry.label);
    m_entry->setDecimalMark(style.decimalMark);
    m_entry->setFixedWidth(px(170));
    m_entry->setQuantity(entry.value, entry.typed);
    m_entryPlace->addWidget(m_entry, 0, Qt::AlignTop);
    m_entry->line()->installEventFilter(this);
    connect(m_entry, &QuantityEdit::committed, this, &QuestionCard::figureGiven);
    connect(m_entry, &QuantityEdit::cleared, this, [this] { Q_EMIT answered(qs(kCantTell)); });
    connect(m_entry->line(), &QLineEdit::returnPressed, this, [this, line = m_entry->line()] {
        if (isPureFigure() && line->text().isEmpty() && !m_content.entry->value)
            Q_EMIT answered(qs(kCantTell));
    });
    connect(m_entry, &QuantityEdit::refused, this,
            [this, line = m_entry->line()] { Q_EMIT otherTyped(line->text()); });
    m_entryHint->setText(isPureFigure() ? tr("type the figure") : tr("or type the figure"));
    m_healthy->setText(m_content.healthy.isEmpty()
                           ? tr("What a healthy machine shows here is not known.")
                           : tr("Healthy machine here: <b>%1</b>").arg(m_content.healthy));
    m_expected->setText(m_content.expected.join(u"\n"_s));
    m_expected->setVisible(!m_content.expected.isEmpty());
}

bool QuestionCard::press(int digit) {
    if (isPureFigure() || digit < 1 || digit > static_cast<int>(m_rows.size())) return false;
    m_rows[static_cast<std::size_t>(digit - 1)]->click();
    return true;
}

void QuestionCard::toggleHowTo() {
    m_howTo->setVisible(m_howTo->isHidden() && !m_content.howTo.isEmpty());
}
void QuestionCard::toggleWhy() {
    m_why->setVisible(m_why->isHidden() && !m_content.why.isEmpty());
}

void QuestionCard::takeFocus() {
    if (isPureFigure()) return m_entry->setFocus(Qt::OtherFocusReason);
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        if (m_content.answers[i].id == m_content.given) return m_rows[i]->setFocus();
    }
    if (!m_rows.empty()) m_rows.front()->setFocus(Qt::OtherFocusReason);
}

void QuestionCard::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    takeFocus();
}

/// Enter on a row is its answer. In an empty figure field the letters of the page and the key that
/// takes back are still those of the page: no figure begins with them.
bool QuestionCard::eventFilter(QObject* watched, QEvent* event) {
    const bool isOverride = event->type() == QEvent::ShortcutOverride;
    if (!isOverride && event->type() != QEvent::KeyPress) return false;
    const auto* press = static_cast<QKeyEvent*>(event);
    if (const auto* line = qobject_cast<QLineEdit*>(watched)) {
        const QList<int> ofThePage{Qt::Key_H, Qt::Key_W, Qt::Key_R, Qt::Key_Backspace};
        return isOverride && line->text().isEmpty() && press->modifiers() == Qt::NoModifier &&
               ofThePage.contains(press->key());
    }
    auto* row = qobject_cast<AnswerRow*>(watched);
    const bool isEnter = press->key() == Qt::Key_Return || press->key() == Qt::Key_Enter;
    if (!row || isOverride || !isEnter) return false;
    row->click();
    return true;
}

}  // namespace bw
