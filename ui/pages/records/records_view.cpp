// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/records_view.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>

#include "core/base/csv_text.h"
#include "ui/kit/buttons.h"
#include "ui/kit/data_table.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_detail.h"
#include "ui/pages/records/two_lines.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
const QString kFinder = u"fault_finder"_s;
const QString kYard = u"yard_checks"_s;
}  // namespace

RecordsView::RecordsView(FarmSession& session, QStringList pages, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_pages(std::move(pages)),
      m_model(new RecordsModel(this)),
      m_filter(new RecordsFilter(*m_model, this)) {
    build();
}

void RecordsView::build() {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* left = new QWidget;
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(buildFilters());
    m_table = new DataTable;
    m_table->setObjectName(u"records.list.table"_s);
    m_table->setAccessibleName(tr("Records"));
    m_table->setModel(m_filter);
    TwoLines::putInto(*m_table);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setSortingEnabled(true);
    m_table->sortByColumn(RecordsModel::When, Qt::DescendingOrder);
    m_table->installEventFilter(this);
    auto* header = m_table->horizontalHeader();
    header->setSectionResizeMode(RecordsModel::Outcome, QHeaderView::Stretch);
    column->addWidget(m_table, 1);
    column->addWidget(new HairLine);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(px(12), px(6), px(12), px(6));
    m_count = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_count->setObjectName(u"records.list.count"_s);
    foot->addWidget(m_count, 1);
    auto* notRecord = new TextLabel(tr("Not a spray record."), TextSize::Small, Role::Ink, true);
    notRecord->setObjectName(u"records.list.notSprayRecord"_s);
    notRecord->setToolTip(
        tr("What was sprayed, where and when is kept as your law asks, not here."));
    foot->addWidget(notRecord);
    column->addLayout(foot);
    row->addWidget(left, 63);
    row->addWidget(new HairLine(Qt::Vertical, Role::Line, this));
    m_detail = new RecordDetail(m_session);
    row->addWidget(m_detail, 37);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { choose(now.row()); });
    connect(m_table, &DataTable::deletePressed, this, &RecordsView::removeInHand);
    connect(m_table, &QAbstractItemView::doubleClicked, this, &RecordsView::openInHand);
    connect(m_detail, &RecordDetail::openWanted, this, &RecordsView::openInHand);
    connect(m_detail, &RecordDetail::removeWanted, this, &RecordsView::removeInHand);
}

QWidget* RecordsView::buildFilters() {
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(px(12), px(8), px(12), px(8));
    row->setSpacing(px(10));
    m_search = new QLineEdit;
    m_search->setObjectName(u"records.filter.search"_s);
    m_search->setPlaceholderText(tr("Customer, machine, set, cause, note, date"));
    m_search->setToolTip(
        tr("Every word must be found: customer, machine, set, cause, notes, date. \"In quotes\": "
           "just so."));
    m_search->setClearButtonEnabled(true);
    m_search->installEventFilter(this);
    row->addWidget(captioned(tr("Search"), m_search), 1);
    const auto choice = [&](const QString& caption, const QString& name, int letters) {
        auto* box = new ChoiceBox;
        box->setObjectName(name);
        box->setAccessibleName(caption);
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(letters);
        row->addWidget(captioned(caption, box));
        connect(box, &QComboBox::currentIndexChanged, this, &RecordsView::narrow);
        return box;
    };
    m_machine = choice(tr("Machine"), u"records.filter.machine"_s, 14);
    m_year = choice(tr("Year"), u"records.filter.year"_s, 5);
    m_kind = choice(tr("Kind"), u"records.filter.kind"_s, 13);
    m_kind->addItem(tr("all kinds"), -1);
    for (const LineKind kind : kLineKinds) m_kind->addItem(kindWords(kind), static_cast<int>(kind));
    m_kind->view()->setMinimumWidth(px(180));
    connect(m_search, &QLineEdit::textChanged, this, &RecordsView::narrow);
    return bar;
}

/// The machines and years that there are; what was chosen stays if it still is one of them.
void RecordsView::fillFilters() {
    QStringList machines, years;
    for (const auto& line : m_model->lines()) {
        if (!line.machine.isEmpty()) machines.append(line.machine);
        years.append(line.year());
    }
    const auto fill = [](ChoiceBox* box, const QString& all, QStringList values, bool isFalling) {
        const QString before = box->currentData().toString();
        values.removeDuplicates();
        std::sort(values.begin(), values.end());
        if (isFalling) std::reverse(values.begin(), values.end());
        const QSignalBlocker quiet(box);
        box->clear();
        box->addItem(all, QString());
        for (const QString& value : values) {
            box->addItem(value, value);
            box->setItemData(box->count() - 1, value, Qt::ToolTipRole);
        }
        box->setCurrentIndex(std::max(0, box->findData(before)));
        box->view()->setMinimumWidth(px(240));
    };
    fill(m_machine, tr("all machines"), machines, false);
    fill(m_year, tr("all"), years, true);
    m_year->view()->setMinimumWidth(0);
}

void RecordsView::refresh() {
    m_isFilling = true;
    m_model->setLines(recordLines(m_session));
    fillFilters();
    m_isFilling = false;
    const int widths[] = {86, 138, 154, 0, 84};
    for (int i = 0; i < RecordsModel::kColumns; ++i) {
        if (i != RecordsModel::Outcome) m_table->setColumnWidth(i, px(widths[i]));
    }
    narrow();
}

void RecordsView::narrow() {
    if (m_isFilling) return;
    RecordsFilter::Wanted wanted;
    wanted.machine = m_machine->currentData().toString();
    wanted.year = m_year->currentData().toString();
    const int kind = m_kind->currentData().toInt();
    if (kind >= 0) wanted.kind = static_cast<LineKind>(kind);
    wanted.text = m_search->text();
    m_isFilling = true;
    m_filter->setWanted(wanted);
    m_isFilling = false;
    const int all = m_model->rowCount(), shown = m_filter->rowCount();
    m_count->setText(all == shown ? tr("Records: %1").arg(all)
                                  : tr("Records shown: %1 of %2").arg(shown).arg(all));
    m_machine->setToolTip(m_machine->currentText());
    keepInHand();
}

/// The record in hand stays so while it is shown; else the one that took its place.
void RecordsView::keepInHand() {
    int row = m_filter->rowOf(m_isCaseInHand, m_idInHand);
    if (row < 0) row = std::min(m_rowInHand, m_filter->rowCount() - 1);
    if (row >= 0) m_table->setCurrentIndex(m_filter->index(row, 0));
    choose(row);
}

void RecordsView::choose(int row) {
    if (m_isFilling) return;
    const RecordLine* line = row >= 0 ? m_filter->lineAt(row) : nullptr;
    if (line) {
        m_isCaseInHand = line->isCase();
        m_idInHand = line->id;
        m_rowInHand = row;
    }
    m_detail->setLine(line, line ? opens(*line) : QString());
}

const RecordLine* RecordsView::inHand() const {
    const QModelIndex now = m_table->currentIndex();
    return now.isValid() ? m_filter->lineAt(now.row()) : nullptr;
}

QString RecordsView::opens(const RecordLine& line) const {
    if (line.isCase() && m_pages.contains(kFinder))
        return line.isOpen ? tr("Go on with it") : tr("Open the case");
    const bool isThere = m_session.machine(line.machineId) != nullptr;
    if (!line.isCase() && line.isOpen && isThere && m_pages.contains(kYard))
        return tr("Go on with it");
    return {};
}

void RecordsView::openInHand() {
    const RecordLine* line = inHand();
    if (!line || opens(*line).isEmpty()) return;
    if (line->isCase()) return Q_EMIT goTo(u"%1#%2"_s.arg(kFinder).arg(line->id));
    const StoredYardRecord* stored = m_session.yardRecord(line->id);
    if (!stored) return;
    const QString check = line->kind == LineKind::Checklist   ? u"checklist"_s
                          : line->kind == LineKind::CatchTest ? u"Y7"_s
                                                              : qs(stored->record.check);
    m_session.setCurrentMachine(line->machineId);
    Q_EMIT goTo(kYard + u'#' + check);
}

void RecordsView::removeInHand() {
    const RecordLine* line = inHand();
    if (!line) return;
    const QString undo = tr("remove %1 of %2").arg(line->what, line->day());
    const Outcome done = line->isCase() ? m_session.removeCase(line->id, undo)
                                        : m_session.removeYardRecord(line->id, undo);
    if (!done) Q_EMIT failed(done.problem());
}

void RecordsView::takeFocus() {
    m_table->setFocus(Qt::OtherFocusReason);
}

void RecordsView::startSearch() {
    m_search->setFocus(Qt::ShortcutFocusReason);
    m_search->selectAll();
}

void RecordsView::showMachine(const QString& machine) {
    m_search->clear();
    m_year->setCurrentIndex(0);
    m_kind->setCurrentIndex(0);
    m_machine->setCurrentIndex(std::max(0, m_machine->findData(machine)));
    takeFocus();
}

void RecordsView::showKind(LineKind kind) {
    showMachine({});
    m_kind->setCurrentIndex(m_kind->findData(static_cast<int>(kind)));
}

void RecordsView::showRecord(bool isCase, RecordId id) {
    showMachine({});
    m_isCaseInHand = isCase;
    m_idInHand = id;
    keepInHand();
}

QString RecordsView::tableText() const {
    return bw::tableText(*m_filter);
}

bool RecordsView::hasCustomers() const {
    for (int row = 0; row < m_filter->rowCount(); ++row) {
        if (!m_filter->lineAt(row)->customer.isEmpty()) return true;
    }
    return false;
}

std::string RecordsView::csv(bool withCustomers) const {
    std::vector<std::vector<std::string>> rows{
        {ss(tr("Date")), ss(tr("Machine")), ss(tr("What")), ss(tr("Outcome")), ss(tr("State"))}};
    // Notes are typed by hand and may name people.
    if (withCustomers)
        rows.front().insert(rows.front().end(), {ss(tr("Notes")), ss(tr("Customer"))});
    for (int row = 0; row < m_filter->rowCount(); ++row) {
        const RecordLine& line = *m_filter->lineAt(row);
        std::vector<std::string> fields{ss(line.day()), ss(line.machine), ss(line.what),
                                        ss(line.outcome), ss(line.state)};
        if (withCustomers) fields.insert(fields.end(), {ss(line.notes), ss(line.customer)});
        rows.push_back(std::move(fields));
    }
    return csvText(rows);
}

bool RecordsView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (watched == m_table && (key == Qt::Key_Return || key == Qt::Key_Enter)) {
        openInHand();
        return true;
    }
    if (watched == m_search && (key == Qt::Key_Down || key == Qt::Key_Return)) {
        takeFocus();
        return true;
    }
    if (watched == m_search && key == Qt::Key_Escape) {
        m_search->clear();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace bw
