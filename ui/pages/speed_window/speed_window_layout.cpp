// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together; what it does stands in speed_window_page.cpp.
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/header_choice.h"
#include "ui/kit/messages.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/speed_window/boom_view.h"
#include "ui/pages/speed_window/candidate_picker.h"
#include "ui/pages/speed_window/cursor_strip.h"
#include "ui/pages/speed_window/duty_view.h"
#include "ui/pages/speed_window/pressure_view.h"
#include "ui/pages/speed_window/rate_view.h"
#include "ui/pages/speed_window/speed_table.h"
#include "ui/pages/speed_window/speed_window_page.h"
#include "ui/pages/speed_window/window_paint.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

void SpeedWindowPage::buildHeader() {
    m_tools = new QWidget;
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(12));
    m_machines = addHeaderChoice(*row, u"speedWindow.header.machine"_s, tr("Machine"), 215);
    m_jobs = addHeaderChoice(*row, u"speedWindow.header.job"_s, tr("Job"), 280);
    m_nozzleBox = addHeaderChoice(*row, u"speedWindow.header.nozzle"_s, tr("Nozzle in hand"), 300);
    m_nozzleBox->setIconSize(nozzleChipSize(u"0067"_s).toSize());
    m_candidateButton = new Button(tr("Candidate"), u"plus"_s);
    m_candidateButton->setObjectName(u"speedWindow.header.candidates"_s);
    m_candidateButton->setToolTip(tr("Take nozzles in to compare, or put them back"));
    m_candidateButton->setKey(Qt::Key_Insert, false);
    row->addWidget(m_candidateButton);
    row->addStretch(1);
    m_picker = new CandidatePicker(m_tools);
    connect(m_machines, &QComboBox::activated, this, [this](int index) {
        this->session().setCurrentMachine(m_machines->itemData(index).toLongLong());
    });
    connect(m_jobs, &QComboBox::activated, this, [this](int index) {
        this->session().setCurrentJob(m_jobs->itemData(index).toLongLong());
    });
    connect(m_nozzleBox, &QComboBox::activated, this,
            [this](int index) { takeNozzle(m_nozzleBox->itemData(index).toString()); });
    connect(m_candidateButton, &QAbstractButton::clicked, this, &SpeedWindowPage::openPicker);
    connect(m_picker, &CandidatePicker::taken, this,
            [this](const QString& name) { changeCandidates(name, true); });
    connect(m_picker, &CandidatePicker::putBack, this,
            [this](const QString& name) { changeCandidates(name, false); });
}

QWidget* SpeedWindowPage::buildWork() {
    auto* work = new QWidget;
    auto* row = new QHBoxLayout(work);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* column = new QVBoxLayout;
    column->setContentsMargins(px(12), px(7), px(12), px(8));
    column->setSpacing(px(4));
    row->addLayout(column, 1);
    column->addWidget(buildToolRow());
    m_views = new QStackedWidget;
    m_pressure = new PressureView;
    m_pressure->setObjectName(u"speedWindow.chart.pressure"_s);
    m_rate = new RateView;
    m_rate->setObjectName(u"speedWindow.chart.rate"_s);
    m_table = new DataTable;
    m_table->setObjectName(u"speedWindow.table"_s);
    m_table->setAccessibleName(tr("Table by speed"));
    m_tableModel = new SpeedTable(session().sentences(), this);
    m_table->setModel(m_tableModel);
    m_table->horizontalHeader()->setMinimumHeight(px(36));
    m_duty = new DutyView;
    m_duty->setObjectName(u"speedWindow.chart.duty"_s);
    m_first = new QStackedWidget;
    m_first->addWidget(m_pressure);
    m_first->addWidget(m_duty);
    m_views->addWidget(m_first);
    m_views->addWidget(m_rate);
    m_views->addWidget(m_table);
    m_boom = new BoomView(session().sentences());
    m_boom->setObjectName(u"speedWindow.boom"_s);
    m_views->addWidget(m_boom);
    column->addWidget(m_views, 1);
    m_span = new SpanBar;
    m_span->setObjectName(u"speedWindow.span"_s);
    m_span->setRoom(kRoomLeft, kRoomRight);
    column->addWidget(m_span);
    m_strip = new CursorStrip;
    m_strip->setObjectName(u"speedWindow.cursor"_s);
    column->addWidget(m_strip);
    m_caution = new CautionBox;
    m_caution->setObjectName(u"speedWindow.caution"_s);
    column->addWidget(m_caution);
    m_evidence = new EvidenceColumn;
    m_evidence->setObjectName(u"speedWindow.evidence"_s);
    row->addWidget(m_evidence);
    m_evidenceLater = new QTimer(this);
    m_evidenceLater->setSingleShot(true);
    m_evidenceLater->setInterval(80);
    connect(m_evidenceLater, &QTimer::timeout, this, &SpeedWindowPage::tellEvidence);
    const auto moved = [this](double x) { moveCursor(m_study->speedAt(x)); };
    connect(m_pressure, &ChartPanel::cursorMoved, this, moved);
    connect(m_duty, &ChartPanel::cursorMoved, this, moved);
    connect(m_rate, &ChartPanel::cursorMoved, this, moved);
    const auto pressureAt = [this](double y) { return make<Pressure>(y, m_study->pressureUnit()); };
    connect(m_pressure, &ChartPanel::levelMoved, this,
            [this, pressureAt](double y) { previewFloor(pressureAt(y)); });
    connect(m_pressure, &ChartPanel::levelTaken, this,
            [this, pressureAt](double y) { takeFloor(pressureAt(y)); });
    connect(m_pressure, &ChartPanel::levelTakenBack, this, [this] { previewFloor({}); });
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) {
                if (now.isValid() && m_views->currentIndex() == View::ByTable)
                    moveCursor(m_tableModel->speedOf(now.row()));
            });
    connect(m_boom, &BoomView::speedChosen, this, &SpeedWindowPage::moveCursor);
    connect(m_boom, &BoomView::changed, this, &SpeedWindowPage::showCautions);
    connect(m_boom, &BoomView::linkActivated, this, &SpeedWindowPage::followLink);
    connect(m_evidence, &EvidenceColumn::linkActivated, this, &SpeedWindowPage::followLink);
    return work;
}

QWidget* SpeedWindowPage::buildToolRow() {
    auto* tools = new QWidget;
    auto* row = new QHBoxLayout(tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(8));
    m_viewChoice = new SegmentedButtons;
    m_viewChoice->setObjectName(u"speedWindow.view"_s);
    m_viewChoice->addChoice(tr("Pressure"), QKeySequence(Qt::ALT | Qt::Key_1));
    m_viewChoice->addChoice(tr("Rate"), QKeySequence(Qt::ALT | Qt::Key_2));
    m_viewChoice->addChoice(tr("By speed"), QKeySequence(Qt::ALT | Qt::Key_3));
    m_viewChoice->addChoice(tr("Along the boom"), QKeySequence(Qt::ALT | Qt::Key_4));
    const char* names[] = {"pressure", "rate", "table", "boom"};
    for (int i = 0; i < 4; ++i)
        m_viewChoice->button(i)->setObjectName(u"speedWindow.view."_s +
                                               QLatin1StringView(names[i]));
    row->addWidget(m_viewChoice);
    m_viewHint = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_viewHint->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_viewHint->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_viewHint, 1);
    auto* table = new IconButton(tr("Show as a table"), u"table"_s);
    table->setObjectName(u"speedWindow.tools.table"_s);
    auto* copy = new IconButton(tr("Copy picture and figures"), u"copy"_s);
    copy->setObjectName(u"speedWindow.tools.copy"_s);
    auto* print = new IconButton(tr("Print cab card…"), u"print"_s);
    print->setObjectName(u"speedWindow.tools.print"_s);
    print->setToolTip(tr("Print cab card… (Ctrl+P)"));
    row->addWidget(table);
    row->addWidget(copy);
    row->addWidget(print);
    connect(m_viewChoice, &SegmentedButtons::currentIndexChanged, this, &SpeedWindowPage::showView);
    connect(table, &QAbstractButton::clicked, this, &SpeedWindowPage::showAsTable);
    connect(copy, &QAbstractButton::clicked, this, &SpeedWindowPage::copyView);
    connect(print, &QAbstractButton::clicked, this, &SpeedWindowPage::offerPrint);
    return tools;
}

QWidget* SpeedWindowPage::buildEmpty() {
    auto* empty = new QWidget;
    auto* column = new QVBoxLayout(empty);
    column->setContentsMargins(px(40), 0, px(40), 0);
    column->addStretch(2);
    m_emptyText = new TextLabel({}, TextSize::Lead);
    m_emptyText->setObjectName(u"speedWindow.empty.text"_s);
    m_emptyText->setAlignment(Qt::AlignCenter);
    column->addWidget(m_emptyText->wrapped());
    column->addSpacing(px(14));
    auto* row = new QHBoxLayout;
    row->addStretch();
    m_emptyButton = new Button({}, {}, Button::Kind::Primary);
    m_emptyButton->setObjectName(u"speedWindow.empty.act"_s);
    row->addWidget(m_emptyButton);
    m_emptyDemo = new Button(tr("Try the demo season"), u"season"_s);
    m_emptyDemo->setObjectName(u"speedWindow.empty.demo"_s);
    row->addWidget(m_emptyDemo);
    row->addStretch();
    column->addLayout(row);
    column->addStretch(3);
    connect(m_emptyButton, &QAbstractButton::clicked, this, [this] {
        if (m_emptyTarget == u"candidates"_s)
            openPicker();
        else
            Q_EMIT goTo(m_emptyTarget);
    });
    connect(m_emptyDemo, &QAbstractButton::clicked, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    return empty;
}

}  // namespace bw
