// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/wear_view.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QStandardItemModel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"
#include "ui/pages/records/two_lines.h"
#include "ui/pages/records/wear_chart.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

enum Column { Machine_, Set, Tests, Last, OfNew, Passes, kColumns };

constexpr int kFarDays = 20 * 365;  ///< a latest day beyond that helps nobody

QStandardItem* cell(const QString& text, const QVariant& sorted = {}) {
    auto* item = new QStandardItem(text);
    item->setEditable(false);
    item->setToolTip(text);
    item->setData(sorted.isValid() ? sorted : QVariant(text.toLower()), SortRole);
    return item;
}

}  // namespace

WearView::WearView(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_table(new DataTable),
      m_model(new QStandardItemModel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_model->setSortRole(SortRole);
    m_model->setHorizontalHeaderLabels({tr("Machine"), tr("Nozzle set"), tr("Tests"), tr("Last"),
                                        tr("Of new"), tr("Limit about")});
    m_table->setObjectName(u"records.wear.table"_s);
    m_table->setAccessibleName(tr("Nozzle sets that were caught"));
    m_table->setModel(m_model);
    TwoLines::putInto(*m_table);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setSortingEnabled(true);
    m_table->sortByColumn(Machine_, Qt::AscendingOrder);
    row->addWidget(m_table, 50);
    row->addWidget(new HairLine(Qt::Vertical, Role::Line, this));
    row->addWidget(buildDetail(), 50);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { choose(now.row()); });
}

QWidget* WearView::buildDetail() {
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setAccessibleName(tr("Wear of the set in hand"));
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(px(14), px(12), px(14), px(12));
    column->setSpacing(px(8));
    m_title = new TextLabel({}, TextSize::Title, Role::Ink, true);
    m_title->setObjectName(u"records.wear.title"_s);
    column->addWidget(m_title->wrapped());
    m_verdict = new VerdictPanel;
    m_verdict->setObjectName(u"records.wear.verdict"_s);
    column->addWidget(m_verdict);
    m_chart = new WearChart;
    column->addWidget(m_chart, 1);
    m_list = new EvidenceList;
    m_list->setObjectName(u"records.wear.list"_s);
    column->addWidget(m_list);
    column->addStretch(0);
    scroll->setWidget(box);
    return scroll;
}

NumberStyle WearView::styleOf(const WearHistory& history) const {
    const Machine* machine = m_session.machine(history.machineId);
    return machine ? m_session.styleOf(*machine) : m_session.currentStyle();
}

QString WearView::passes(const WearHistory& history) const {
    if (history.trend.isOk()) return monthWords(history.trend->passes);
    if (history.trend.problem().code == "yard_wear_falls") return tr("no rise");
    return tr("one date only");
}

void WearView::refresh() {
    const int before = m_table->currentIndex().row();
    m_isFilling = true;
    m_histories = wearHistories(m_session.yardRecords());
    m_model->removeRows(0, m_model->rowCount());
    for (std::size_t i = 0; i < m_histories.size(); ++i) {
        const WearHistory& h = m_histories[i];
        auto* first = cell(qs(h.machineName));
        first->setData(static_cast<int>(i), Qt::UserRole);
        const auto tests = static_cast<int>(h.tests.size());
        const bool isEmpty = h.tests.empty();
        auto* passed = cell(isEmpty ? tr("not known") : passes(h),
                            h.trend.isOk() ? yearsOf(h.trend->passes) : 1e6);
        m_model->appendRow(
            {first, cell(qs(h.set)), cell(QString::number(tests), tests),
             cell(isEmpty ? QString() : qs(h.tests.back().date)),
             cell(isEmpty ? QString()
                          : plainNumber(h.tests.back().ofNew.value * 100, 1, styleOf(h)) + u" %"_s,
                  isEmpty ? 0.0 : h.tests.back().ofNew.value),
             passed});
    }
    m_model->sort(m_table->horizontalHeader()->sortIndicatorSection(),
                  m_table->horizontalHeader()->sortIndicatorOrder());
    const int widths[] = {0, 0, 46, 84, 66, 108};
    for (int i = Tests; i < kColumns; ++i) m_table->setColumnWidth(i, px(widths[i]));
    m_table->horizontalHeader()->setSectionResizeMode(Machine_, QHeaderView::Stretch);
    m_table->horizontalHeader()->setSectionResizeMode(Set, QHeaderView::Stretch);
    m_isFilling = false;
    if (m_histories.empty()) return showNone();
    const int row = std::clamp(before, 0, m_model->rowCount() - 1);
    m_table->setCurrentIndex(m_model->index(row, 0));
    choose(row);
}

void WearView::showNone() {
    m_title->setText(tr("No catch test yet"));
    m_verdict->setVerdict(tr("No trend without tests"),
                          tr("A trend needs finished catch tests of the same set on two dates or "
                             "more."),
                          Tone::Plain);
    m_chart->hide();
    m_list->setSections({});
}

QString WearView::sentence(const WearHistory& history) const {
    const NumberStyle style = styleOf(history);
    if (!history.trend) return qs(m_session.sentences().of(history.trend.problem(), style));
    const WearTrend& trend = *history.trend;
    std::vector<Argument> arguments{{"limit", ss(plainNumber(history.limit * 100, 0, style))},
                                    {"date", ss(monthWords(trend.passes))}};
    std::string code = "records.wear.passes";
    if (isoDate(trend.passes) <= ss(m_session.now().date().toString(Qt::ISODate)))
        code = "records.wear.passed";
    if (trend.earliest) arguments.push_back({"earliest", ss(monthWords(*trend.earliest))});
    const bool hasLatest =
        trend.latest && *trend.latest - trend.lastTest < std::chrono::days(kFarDays);
    if (hasLatest) arguments.push_back({"latest", ss(monthWords(*trend.latest))});
    code += trend.earliest && hasLatest ? "_between"
            : trend.earliest            ? "_from"
            : hasLatest                 ? "_until"
                                        : "_open";
    return qs(m_session.sentences().fill(code, arguments, style));
}

void WearView::choose(int row) {
    if (m_isFilling || row < 0) return;
    const auto index = m_model->item(row, 0)->data(Qt::UserRole).toUInt();
    const WearHistory& history = m_histories[index];
    const NumberStyle style = styleOf(history);
    m_title->setText(tr("%1 on %2").arg(qs(history.set), qs(history.machineName)));
    const QString text = sentence(history);
    const bool isWorn =
        !history.tests.empty() && history.tests.back().ofNew.value > 1 + history.limit;
    QString title = tr("No trend yet");
    if (history.trend)
        title = tr("%1 % more each year, give or take %2 %")
                    .arg(plainNumber(history.trend->perYear.value * 100, 1, style),
                         plainNumber(history.trend->perYear.uncertainty * 200, 1, style));
    m_verdict->setVerdict(isWorn ? tr("Over the limit: replace the set") : title, text,
                          isWorn ? Tone::Limit : Tone::Plain);
    m_chart->setVisible(!history.tests.empty());
    if (!history.tests.empty()) m_chart->setHistory(history, style, text);
    EvidenceSection tests{tr("Tests"), {}};
    for (const auto& test : history.tests) {
        EvidenceRow line;
        line.icon = u"origin:measured"_s;
        line.strong = dayWords(test.date) + u':';
        line.text = tr("%1 % of a new one, give or take %2 %")
                        .arg(plainNumber(test.ofNew.value * 100, 1, style),
                             plainNumber(test.ofNew.uncertainty * 200, 1, style));
        tests.rows.append(line);
    }
    const auto doubt = [&](const QString& words) {
        EvidenceRow line;
        line.icon = u"caution"_s;
        line.iconRole = Role::Caution;
        line.text = words;
        return line;
    };
    EvidenceSection doubts{tr("What it rests on"), {}};
    if (history.leftOut > 0)
        doubts.rows.append(doubt(tr("Tests left out, as the flow of a new one or the pressure is "
                                    "not known: %1")
                                     .arg(history.leftOut)));
    if (history.trend) {
        for (const auto& problem : history.trend->shown.warnings)
            doubts.rows.append(doubt(qs(m_session.sentences().of(problem, style))));
        EvidenceRow line;
        line.icon = u"origin:assumed"_s;
        line.text =
            tr("A straight line by date is an assumption: wear goes with hours and "
               "product.");
        doubts.rows.append(line);
    }
    QVector<EvidenceSection> sections;
    if (!tests.rows.isEmpty()) sections.append(tests);
    if (!doubts.rows.isEmpty()) sections.append(doubts);
    m_list->setSections(sections);
}

void WearView::takeFocus() {
    m_table->setFocus(Qt::OtherFocusReason);
}

QString WearView::tableText() const {
    return bw::tableText(*m_model);
}

}  // namespace bw
