// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/case_list.h"

#include <QDateTime>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QStandardItemModel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/data_table.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/case_view.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

enum Column { When, Machine, Complaint, State, Found, Minutes, kColumns };

QStandardItem* item(const QString& text, bool quiet = false) {
    auto* cell = new QStandardItem(text);
    cell->setEditable(false);
    cell->setToolTip(text);
    cell->setData(quiet, QuietRole);
    return cell;
}

QString causeName(const std::string& id) {
    const Cause* cause = Knowledge::shipped().cause(id);
    return cause ? qs(cause->name) : QString();
}

QList<QStandardItem*> rowOf(const StoredCase& stored) {
    const CaseRecord& r = stored.record;
    const auto opened = QDateTime::fromString(qs(r.opened), Qt::ISODate);
    auto* when = item(opened.toString(u"yyyy-MM-dd hh:mm"_s));
    when->setData(QVariant::fromValue<qlonglong>(stored.id), Qt::UserRole);
    QString machine = r.machine.name.empty() ? CaseList::tr("not asked yet") : qs(r.machine.name);
    if (r.isDemo) machine += u' ' + CaseList::tr("(invented)");
    auto* minutes = item(CaseList::tr("%1 min").arg(r.minutes));
    minutes->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return {when,
            item(machine),
            item(r.symptom ? symptomName(*r.symptom) : CaseList::tr("not asked yet")),
            item(stateName(r.state)),
            item(causeName(r.causeFound), r.state != CaseState::Confirmed),
            minutes};
}

}  // namespace

CaseList::CaseList(QWidget* parent)
    : QWidget(parent),
      m_intro(new TextLabel({}, TextSize::Lead)),
      m_table(new DataTable),
      m_model(new QStandardItemModel(this)),
      m_open(new Button(tr("Open"), u"open"_s)),
      m_new(new Button(tr("New call"), u"phone"_s, Button::Kind::Primary)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(20), px(16), px(20), px(14));
    column->setSpacing(px(12));
    auto* top = new QHBoxLayout;
    top->setSpacing(px(10));
    m_intro->setObjectName(u"finder.list.intro"_s);
    top->addWidget(m_intro->wrapped(), 1);
    m_open->setObjectName(u"finder.list.open"_s);
    m_new->setObjectName(u"finder.list.new"_s);
    m_new->setKey(Qt::Key_F9, false);
    top->addWidget(m_open);
    top->addWidget(m_new);
    column->addLayout(top);
    m_table->setObjectName(u"finder.list.table"_s);
    m_table->setAccessibleName(tr("Past cases"));
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->installEventFilter(this);
    column->addWidget(m_table, 1);
    connect(m_table, &QAbstractItemView::doubleClicked, this, [this] { openCurrent(); });
    connect(m_table, &DataTable::deletePressed, this, [this] {
        if (currentId() != 0) Q_EMIT removeWanted(currentId());
    });
    connect(m_open, &QAbstractButton::clicked, this, &CaseList::openCurrent);
    connect(m_new, &QAbstractButton::clicked, this, &CaseList::newCallWanted);
}

void CaseList::setCases(const std::vector<StoredCase>& cases, RecordId inHand) {
    const qlonglong before = inHand != 0 ? inHand : currentId();
    m_model->clear();
    m_model->setHorizontalHeaderLabels({tr("Called"), tr("Machine"), tr("Complaint"), tr("Stands"),
                                        tr("Most likely"), tr("Took")});
    auto sorted = cases;
    std::stable_sort(sorted.begin(), sorted.end(), [](const StoredCase& a, const StoredCase& b) {
        return a.record.opened > b.record.opened;
    });
    int current = 0;
    for (const auto& stored : sorted) {
        if (stored.id == before) current = m_model->rowCount();
        m_model->appendRow(rowOf(stored));
    }
    m_intro->setText(cases.empty() ? tr("No call yet. The finder asks, you answer by key; every "
                                        "answer is saved.")
                                   : tr("Open a case to go on with it or to look it up."));
    m_table->setVisible(!cases.empty());
    m_open->setVisible(!cases.empty());
    if (cases.empty()) return;
    auto* header = m_table->horizontalHeader();
    const int widths[] = {130, 270, 150, 170, 240, 70};
    for (int i = 0; i < kColumns; ++i) m_table->setColumnWidth(i, px(widths[i]));
    header->setSectionResizeMode(Found, QHeaderView::Stretch);
    m_table->setCurrentIndex(m_model->index(current, 0));
}

void CaseList::takeFocus() {
    if (m_model->rowCount() > 0)
        m_table->setFocus(Qt::OtherFocusReason);
    else
        m_new->setFocus(Qt::OtherFocusReason);
}

void CaseList::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    takeFocus();
}

qlonglong CaseList::currentId() const {
    const QModelIndex now = m_table->currentIndex();
    return now.isValid() ? now.siblingAtColumn(0).data(Qt::UserRole).toLongLong() : 0;
}

void CaseList::openCurrent() {
    if (currentId() != 0) Q_EMIT opened(currentId());
}

bool CaseList::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            openCurrent();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace bw
