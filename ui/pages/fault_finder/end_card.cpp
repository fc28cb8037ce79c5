// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/end_card.h"

#include <QKeyEvent>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr qsizetype kMostOthers = 4;

/// Cautions of all causes of a finding, once each, in their order; the last caution of a case
/// stands apart, before its proof.
QStringList cautionsOf(const Finding& finding) {
    QStringList ids;
    for (const auto& id : finding.causes) {
        const Cause* cause = Knowledge::shipped().cause(id);
        if (!cause) continue;
        for (const auto& caution : cause->cautions) {
            if (!ids.contains(qs(caution)) && caution != "C28") ids.append(qs(caution));
        }
    }
    return ids;
}

/// One paragraph a cause; with its name in front where there are several.
QString perCause(const Finding& finding, std::string Cause::*field) {
    QStringList paragraphs;
    for (const auto& id : finding.causes) {
        const Cause* cause = Knowledge::shipped().cause(id);
        if (!cause || (cause->*field).empty()) continue;
        QString text = qs(cause->*field).toHtmlEscaped();
        if (finding.causes.size() > 1)
            text = u"<b>%1.</b> %2"_s.arg(qs(cause->name).toHtmlEscaped(), text);
        paragraphs.append(text);
    }
    return paragraphs.join(u"<br/>"_s);
}

void setOrHide(TextLabel* label, const QString& text) {
    label->setText(text);
    label->parentWidget()->setVisible(!text.isEmpty());
}

}  // namespace

EndCard::EndCard(QWidget* parent)
    : QWidget(parent),
      m_lead(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_title(new TextLabel({}, TextSize::Verdict, Role::Ink, true)),
      m_members(new TextLabel),
      m_caution(new CautionBox),
      m_endCaution(new CautionBox),
      m_notes(new QPlainTextEdit) {
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    outer->addWidget(scroll);
    auto* paper = new RolePanel(Role::Raised);
    scroll->setWidget(paper);
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(18), px(8), px(18), px(12));
    column->setSpacing(px(8));
    m_lead->setObjectName(u"finder.end.lead"_s);
    m_title->setObjectName(u"finder.end.title"_s);
    m_members->setObjectName(u"finder.end.members"_s);
    column->addWidget(m_lead->wrapped());
    column->addWidget(m_title->wrapped());
    column->addWidget(m_members->wrapped());
    m_caution->setObjectName(u"finder.end.caution"_s);
    column->addWidget(m_caution);
    m_remedy = paragraph(column, tr("What to do"), u"remedy"_s);
    m_ways = paragraph(column, tr("Ways out, with the numbers of this call"), u"ways"_s);
    m_endCaution->setObjectName(u"finder.end.proofCaution"_s);
    column->addWidget(m_endCaution);
    m_endCaution->setTexts(cautionTexts({u"C28"_s}));
    m_proof = paragraph(column, tr("How you know it is fixed"), u"proof"_s);
    buildRows(column);
    m_others = paragraph(column, tr("What else is possible"), u"others"_s);
    m_prevention = paragraph(column, tr("So that it does not come back"), u"prevention"_s);
    auto* notesTitle = new TextLabel(tr("Notes"), TextSize::Body, Role::Ink, true);
    notesTitle->setBuddy(m_notes);
    column->addWidget(notesTitle);
    m_notes->setObjectName(u"finder.end.notes"_s);
    m_notes->setAccessibleName(tr("Notes on this case"));
    m_notes->setTabChangesFocus(true);
    m_notes->setFixedHeight(px(60));
    column->addWidget(m_notes);
    // Notes have no place on a wall.
    notesTitle->setVisible(!theme().isProjector());
    m_notes->setVisible(!theme().isProjector());
    column->addStretch(1);
    connect(m_notes, &QPlainTextEdit::textChanged, this, &EndCard::notesChanged);
}

TextLabel* EndCard::paragraph(QVBoxLayout* column, const QString& title, const QString& name) {
    auto* box = new QWidget;
    auto* inner = new QVBoxLayout(box);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setSpacing(px(2));
    inner->addWidget(new TextLabel(title, TextSize::Body, Role::Ink, true));
    auto* text = new TextLabel;
    text->setObjectName(u"finder.end."_s + name);
    text->setTextFormat(Qt::RichText);
    inner->addWidget(text->wrapped());
    column->addWidget(box);
    return text;
}

void EndCard::buildRows(QVBoxLayout* column) {
    const auto add = [&](const QString& name, const QString& answer, const QString& meaning,
                         std::function<void()> act) {
        auto* row = new AnswerRow(QString::number(m_rows.size() + 1), answer, meaning);
        row->setObjectName(u"finder.end."_s + name);
        row->installEventFilter(this);
        connect(row, &QAbstractButton::clicked, this, std::move(act));
        column->addWidget(row);
        m_rows.push_back(row);
    };
    add(u"proved"_s, tr("Proved"), tr("it reads as above; the case is closed"),
        [this] { Q_EMIT stateChosen(CaseState::Confirmed); });
    add(u"notProved"_s, tr("Not proved"), tr("looked at, and it was not that"),
        [this] { Q_EMIT stateChosen(CaseState::NotConfirmed); });
    add(u"back"_s, tr("Back to the questions"), tr("ask on, or change an answer on the way"),
        [this] { Q_EMIT backWanted(); });
}

void EndCard::setView(const CaseView& view, int minutes) {
    const Finding& first = view.findings().front();
    QString lead = view.state().further ? tr("The rest is unlikely enough to look here first.")
                                        : tr("No further check would tell more.");
    lead +=
        u' ' + tr("Stands: %1; %2 min so far.").arg(stateName(view.record().state)).arg(minutes);
    m_lead->setText(lead);
    m_title->setText(first.isSomethingElse ? tr("Nothing that the finder knows fits well")
                                           : tr("Most likely: %1").arg(view.nameOf(first)));
    m_members->setText(first.causes.size() > 1
                           ? tr("No reading parts these %1 from one another; look at them in this "
                                "order.")
                                 .arg(first.causes.size())
                           : QString());
    m_members->setVisible(first.causes.size() > 1);
    m_caution->setTexts(cautionTexts(cautionsOf(first)));
    showRemedies(view, first);
    showOthers(view);
    if (!theme().isProjector() && notes() != qs(view.record().notes)) {
        const QSignalBlocker quiet(m_notes);
        m_notes->setPlainText(qs(view.record().notes));
    }
}

void EndCard::showRemedies(const CaseView& view, const Finding& finding) {
    setOrHide(m_remedy, perCause(finding, &Cause::remedy));
    setOrHide(m_proof, perCause(finding, &Cause::proof));
    setOrHide(m_prevention, perCause(finding, &Cause::prevention));
    QStringList ways;
    for (const auto& fact : view.state().waysOut)
        ways.append(u"– "_s + view.words(fact).toHtmlEscaped());
    setOrHide(m_ways, ways.join(u"<br/>"_s));
}

void EndCard::showOthers(const CaseView& view) {
    QStringList others;
    for (std::size_t i = 1; i < view.findings().size(); ++i) {
        const Finding& finding = view.findings()[i];
        if (finding.word() == Likeliness::NoLonger || others.size() == kMostOthers) break;
        others.append(
            tr("%1 (%2)").arg(view.nameOf(finding).toHtmlEscaped(), wordOf(finding.word())));
    }
    setOrHide(m_others, others.isEmpty() ? tr("Nothing else that the finder knows fits well.")
                                         : others.join(u" · "_s));
}

QString EndCard::notes() const {
    return m_notes->toPlainText();
}

bool EndCard::press(int digit) {
    if (digit < 1 || digit > static_cast<int>(m_rows.size())) return false;
    m_rows[static_cast<std::size_t>(digit - 1)]->click();
    return true;
}

/// On the row that decides nothing: one Enter too many must not close a case.
void EndCard::takeFocus() {
    m_rows.back()->setFocus(Qt::OtherFocusReason);
}

void EndCard::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    takeFocus();
}

bool EndCard::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    auto* row = qobject_cast<AnswerRow*>(watched);
    if (!row || (key != Qt::Key_Return && key != Qt::Key_Enter)) return false;
    row->click();
    return true;
}

}  // namespace bw
