// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/boom_view.h"

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/data_table.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/boom_chart.h"
#include "ui/pages/speed_window/evidence_text.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kWidths[] = {0.5, 1.0, 2.0};
constexpr int kSlopes[] = {5, 10, 15};
constexpr double kMostSlope = 60.0;  ///< %, over which nothing drives (judgement)

enum Place { kChart, kTable, kUnknown };

}  // namespace

BoomView::BoomView(const Sentences& sentences, QWidget* parent)
    : QWidget(parent),
      m_sentences(sentences),
      m_kinds(new SegmentedButtons),
      m_speedEdit(new QuantityEdit(Dimension::Speed, Unit::KilometrePerHour)),
      m_radiusEdit(new QuantityEdit(Dimension::Length, Unit::Metre)),
      m_slopeEdit(new QuantityEdit(Dimension::None, Unit::Percent)),
      m_title(new TextLabel({}, TextSize::Lead, Role::Ink, true)),
      m_text(new TextLabel({}, TextSize::Body, Role::Ink)),
      m_stack(new QStackedWidget),
      m_chart(new BoomChart),
      m_table(new DataTable),
      m_model(new BoomTable(this)),
      m_reading(new TextLabel) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, px(4), 0, 0);
    column->setSpacing(px(6));
    column->addWidget(buildTools());
    m_title->setObjectName(u"speedWindow.boom.title"_s);
    m_text->setObjectName(u"speedWindow.boom.text"_s);
    column->addWidget(m_title->wrapped());
    column->addWidget(m_text->wrapped());
    m_chart->setObjectName(u"speedWindow.boom.chart"_s);
    m_table->setObjectName(u"speedWindow.boom.table"_s);
    m_table->setAccessibleName(tr("Table by nozzle"));
    m_table->setModel(m_model);
    m_table->horizontalHeader()->setMinimumHeight(px(36));
    m_stack->addWidget(m_chart);
    m_stack->addWidget(m_table);
    m_stack->addWidget(buildUnknown());
    column->addWidget(m_stack, 1);
    m_reading->setObjectName(u"speedWindow.boom.reading"_s);
    column->addWidget(m_reading->wrapped());
    setFocusProxy(m_chart);
    connect(m_chart, &ChartPanel::cursorMoved, this, [this](double x) { showNozzle(qRound(x)); });
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) {
                if (now.isValid()) showNozzle(now.row() + 1);
            });
}

/// A caption and a field behind it.
QWidget* BoomView::buildField(QuantityEdit* edit, const QString& name, const QString& label) {
    auto* whole = new QWidget;
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(6));
    row->addWidget(new TextLabel(label, TextSize::Small, Role::Quiet));
    edit->setObjectName(name + u".edit"_s);
    edit->line()->setObjectName(name);
    edit->line()->setFixedWidth(px(92));
    edit->setLabel(label);
    edit->setOptional(false);
    row->addWidget(edit);
    return whole;
}

QWidget* BoomView::buildTools() {
    auto* tools = new QWidget;
    auto* row = new QHBoxLayout(tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(10));
    const char* names[] = {"even", "turn", "slope"};
    const QString words[] = {tr("Even"), tr("In a turn"), tr("Across a slope")};
    const QString tips[] = {tr("How even the pipe along the boom feeds its nozzles"),
                            tr("What each nozzle leaves while the machine turns"),
                            tr("What each nozzle gets while one end stands higher")};
    for (int i = 0; i < 3; ++i) {
        m_kinds->addChoice(words[i]);
        m_kinds->button(i)->setObjectName(u"speedWindow.boom."_s + QLatin1StringView(names[i]));
        m_kinds->button(i)->setToolTip(tips[i]);
    }
    row->addWidget(m_kinds);
    row->addWidget(buildField(m_speedEdit, u"speedWindow.boom.speed"_s, tr("Speed")));
    m_radiusRow = buildRadius();
    m_slopeRow = buildSlope();
    row->addWidget(m_radiusRow);
    row->addWidget(m_slopeRow);
    row->addStretch(1);
    m_speedEdit->setBounds(anyQuantity(Speed::fromSi(0.02)), anyQuantity(Speed::fromSi(30)));
    connect(m_kinds, &SegmentedButtons::currentIndexChanged, this, [this] { work(); });
    connect(m_speedEdit, &QuantityEdit::committed, this,
            [this](const AnyQuantity& speed) { Q_EMIT speedChosen(Speed::fromSi(speed.si)); });
    return tools;
}

QWidget* BoomView::buildRadius() {
    QWidget* whole = buildField(m_radiusEdit, u"speedWindow.boom.radius"_s, tr("Radius"));
    m_radiusEdit->setBounds(anyQuantity(Length::fromSi(1)), anyQuantity(Length::fromSi(1000)));
    m_radiusEdit->line()->setToolTip(tr("Of the circle that the middle of the boom runs on"));
    connect(m_radiusEdit, &QuantityEdit::committed, this,
            [this](const AnyQuantity& radius) { takeRadius(Length::fromSi(radius.si)); });
    const QString words[] = {tr("½ width"), tr("1 width"), tr("2 widths")};
    for (int i = 0; i < 3; ++i) {
        auto* button = new Button(words[i]);
        button->setObjectName(u"speedWindow.boom.radius%1"_s.arg(i + 1));
        button->setToolTip(tr("Radius as a part of the boom's width"));
        whole->layout()->addWidget(button);
        connect(button, &QAbstractButton::clicked, this, [this, i] {
            if (m_study) takeRadius(kWidths[i] * m_study->model().width());
        });
    }
    return whole;
}

QWidget* BoomView::buildSlope() {
    QWidget* whole = buildField(m_slopeEdit, u"speedWindow.boom.slopeField"_s, tr("Slope"));
    m_slopeEdit->setBounds(AnyQuantity{Dimension::None, 0.0},
                           AnyQuantity{Dimension::None, kMostSlope / 100});
    m_slopeEdit->line()->setToolTip(tr("Rise over run across the way driven: 10 % is 1 in 10"));
    connect(m_slopeEdit, &QuantityEdit::committed, this,
            [this](const AnyQuantity& slope) { takeSlope(100 * slope.si); });
    for (const int percent : kSlopes) {
        auto* button = new Button(u"%1 %"_s.arg(percent));
        button->setObjectName(u"speedWindow.boom.slope%1"_s.arg(percent));
        button->setToolTip(tr("Slope of %1 %").arg(percent));
        whole->layout()->addWidget(button);
        connect(button, &QAbstractButton::clicked, this, [this, percent] { takeSlope(percent); });
    }
    return whole;
}

QWidget* BoomView::buildUnknown() {
    auto* whole = new QWidget;
    auto* column = new QVBoxLayout(whole);
    column->addStretch(2);
    m_unknownText = new TextLabel(
        tr("The strip needs the bore of the pipe along the boom and the nozzles at which it is "
           "fed. Turn and slope work without them."),
        TextSize::Body, Role::Quiet);
    m_unknownText->setAlignment(Qt::AlignCenter);
    column->addWidget(m_unknownText->wrapped());
    column->addSpacing(px(10));
    auto* row = new QHBoxLayout;
    row->addStretch();
    m_mend = new Button(tr("Fill it in on the Machine page"), u"machine"_s);
    m_mend->setObjectName(u"speedWindow.boom.mend"_s);
    row->addWidget(m_mend);
    row->addStretch();
    column->addLayout(row);
    column->addStretch(3);
    connect(m_mend, &QAbstractButton::clicked, this,
            [this] { Q_EMIT linkActivated(kPageLink + u"machine"_s); });
    return whole;
}

StripKind BoomView::kind() const {
    return static_cast<StripKind>(std::max(0, m_kinds->currentIndex()));
}

void BoomView::showKind(StripKind kind) {
    m_kinds->setCurrentIndex(static_cast<int>(kind));
}

Length BoomView::radius() const {
    return m_radius.value_or(m_study ? m_study->model().width() : Length::fromSi(1));
}

void BoomView::takeRadius(Length radius) {
    m_radius = radius;
    work();
}

void BoomView::takeSlope(double percent) {
    m_slope = percent;
    work();
}

void BoomView::setStudy(const WindowStudy* study) {
    m_study = study;
    if (!study) return;
    m_nozzle = std::clamp(m_nozzle, 1, study->model().nozzles());
    m_speed = Speed{};
}

/// A strip is only worked out while it is looked at.
void BoomView::showCursor(Speed speed) {
    m_speed = speed;
    work();
}

BoomStrip BoomView::strip() const {
    const WindowModel& model = m_study->model();
    const UnitSystem units = m_study->style.units;
    switch (kind()) {
        case StripKind::Even:
            return evenStrip(model, m_speed);
        case StripKind::Turn:
            return turnStrip(model, m_speed, radius(), units);
        case StripKind::Slope:
            return slopeStrip(model, m_speed, m_slope, units);
    }
    return {};
}

void BoomView::work() {
    if (!m_study || !(m_speed.si() > 0)) return;
    const NumberStyle& style = m_study->style;
    for (QuantityEdit* edit : {m_speedEdit, m_radiusEdit}) edit->setNumberStyle(style);
    m_slopeEdit->setDecimalMark(style.decimalMark);
    m_speedEdit->setQuantity(anyQuantity(m_speed));
    m_radiusEdit->setQuantity(anyQuantity(radius()));
    m_slopeEdit->setQuantity(AnyQuantity{Dimension::None, m_slope / 100});
    m_radiusRow->setVisible(kind() == StripKind::Turn);
    m_slopeRow->setVisible(kind() == StripKind::Slope);
    m_strip = strip();
    showStrip();
    Q_EMIT changed();
}

void BoomView::showStrip() {
    const NumberStyle& style = m_study->style;
    const bool isUnknown = m_strip.nozzles.empty();
    QStringList sentences;
    for (const Fact& fact : m_strip.facts) sentences << qs(m_sentences.of(fact, style));
    const QString title = sentences.isEmpty() ? QString() : sentences.takeFirst();
    m_title->setText(title);
    m_title->setRole(isUnknown ? Role::Unchecked : m_strip.asksForWork ? Role::Limit : Role::Ink);
    m_text->setText(sentences.join(u' '));
    m_text->setVisible(!sentences.isEmpty());
    m_model->setStrip(kind(), m_strip, style, m_sentences);
    m_chart->setStrip(kind(), m_strip, style.decimalMark, title + u' ' + m_text->text());
    for (int c = 0; c + 1 < m_model->columnCount(); ++c) m_table->resizeColumnToContents(c);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_stack->setCurrentIndex(isUnknown ? kUnknown : m_wantsTable ? kTable : kChart);
    setFocusProxy(isUnknown ? static_cast<QWidget*>(m_mend) : m_stack->currentWidget());
    m_reading->setVisible(!isUnknown);
    showNozzle(m_nozzle);
}

void BoomView::showNozzle(int number) {
    if (m_strip.nozzles.empty()) return;
    m_nozzle = std::clamp(number, 1, static_cast<int>(m_strip.nozzles.size()));
    m_chart->showNozzle(m_nozzle);
    m_reading->setText(m_model->words(m_nozzle - 1));
    if (m_table->currentIndex().row() != m_nozzle - 1)
        m_table->setCurrentIndex(m_model->index(m_nozzle - 1, 0));
}

void BoomView::toggleTable() {
    m_wantsTable = !m_wantsTable;
    if (!m_strip.nozzles.empty()) {
        m_stack->setCurrentIndex(m_wantsTable ? kTable : kChart);
        setFocusProxy(m_stack->currentWidget());
        m_stack->currentWidget()->setFocus();
    }
}

void BoomView::copy() {
    if (m_stack->currentIndex() == kChart) return m_chart->copy();
    const QString sentence = m_title->text() + u'\n' + m_text->text() + u'\n';
    QApplication::clipboard()->setText(sentence + m_table->selectionText(true));
}

QStringList BoomView::cautions() const {
    QStringList texts;
    if (kind() == StripKind::Turn) texts << cautionText(u"C19"_s, tr("Speed:"));
    if (kind() == StripKind::Slope)
        texts << cautionText(u"C19"_s, tr("Slope:")) << cautionText(u"C20"_s, tr("Pressure:"));
    if (kind() == StripKind::Even) texts << cautionText(u"C20"_s, tr("Pressure:"));
    return texts;
}

}  // namespace bw
