// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/aid_panel.h"

#include <QDate>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/pages/machine/list_line.h"
#include "ui/pages/machine/machine_row.h"

namespace bw {

using namespace Qt::StringLiterals;

AidPanel::AidPanel(QWidget* parent)
    : RolePanel(Role::Raised, parent),
      m_title(new TextLabel({}, TextSize::Body, Role::Ink, true)),
      m_usual(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_where(new TextLabel({}, TextSize::Body, Role::Ink)),
      m_dateBox(new QWidget),
      m_date(new ListLine),
      m_dateProblem(new TextLabel({}, TextSize::Small, Role::Limit)) {
    setObjectName(u"machine.aid"_s);
    setEdges(Qt::TopEdge);
    m_title->setObjectName(u"machine.aid.title"_s);
    m_where->setObjectName(u"machine.aid.where"_s);
    m_date->setObjectName(u"machine.aid.date"_s);
    m_dateProblem->setObjectName(u"machine.aid.dateProblem"_s);
    build();
    connect(m_date, &ListLine::returnPressed, this, &AidPanel::takeDate);
    connect(m_date, &ListLine::focusLeft, this, &AidPanel::takeDate);
    connect(m_date, &ListLine::escaped, this, [this] {
        m_date->setText(m_shownDate);
        m_date->setModified(false);
        m_dateProblem->hide();
    });
    setWhereShown(false);
}

Button* AidPanel::button(const QString& text, const char* name, const QKeySequence& key,
                         void (AidPanel::*signal)()) {
    auto* made = new Button(text);
    made->setObjectName(QLatin1String(name));
    made->setKey(key, false);
    made->setFocusPolicy(Qt::NoFocus);  // the field keeps the focus
    connect(made, &QAbstractButton::clicked, this, signal);
    return made;
}

void AidPanel::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(16), px(6), px(12), px(8));
    column->setSpacing(px(5));
    auto* head = new QHBoxLayout;
    head->setSpacing(px(8));
    head->addWidget(m_title);
    head->addWidget(m_usual->wrapped(), 1);
    auto* dateRow = new QHBoxLayout(m_dateBox);
    dateRow->setContentsMargins(0, 0, 0, 0);
    dateRow->setSpacing(px(5));
    dateRow->addWidget(new TextLabel(tr("on"), TextSize::Small, Role::Quiet));
    m_date->setFixedWidth(px(96));
    m_date->setAccessibleName(tr("Date of the measurement, year-month-day"));
    m_date->setToolTip(tr("Date of the measurement: year-month-day, 2026-03-12"));
    dateRow->addWidget(m_date);
    head->addWidget(m_dateBox);
    column->addLayout(head);
    column->addWidget(m_dateProblem->wrapped());
    auto* row = new QHBoxLayout;
    row->setSpacing(px(6));
    row->addWidget(m_find = button(tr("Where do I find this?"), "machine.aid.find",
                                   QKeySequence(Qt::Key_F1), &AidPanel::whereWished));
    row->addWidget(m_unknown = button(tr("I don't know"), "machine.aid.unknown",
                                      QKeySequence(Qt::Key_F4), &AidPanel::unknownWished));
    row->addWidget(m_origin = button(tr("Origin"), "machine.aid.origin", QKeySequence(Qt::Key_F2),
                                     &AidPanel::originWished));
    row->addStretch(1);
    column->addWidget(m_where->wrapped());
    column->addLayout(row);
    m_dateProblem->hide();
}

void AidPanel::present(const MachineRow* row, const QString& label, const QString& where) {
    m_title->setText(label.isEmpty() ? tr("No field in hand") : label);
    m_usual->setText(row ? row->usualText() : QString());
    m_where->setText(where.isEmpty() ? tr("Take a field in hand first.") : where);
    m_find->setEnabled(!where.isEmpty());
    const bool hasOrigin = row && row->field().isKnown;
    m_unknown->setEnabled(row);
    m_origin->setEnabled(hasOrigin);
    m_dateBox->setVisible(hasOrigin && row->field().origin == Origin::Measured);
    if (!row || (m_date->hasFocus() && m_date->isModified())) return;
    m_shownDate = QString::fromStdString(row->field().date);
    m_date->setText(m_shownDate);
    m_date->setModified(false);
    m_dateProblem->hide();
}

void AidPanel::setWhereShown(bool shown) {
    m_isWhereShown = shown;
    m_where->setVisible(shown);
}

void AidPanel::editDate() {
    if (m_dateBox->isHidden()) return;
    m_date->setFocus(Qt::OtherFocusReason);
    m_date->selectAll();
}

void AidPanel::takeDate() {
    const QString text = m_date->text().trimmed();
    if (!m_date->isModified()) return;
    const QDate date = QDate::fromString(text, Qt::ISODate);
    m_dateProblem->setVisible(!date.isValid());
    if (!date.isValid()) {
        m_dateProblem->setText(tr("“%1” is no date. Year, month and day: 2026-03-12.").arg(text));
        return;
    }
    m_date->setModified(false);
    Q_EMIT dateEntered(date.toString(Qt::ISODate));
}

}  // namespace bw
