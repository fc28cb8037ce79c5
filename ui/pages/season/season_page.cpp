// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_page.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QMimeData>
#include <QScrollBar>
#include <QSplitter>
#include <QStackedLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "ui/kit/actions.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/choice_foot.h"
#include "ui/pages/season/choice_runner.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/jobs_table.h"
#include "ui/pages/season/matrix_model.h"
#include "ui/pages/season/matrix_view.h"
#include "ui/pages/season/season_edits.h"
#include "ui/pages/season/season_foot.h"
#include "ui/pages/season/season_header.h"
#include "ui/pages/season/season_runner.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

SeasonInputs inputsOf(const Season& season) {
    SeasonInputs inputs{season.machines, season.jobs, {}, {}};
    for (const auto& stored : season.nozzles) inputs.nozzles.push_back(stored.nozzle);
    for (const auto& nozzle : builtInNozzles()) {
        if (std::any_of(season.jobs.begin(), season.jobs.end(),
                        [&](const StoredJob& j) { return j.job.pinnedNozzle == nozzle.name; }))
            inputs.elsewhere.push_back(nozzle);
    }
    return inputs;
}

/// The heads of machines are lower than the jobs.
void fitRows(QTableView& view, const SeasonRowsModel& model) {
    for (int row = 0; row < model.rowCount(); ++row) {
        const bool isHead = model.rowAt(row)->kind == SeasonRow::Kind::Group;
        const int height = px(isHead ? 25 : 31);
        if (view.rowHeight(row) != height) view.setRowHeight(row, height);
    }
}

bool hasRateRange(const Season& season) {
    return std::any_of(season.jobs.begin(), season.jobs.end(), [](const StoredJob& stored) {
        return stored.job.rateLeast || stored.job.rateMost;
    });
}

}  // namespace

SeasonPage::SeasonPage(FarmSession& session, QWidget* parent)
    : Page(session, parent),
      m_runner(new SeasonRunner(this)),
      m_choice(new ChoiceRunner(this)),
      m_model(new JobsModel(session, *m_runner, this)),
      m_matrixModel(new MatrixModel(session, *m_runner, this)),
      m_edits(new SeasonEdits(session, *m_model, this)) {
    setObjectName(u"season"_s);
    setFocusPolicy(Qt::StrongFocus);
    m_stack = new QStackedLayout(this);
    auto* empty = new EmptyPage(tr("A season is made of jobs, and every job is done by a machine: "
                                   "the machine comes first."),
                                tr("Begin with my machine"), tr("Look at the demo season"));
    connect(empty, &EmptyPage::acted, this, [this] { Q_EMIT goTo(u"machine"_s); });
    connect(empty, &EmptyPage::secondActed, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    m_stack->addWidget(empty);
    auto* whole = new QWidget;
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto* split = new QSplitter(Qt::Vertical);
    split->setObjectName(u"season.split"_s);
    split->setChildrenCollapsible(false);
    split->addWidget(buildTables());
    split->addWidget(buildFoot());
    split->setStretchFactor(0, 1);
    split->setSizes({px(460), px(130)});
    m_heights = split;
    column->addWidget(split, 1);
    auto* caution = new CautionBox;
    caution->setObjectName(u"season.caution"_s);
    caution->setTexts(cautionTexts({u"C18"_s, u"C30"_s}), true);
    column->addWidget(caution);
    m_stack->addWidget(whole);
    connectTables();
    connectEdits();
    buildActions();
    buildRowActions();
}

QWidget* SeasonPage::buildTables() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_table = new JobsTable;
    m_table->setModel(m_model);
    m_matrix = new MatrixView;
    m_matrix->setMatrix(m_matrixModel);
    m_split = new QSplitter(Qt::Horizontal);
    m_split->setObjectName(u"season.tables"_s);
    setFocusProxy(m_table);
    m_split->setChildrenCollapsible(false);
    m_split->addWidget(m_table);
    m_split->addWidget(m_matrix);
    connect(m_split, &QSplitter::splitterMoved, this, [this] { m_isSplitByUser = true; });
    column->addWidget(m_split, 1);
    column->addWidget(buildMessage());
    linkScrolling();
    return box;
}

/// One line under the table: what is wrong with the cell in hand, else what is said of its job.
QWidget* SeasonPage::buildMessage() {
    auto* panel = new RolePanel(Role::Raised);
    panel->setEdges(Qt::TopEdge);
    auto* row = new QHBoxLayout(panel);
    row->setContentsMargins(px(16), px(5), px(12), px(5));
    row->setSpacing(px(8));
    m_messageIcon = new IconLabel(u"window"_s, Role::Quiet, 18);
    m_message = (new TextLabel({}, TextSize::Small))->wrapped();
    m_message->setObjectName(u"season.table.message"_s);
    m_message->setAccessibleName(tr("About the cell in hand"));
    row->addWidget(m_messageIcon, 0, Qt::AlignTop);
    row->addWidget(m_message, 1, Qt::AlignTop);
    panel->setMinimumHeight(px(40));
    return panel;
}

QWidget* SeasonPage::buildFoot() {
    auto* panel = new RolePanel(Role::Raised);
    panel->setEdges(Qt::TopEdge, Role::Ok);
    auto* column = new QVBoxLayout(panel);
    column->setContentsMargins(0, 2, 0, 0);
    m_foot = new SeasonFoot(session());
    m_choiceFoot = new ChoiceFoot(session());
    // Into the panel first: a stack without a home would show its first widget as a window.
    m_feet = new QStackedLayout;
    column->addLayout(m_feet, 1);
    m_feet->addWidget(m_foot);
    m_feet->addWidget(m_choiceFoot);
    return panel;
}

/// Both tables scroll as one; their lower edges stay level.
void SeasonPage::linkScrolling() {
    QScrollBar* left = m_table->verticalScrollBar();
    QScrollBar* right = m_matrix->verticalScrollBar();
    connect(left, &QScrollBar::valueChanged, right, &QScrollBar::setValue);
    connect(right, &QScrollBar::valueChanged, left, &QScrollBar::setValue);
    const auto level = [this] {
        const bool needed =
            m_table->horizontalScrollBar()->maximum() > 0 ||
            (!m_matrix->isHidden() && m_matrix->horizontalScrollBar()->maximum() > 0);
        const auto policy = needed ? Qt::ScrollBarAlwaysOn : Qt::ScrollBarAlwaysOff;
        m_table->setHorizontalScrollBarPolicy(policy);
        m_matrix->setHorizontalScrollBarPolicy(policy);
    };
    connect(m_table->horizontalScrollBar(), &QScrollBar::rangeChanged, this, level);
    connect(m_matrix->horizontalScrollBar(), &QScrollBar::rangeChanged, this, level);
    m_table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

/// The jobs get what they need, the matrix the rest; on a wide screen the matrix what it needs, the
/// names the rest. Until the user moves the border.
void SeasonPage::shareWidth() {
    if (m_isSplitByUser || m_matrix->isHidden()) return;
    const int whole = width() - m_split->handleWidth();
    const int least = std::min(px(264), m_matrix->neededWidth());
    const int jobs =
        std::min(std::max(m_table->neededWidth(), whole - m_matrix->neededWidth()), whole - least);
    m_split->setSizes({jobs, whole - jobs});
}

void SeasonPage::showEvent(QShowEvent* event) {
    Page::showEvent(event);
    shareWidth();
}

void SeasonPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    shareWidth();
}

void SeasonPage::connectTables() {
    connect(m_table, &JobsTable::openAsked, this,
            [this](const QModelIndex& index) { openWindow(index, false); });
    connect(m_matrix, &MatrixView::openAsked, this,
            [this](const QModelIndex& index) { openWindow(index, true); });
    connect(m_table, &JobsTable::leftAtRight, this, [this] {
        const QModelIndex index = m_matrixModel->index(m_table->currentIndex().row(), 0);
        if (m_matrix->isHidden() || !(index.flags() & Qt::ItemIsEnabled)) return;
        m_matrix->setFocus();
        m_matrix->setCurrentIndex(index);
    });
    connect(m_matrix, &MatrixView::leftAtLeft, this, [this] {
        m_table->goToCell(m_matrix->currentIndex().row(), JobColumn::Verdict, false);
    });
    connect(m_table, &JobsTable::cellChanged, this, &SeasonPage::takeJobInHand);
    connect(m_matrix, &MatrixView::cellChanged, this, &SeasonPage::takeJobInHand);
    connect(m_table, &JobsTable::copyAsked, this, [this] { copy(false); });
    connect(m_table, &JobsTable::pasteAsked, this, &SeasonPage::paste);
    connect(m_table, &DataTable::deletePressed, this,
            [this] { m_edits->clear(m_table->selectionModel()->selectedIndexes()); });
    connect(m_table, &JobsTable::dropAsked, this, [this](const QModelIndex& index) {
        const SeasonRow* row = m_model->rowAt(index.row());
        if (row) m_model->forget(row->machine, row->job, static_cast<JobColumn>(index.column()));
    });
    connect(m_runner, &SeasonRunner::started, this, &SeasonPage::showVerdicts);
    connect(m_runner, &SeasonRunner::finished, this, &SeasonPage::showVerdicts);
    connect(m_choice, &ChoiceRunner::progressed, m_choiceFoot, &ChoiceFoot::showProgress);
    connect(m_choice, &ChoiceRunner::finished, this, &SeasonPage::showChoice);
}

void SeasonPage::connectEdits() {
    connect(m_edits, &SeasonEdits::notice, this, &Page::notice);
    connect(m_edits, &SeasonEdits::placed, this, &SeasonPage::place);
    connect(m_model, &JobsModel::jobTyped, this, [this](RecordId job, JobColumn column) {
        m_table->followTyped(m_model->rowOfJob(job), column);
    });
    connect(m_model, &JobsModel::dataChanged, this, &SeasonPage::showMessage);
    connect(m_model, &JobsModel::notStored, this, [this](const Problem& problem) {
        Q_EMIT notice(qs(session().sentences().of(problem, session().currentStyle())), true);
    });
}

QWidget* SeasonPage::headerTools() {
    m_header = new SeasonHeader;
    connect(m_header, &SeasonHeader::scopeChanged, this, [this] { refresh(); });
    connect(m_header, &SeasonHeader::matrixSwitched, this, &SeasonPage::setMatrixShown);
    connect(m_header, &SeasonHeader::addAsked, this,
            [this] { m_edits->add(m_table->currentIndex()); });
    connect(m_header, &SeasonHeader::chooseAsked, this, &SeasonPage::choose);
    connect(m_header, &SeasonHeader::leftFilter, this, [this] {
        m_table->setFocus();
        followSession();
    });
    return m_header;
}

QString SeasonPage::hint() const {
    return tr("F2 mends a cell · Ctrl+D fills down · Enter on a verdict opens its speed window");
}

/// Called for every change of what is in hand as well: what is on screen already stays.
void SeasonPage::refresh() {
    const Season& season = session().season();
    if (m_header) m_header->setMachines(season.machines, season.jobs.size());
    Shown now{season, m_header ? m_header->scope() : SeasonScope{}, session().decimalMark()};
    if (m_shown != now) {
        m_shown = std::move(now);
        reload(*m_shown);
    }
    followSession();
    showMessage();
}

void SeasonPage::reload(const Shown& now) {
    m_isRefreshing = true;
    m_stack->setCurrentIndex(now.season.machines.empty() ? 0 : 1);
    m_model->reload(now.scope);
    m_matrixModel->reload(now.scope);
    showRateColumns();
    fitRows(*m_table, *m_model);
    fitRows(*m_matrix, *m_model);
    m_isRefreshing = false;
    m_runner->run(inputsOf(now.season));
}

void SeasonPage::showVerdicts() {
    m_model->showVerdicts();
    m_matrixModel->showVerdicts();
    if (m_runner->result() && !m_runner->isRunning())
        m_foot->showSeason(*m_runner->result(), machinesShown());
    if (m_wantsChoice) chooseAgain();
    showMessage();
}

std::vector<RecordId> SeasonPage::machinesShown() const {
    std::vector<RecordId> out;
    const RecordId one = m_header ? m_header->scope().machine : 0;
    for (const auto& stored : session().season().machines) {
        if (one == 0 || stored.id == one) out.push_back(stored.id);
    }
    return out;
}

/// Least and highest rate stand there once a job has them, or when asked for.
void SeasonPage::showRateColumns() {
    const bool shown = m_wantsRates || hasRateRange(session().season());
    for (const auto column : {JobColumn::RateLeast, JobColumn::RateMost})
        m_table->setColumnHidden(static_cast<int>(column), !shown);
    shareWidth();
    m_table->fitColumns();
}

void SeasonPage::setMatrixShown(bool shown) {
    m_matrix->setVisible(shown);
    m_table->setVerticalScrollBarPolicy(shown ? Qt::ScrollBarAlwaysOff : Qt::ScrollBarAsNeeded);
    if (m_header) m_header->setMatrixShown(shown);
    shareWidth();
}

/// The job of the cell in hand is the job in hand on every page.
void SeasonPage::takeJobInHand() {
    if (m_isRefreshing) return;
    const QAbstractItemView* view = m_matrix->hasFocus() ? static_cast<QAbstractItemView*>(m_matrix)
                                                         : static_cast<QAbstractItemView*>(m_table);
    const SeasonRow* row = m_model->rowAt(view->currentIndex().row());
    if (row) {
        const SeasonRow now = *row;
        if (now.machine != session().currentMachine()) session().setCurrentMachine(now.machine);
        if (now.job != 0 && now.job != session().currentJob()) session().setCurrentJob(now.job);
    }
    showMessage();
}

/// Where no cell is in hand, or another page took another job in hand, the table follows.
void SeasonPage::followSession() {
    const QModelIndex current = m_table->currentIndex();
    const SeasonRow* row = m_model->rowAt(current.row());
    const bool isThere =
        row && (row->job == session().currentJob() || (row->kind == SeasonRow::Kind::NewJob &&
                                                       row->machine == session().currentMachine()));
    if (isThere) return;
    int wanted = m_model->rowOfJob(session().currentJob());
    if (wanted < 0 && !row) wanted = m_model->newRowOf(session().currentMachine());
    if (wanted < 0) return;
    m_isRefreshing = true;
    const int column = std::max(0, current.column());
    m_table->setCurrentIndex(m_model->index(wanted, column));
    m_isRefreshing = false;
}

void SeasonPage::place(RecordId job, JobColumn column, bool edit) {
    if (m_model->rowOfJob(job) < 0 && m_header) m_header->clearFilter();
    m_table->goToCell(m_model->rowOfJob(job), column, edit);
}

void SeasonPage::openWindow(const QModelIndex& index, bool ofMatrix) {
    const SeasonRow* row = m_model->rowAt(index.row());
    if (!row || row->kind != SeasonRow::Kind::Job) return;
    const SeasonRow at = *row;
    RecordId nozzle = 0;
    if (ofMatrix) {
        if (const StoredNozzle* stored = m_matrixModel->nozzleAt(index.column()))
            nozzle = stored->id;
    } else if (m_runner->result()) {
        const JobReckoning* reckoning = m_runner->result()->of(at.job);
        for (const auto& stored : session().season().nozzles) {
            if (reckoning && stored.nozzle.name == reckoning->verdict.nozzle) nozzle = stored.id;
        }
    }
    if (at.machine != session().currentMachine()) session().setCurrentMachine(at.machine);
    session().setCurrentJob(at.job);
    if (nozzle != 0) session().setCurrentNozzle(nozzle);
    Q_EMIT goTo(u"speed_window"_s);
}

void SeasonPage::copy(bool withHeading) {
    const auto cells = m_table->selectionModel()->selectedIndexes();
    auto data = m_edits->copied(cells, m_table->shownColumns(), withHeading);
    if (data->hasText()) QGuiApplication::clipboard()->setMimeData(data.release());
}

void SeasonPage::paste() {
    const QMimeData* data = QGuiApplication::clipboard()->mimeData();
    if (!data || !data->hasText()) return;
    m_edits->paste(m_table->selectionModel()->selectedIndexes(), *data, m_table->shownColumns());
}

}  // namespace bw
