// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/customers_view.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QStandardItemModel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"
#include "ui/pages/records/two_lines.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

enum Column { Name, Place, Machines, Cases, kColumns };

QStandardItem* cell(const QString& text) {
    auto* item = new QStandardItem(text);
    item->setEditable(false);
    item->setToolTip(text);
    return item;
}

QStandardItem* countCell(qsizetype count) {
    auto* item = cell(QString::number(count));
    item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return item;
}

}  // namespace

CustomersView::CustomersView(FarmSession& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_model(new QStandardItemModel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(buildList(), 52);
    row->addWidget(new HairLine(Qt::Vertical, Role::Line, this));
    row->addWidget(buildForm(), 48);
}

QWidget* CustomersView::buildList() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_table = new DataTable;
    m_table->setObjectName(u"records.customers.table"_s);
    m_table->setAccessibleName(tr("Customers"));
    m_model->setHorizontalHeaderLabels({tr("Customer"), tr("Place"), tr("Machines"), tr("Cases")});
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->horizontalHeader()->setSectionResizeMode(Name, QHeaderView::Stretch);
    m_table->setColumnWidth(Place, px(150));
    m_table->setColumnWidth(Machines, px(76));
    m_table->setColumnWidth(Cases, px(60));
    column->addWidget(m_table, 1);
    column->addWidget(new HairLine);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(px(12), px(8), px(12), px(8));
    auto* plus = new Button(tr("Customer"), u"plus"_s, Button::Kind::Primary);
    plus->setObjectName(u"records.customers.add"_s);
    plus->setKey(QKeySequence(Qt::Key_Insert), false);
    plus->setToolTip(tr("Add a customer"));
    foot->addWidget(plus);
    foot->addStretch(1);
    column->addLayout(foot);
    connect(plus, &QAbstractButton::clicked, this, &CustomersView::add);
    connect(m_table, &DataTable::deletePressed, this, &CustomersView::remove);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { choose(now.row()); });
    return box;
}

QLineEdit* CustomersView::field(QGridLayout& grid, const QString& label, const QString& name,
                                std::string Customer::*part) {
    auto* line = new QLineEdit;
    line->setObjectName(name);
    line->setAccessibleName(label);
    const int row = grid.rowCount();
    grid.addWidget(new TextLabel(label, TextSize::Body, Role::Quiet), row, 0);
    grid.addWidget(line, row, 1);
    connect(line, &QLineEdit::editingFinished, this, [this, line, part] {
        if (!m_isFilling) store(part, line->text().trimmed());
    });
    m_fields.emplace_back(line, part);
    return line;
}

QWidget* CustomersView::buildForm() {
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(px(14), px(12), px(14), px(12));
    column->setSpacing(px(10));
    m_none = new TextLabel(tr("No customer yet. A shop keeps its callers here; a farm needs none."),
                           TextSize::Lead);
    m_none->setObjectName(u"records.customers.none"_s);
    column->addWidget(m_none->wrapped());
    m_form = new QWidget;
    column->addWidget(m_form);
    column->addStretch(1);
    auto* rows = new QVBoxLayout(m_form);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(px(10));
    m_title = new TextLabel({}, TextSize::Title, Role::Ink, true);
    m_title->setObjectName(u"records.customers.title"_s);
    rows->addWidget(m_title->wrapped());
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(px(10));
    grid->setVerticalSpacing(px(6));
    grid->setColumnStretch(1, 1);
    field(*grid, tr("Name"), u"records.customers.name"_s, &Customer::name);
    field(*grid, tr("Place"), u"records.customers.place"_s, &Customer::place);
    field(*grid, tr("Phone"), u"records.customers.phone"_s, &Customer::phone);
    m_notes = new QPlainTextEdit;
    m_notes->setObjectName(u"records.customers.notes"_s);
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->setTabChangesFocus(true);
    m_notes->setFixedHeight(px(64));
    m_notes->installEventFilter(this);
    grid->addWidget(new TextLabel(tr("Notes"), TextSize::Body, Role::Quiet), grid->rowCount(), 0,
                    Qt::AlignTop);
    grid->addWidget(m_notes, grid->rowCount() - 1, 1);
    rows->addLayout(grid);
    m_belongings = new EvidenceList;
    m_belongings->setObjectName(u"records.customers.belongings"_s);
    rows->addWidget(m_belongings);
    m_remove = new Button(tr("Delete the customer"), u"delete"_s);
    m_remove->setObjectName(u"records.customers.remove"_s);
    rows->addWidget(m_remove, 0, Qt::AlignLeft);
    rows->addWidget((new TextLabel(tr("Machines and cases stay, without the name. Notes and names "
                                      "of machines stay as typed; backups made before still hold "
                                      "the customer."),
                                   TextSize::Small, Role::Quiet))
                        ->wrapped());
    scroll->setWidget(box);
    connect(m_remove, &QAbstractButton::clicked, this, &CustomersView::remove);
    connect(m_belongings, &EvidenceList::linkActivated, this, &CustomersView::linkActivated);
    return scroll;
}

void CustomersView::refresh() {
    m_isFilling = true;
    const auto& machines = m_session.season().machines;
    const auto& cases = m_session.cases();
    const int before = std::max(0, m_table->currentIndex().row());
    m_model->removeRows(0, m_model->rowCount());
    int row = -1;
    auto sorted = m_session.customers();
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) {
        return QString::localeAwareCompare(qs(a.customer.name), qs(b.customer.name)) < 0;
    });
    for (const auto& stored : sorted) {
        if (stored.id == m_idInHand) row = m_model->rowCount();
        auto* name = cell(stored.customer.name.empty() ? tr("no name") : qs(stored.customer.name));
        name->setData(QVariant::fromValue<qlonglong>(stored.id), Qt::UserRole);
        const auto own = std::count_if(machines.begin(), machines.end(),
                                       [&](const auto& m) { return m.customer == stored.id; });
        const auto called = std::count_if(cases.begin(), cases.end(), [&](const auto& c) {
            return c.record.customerId == stored.id;
        });
        m_model->appendRow(
            {name, cell(qs(stored.customer.place)), countCell(own), countCell(called)});
    }
    m_isFilling = false;
    if (row < 0) row = std::min(before, m_model->rowCount() - 1);
    m_table->setCurrentIndex(m_model->index(row, 0));
    choose(row);
}

void CustomersView::choose(int row) {
    if (m_isFilling) return;
    m_idInHand = row < 0 ? 0 : m_model->item(row, 0)->data(Qt::UserRole).toLongLong();
    present();
}

const StoredCustomer* CustomersView::inHand() const {
    for (const auto& stored : m_session.customers()) {
        if (stored.id == m_idInHand) return &stored;
    }
    return nullptr;
}

void CustomersView::present() {
    const StoredCustomer* stored = inHand();
    m_form->setVisible(stored);
    m_none->setVisible(!stored);
    if (!stored) return;
    m_isFilling = true;
    QString title = stored->customer.name.empty() ? tr("No name yet") : qs(stored->customer.name);
    if (stored->customer.isDemo) title += u' ' + tr("(invented)");
    m_title->setText(title);
    for (const auto& [line, part] : m_fields) {
        if (line->text() == qs(stored->customer.*part)) continue;
        line->setText(qs(stored->customer.*part));
        line->setCursorPosition(0);
    }
    if (m_notes->toPlainText() != qs(stored->customer.notes))
        m_notes->setPlainText(qs(stored->customer.notes));
    m_isFilling = false;
    presentBelongings(stored->id);
}

void CustomersView::presentBelongings(RecordId id) {
    EvidenceSection machines{tr("Machines"), {}}, cases{tr("Cases"), {}};
    for (const auto& stored : m_session.season().machines) {
        if (stored.customer != id) continue;
        EvidenceRow row;
        row.icon = u"machine"_s;
        row.text = qs(stored.machine.name);
        row.linkText = tr("its records");
        row.link = u"machine:"_s + row.text;
        machines.rows.append(row);
    }
    for (const auto& stored : m_session.cases()) {
        if (stored.record.customerId != id) continue;
        EvidenceRow row;
        row.icon = u"finder"_s;
        row.strong = dayWords(stored.record.opened) + u':';
        row.text = outcomeWords(stored.record);
        row.linkText = tr("look at it");
        row.link = u"case:%1"_s.arg(stored.id);
        cases.rows.append(row);
    }
    EvidenceRow none;
    if (machines.rows.isEmpty()) {
        none.quiet = tr("None. The Machine page says whose a machine is.");
        machines.rows.append(none);
    }
    QVector<EvidenceSection> sections{machines};
    if (!cases.rows.isEmpty()) sections.append(cases);
    m_belongings->setSections(sections);
}

void CustomersView::store(std::string Customer::*part, const QString& text) {
    const StoredCustomer* stored = inHand();
    if (!stored || stored->customer.*part == ss(text)) return;
    Customer after = stored->customer;
    after.*part = ss(text);
    const QString name = qs(after.name.empty() ? stored->customer.name : after.name);
    const auto done = m_session.editCustomer(stored->id, after, tr("customer %1").arg(name));
    if (!done) Q_EMIT failed(done.problem());
}

void CustomersView::add() {
    Customer customer;
    customer.name = ss(tr("New customer"));
    const auto id = m_session.addCustomer(customer, tr("add customer"));
    if (!id) return Q_EMIT failed(id.problem());
    m_idInHand = *id;
    refresh();
    m_fields.front().first->setFocus(Qt::OtherFocusReason);
    m_fields.front().first->selectAll();
}

void CustomersView::remove() {
    const StoredCustomer* stored = inHand();
    if (!stored) return;
    // The name would stand in the undo text and in the status line.
    const auto done = m_session.removeCustomer(stored->id, tr("delete customer"));
    if (!done) return Q_EMIT failed(done.problem());
    takeFocus();
}

void CustomersView::takeFocus() {
    m_table->setFocus(Qt::OtherFocusReason);
}

QString CustomersView::tableText() const {
    return bw::tableText(*m_model);
}

bool CustomersView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_notes && event->type() == QEvent::FocusOut && !m_isFilling)
        store(&Customer::notes, m_notes->toPlainText());
    return QWidget::eventFilter(watched, event);
}

}  // namespace bw
