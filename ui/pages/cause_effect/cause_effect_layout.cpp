// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together; what it does stands in cause_effect_page.cpp.
#include <QHBoxLayout>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/circuit_view.h"
#include "ui/kit/header_choice.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/pages/cause_effect/cause_effect_page.h"
#include "ui/pages/cause_effect/fault_panel.h"
#include "ui/pages/cause_effect/lever_panel.h"
#include "ui/pages/cause_effect/point_chart.h"
#include "ui/pages/cause_effect/read_outs.h"
#include "ui/pages/cause_effect/section_strip.h"
#include "ui/pages/cause_effect/strip_chart.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

Button* named(Button* button, const char* name, const QString& tip) {
    button->setObjectName(QLatin1String(name));
    button->setToolTip(tip);
    return button;
}

QScrollArea* scrolling(QWidget* content) {
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(content);
    area->setFocusPolicy(Qt::NoFocus);
    return area;
}

}  // namespace

void CauseEffectPage::buildHeader() {
    m_tools = new QWidget;
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(12));
    m_machines = addHeaderChoice(*row, u"causeEffect.header.machine"_s, tr("Machine"), 215);
    m_jobs = addHeaderChoice(*row, u"causeEffect.header.job"_s, tr("Job"), 280);
    m_nozzles = addHeaderChoice(*row, u"causeEffect.header.nozzle"_s, tr("Nozzle"), 300);
    m_nozzles->setIconSize(nozzleChipSize(u"0067"_s).toSize());
    row->addStretch(1);
    connect(m_machines, &QComboBox::activated, this, [this](int index) {
        this->session().setCurrentMachine(m_machines->itemData(index).toLongLong());
    });
    connect(m_jobs, &QComboBox::activated, this, [this](int index) {
        this->session().setCurrentJob(m_jobs->itemData(index).toLongLong());
    });
    connect(m_nozzles, &QComboBox::activated, this, [this](int index) {
        m_nozzleName = m_nozzles->itemData(index).toString();
        m_nozzleJob = this->session().currentJob();
        refresh();
    });
}

QWidget* CauseEffectPage::buildWork() {
    auto* work = new QWidget;
    auto* column = new QVBoxLayout(work);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(buildBar());
    column->addWidget(new HairLine);
    auto* row = new QHBoxLayout;
    row->setSpacing(0);
    column->addLayout(row, 1);
    row->addWidget(buildPictures(), 1);
    row->addWidget(buildSide());
    return work;
}

QWidget* CauseEffectPage::buildBar() {
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(px(12), px(5), px(12), px(5));
    row->setSpacing(px(8));
    m_freeze =
        named(new Button(tr("Freeze")), "causeEffect.bar.freeze", tr("Stop the time, or go on"));
    m_freeze->setKey(Qt::Key_F5, false);
    m_step = named(new Button(tr("Step")), "causeEffect.bar.step", tr("On by a fifth of a second"));
    m_step->setKey(Qt::Key_F6, false);
    m_factor = new SegmentedButtons;
    m_factor->setObjectName(u"causeEffect.bar.factor"_s);
    for (const int times : {1, 2, 5, 10, 20}) {
        const int index = m_factor->addChoice(u"\u00d7%1"_s.arg(times));
        m_factor->button(index)->setObjectName(u"causeEffect.bar.x%1"_s.arg(times));
        m_factor->button(index)->setAccessibleName(tr("%1 times as fast").arg(times));
    }
    m_noise = named(new Button(tr("New noise")), "causeEffect.bar.noise",
                    tr("Start again with other scatter of meter and speed"));
    m_beside = new ChoiceBox;
    m_beside->setObjectName(u"causeEffect.bar.beside"_s);
    m_beside->setAccessibleName(tr("Second run beside it"));
    m_beside->setToolTip(tr("A second run with the same noise, to compare"));
    m_beside->addItem(tr("One run"));
    m_beside->addItem(tr("Beside it: without faults"));
    m_beside->addItem(tr("Beside it: as set now"));
    m_beside->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_beside->setMinimumContentsLength(9);
    m_guess =
        named(new Button(tr("Guess first"), {}, Button::Kind::Primary), "causeEffect.bar.guess",
              tr("Hold the run and hide what comes until you reveal it"));
    m_guess->setKey(Qt::Key_F7, false);
    row->addWidget(m_freeze);
    row->addWidget(m_step);
    row->addWidget(m_factor);
    row->addWidget(m_noise);
    m_beside->setMaximumWidth(px(230));
    row->addWidget(m_beside, 1);
    row->addStretch(1);
    row->addWidget(m_guess);
    connect(m_freeze, &QAbstractButton::clicked, this, [this] { setFrozen(!m_isFrozen); });
    connect(m_step, &QAbstractButton::clicked, this, [this] { stepOnce(); });
    connect(m_factor, &SegmentedButtons::currentIndexChanged, this, &CauseEffectPage::setFactor);
    connect(m_noise, &QAbstractButton::clicked, this, [this] {
        if (!m_run) return;
        m_run->restart(m_run->seed() + 1);
        showSetup();
    });
    connect(m_beside, &QComboBox::activated, this,
            [this](int index) { setBeside(static_cast<Beside>(index)); });
    connect(m_guess, &QAbstractButton::clicked, this, [this] { setGuessing(!m_isGuessing); });
    return bar;
}

QWidget* CauseEffectPage::buildPictures() {
    auto* left = new QWidget;
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(px(12), px(6), px(12), px(8));
    column->setSpacing(px(4));
    m_taught = new RolePanel(Role::UncheckedTint);
    auto* marked = new QHBoxLayout(m_taught);
    marked->setContentsMargins(px(10), px(4), px(6), px(4));
    marked->addWidget(new IconLabel(u"unchecked"_s, Role::Unchecked, 16));
    m_taughtText = new TextLabel({}, TextSize::Body, Role::Unchecked);
    m_taughtText->setObjectName(u"causeEffect.taught.text"_s);
    marked->addWidget(m_taughtText->wrapped(), 1);
    auto* back = named(new Button(tr("Leave them")), "causeEffect.taught.leave",
                       tr("Back to what the profile knows"));
    marked->addWidget(back);
    connect(back, &QAbstractButton::clicked, this, [this] {
        m_taughtFor = 0;
        refresh();
    });
    column->addWidget(m_taught);
    m_why = new TextLabel({}, TextSize::Lead);
    m_why->setObjectName(u"causeEffect.why"_s);
    m_why->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_why->wrapped();
    auto* why = scrolling(m_why);
    why->setFixedHeight(3 * QFontMetrics(textFont(TextSize::Lead)).lineSpacing() + px(2));
    column->addWidget(why);
    column->addWidget(buildStack(), 1);
    m_boom = new SectionStrip;
    m_boom->setObjectName(u"causeEffect.boom"_s);
    m_boom->setToolTip(
        tr("What each section gets of what it needs. Click a section to switch it."));
    column->addWidget(m_boom);
    column->addLayout(buildFoot());
    connect(m_pictureChoice, &SegmentedButtons::currentIndexChanged, this, [this](int index) {
        m_pictures->setCurrentIndex(index);
        showWords();
    });
    connect(m_boom, &SectionStrip::toggled, this, [this](int section) {
        if (!m_run) return;
        Levers levers = m_run->levers();
        auto isOn = levers.isOn.begin() + section;
        *isOn = !*isOn;
        takeLevers(levers, *isOn ? tr("section %1 on").arg(section + 1)
                                 : tr("section %1 off").arg(section + 1));
    });
    return left;
}

QWidget* CauseEffectPage::buildStack() {
    m_rate = new RateStrip;
    m_rate->setObjectName(u"causeEffect.chart.rate"_s);
    m_pressure = new PressureStrip;
    m_pressure->setObjectName(u"causeEffect.chart.pressure"_s);
    m_point = new PointChart;
    m_point->setObjectName(u"causeEffect.chart.point"_s);
    m_circuit = new CircuitView;
    m_circuit->setObjectName(u"causeEffect.circuit"_s);
    m_pictures = new QStackedWidget;
    auto* traces = new QWidget;
    auto* rows = new QVBoxLayout(traces);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(px(2));
    rows->addWidget(m_rate, 6);
    auto* pair = new QHBoxLayout;
    pair->setSpacing(px(6));
    pair->addWidget(m_pressure, 1);
    pair->addWidget(m_point, 1);
    rows->addLayout(pair, 5);
    m_pictures->addWidget(traces);
    m_pictures->addWidget(m_circuit);
    return m_pictures;
}

QLayout* CauseEffectPage::buildFoot() {
    m_pictureChoice = new SegmentedButtons;
    m_pictureChoice->setObjectName(u"causeEffect.pictures"_s);
    m_pictureChoice->addChoice(tr("Traces"), QKeySequence(Qt::ALT | Qt::Key_1));
    m_pictureChoice->addChoice(tr("Circuit"), QKeySequence(Qt::ALT | Qt::Key_2));
    m_pictureChoice->button(0)->setObjectName(u"causeEffect.pictures.traces"_s);
    m_pictureChoice->button(1)->setObjectName(u"causeEffect.pictures.circuit"_s);
    auto* foot = new QHBoxLayout;
    foot->setSpacing(px(10));
    foot->addWidget(m_pictureChoice);
    m_caution = new CautionBox;
    m_caution->setObjectName(u"causeEffect.caution"_s);
    m_caution->setTexts(
        {cautionText(u"C27"_s) + u' ' +
         tr("It is for teaching: how strongly a rate swings here is no prediction.")},
        true);
    foot->addWidget(m_caution, 1);
    return foot;
}

QWidget* CauseEffectPage::buildSide() {
    auto* side = new RolePanel(Role::Surface);
    side->setEdges(Qt::LeftEdge);
    side->setFixedWidth(px(316));
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(px(14), px(8), px(10), px(8));
    column->setSpacing(px(6));
    m_read = new ReadOuts;
    column->addWidget(m_read);
    column->addWidget(new HairLine);
    m_verdict = new TextLabel({}, TextSize::Title, Role::Ink, true);
    m_verdict->setObjectName(u"causeEffect.verdict"_s);
    m_verdictText = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_verdictText->setObjectName(u"causeEffect.verdict.text"_s);
    m_verdictText->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_verdictText->wrapped();
    column->addWidget(m_verdict);
    auto* text = scrolling(m_verdictText);
    text->setFixedHeight(4 * QFontMetrics(textFont(TextSize::Small)).lineSpacing() + px(2));
    column->addWidget(text);
    auto* row = new QHBoxLayout;
    m_sideChoice = new SegmentedButtons;
    m_sideChoice->setObjectName(u"causeEffect.side"_s);
    m_sideChoice->addChoice(tr("Levers"), QKeySequence(Qt::ALT | Qt::Key_3));
    m_sideChoice->addChoice(tr("Faults"), QKeySequence(Qt::ALT | Qt::Key_4));
    m_sideChoice->button(0)->setObjectName(u"causeEffect.side.levers"_s);
    m_sideChoice->button(1)->setObjectName(u"causeEffect.side.faults"_s);
    row->addWidget(m_sideChoice);
    row->addStretch(1);
    auto* reset = new IconButton(tr("All levers and faults as entered"), u"undo"_s);
    reset->setObjectName(u"causeEffect.side.reset"_s);
    connect(reset, &QAbstractButton::clicked, this, [this] { resetAll(); });
    row->addWidget(reset);
    column->addLayout(row);
    m_levers = new LeverPanel;
    m_faults = new FaultPanel(session().sentences());
    m_side = new QStackedWidget;
    auto* holder = new QWidget;
    auto* inner = new QVBoxLayout(holder);
    inner->setContentsMargins(0, 0, px(6), 0);
    inner->addWidget(m_levers);
    m_side->addWidget(scrolling(holder));
    m_side->addWidget(scrolling(m_faults));
    column->addWidget(m_side, 1);
    connect(m_sideChoice, &SegmentedButtons::currentIndexChanged, m_side,
            &QStackedWidget::setCurrentIndex);
    connect(m_levers, &LeverPanel::changed, this, &CauseEffectPage::takeLevers);
    connect(m_levers, &LeverPanel::scriptChosen, this,
            [this](Script script, double share, const QString& words) {
                if (!m_run) return;
                m_run->setScript(script, share, words.toStdString());
                m_levers->setLevers(*m_run);
                showSetup();
            });
    connect(m_faults, &FaultPanel::changed, this,
            [this](const std::vector<Fault>& faults, const QString& words) {
                if (!m_run) return;
                Levers levers = m_run->levers();
                levers.faults = faults;
                takeLevers(levers, words);
            });
    return side;
}

QWidget* CauseEffectPage::buildMessage() {
    auto* empty = new QWidget;
    auto* column = new QVBoxLayout(empty);
    column->setContentsMargins(px(40), 0, px(40), 0);
    column->addStretch(2);
    m_messageText = new TextLabel({}, TextSize::Lead);
    m_messageText->setObjectName(u"causeEffect.message.text"_s);
    m_messageText->setAlignment(Qt::AlignCenter);
    column->addWidget(m_messageText->wrapped());
    column->addSpacing(px(14));
    auto* row = new QHBoxLayout;
    row->addStretch();
    m_messageButton = new Button({}, {}, Button::Kind::Primary);
    m_messageButton->setObjectName(u"causeEffect.message.act"_s);
    m_teachButton = new Button(tr("Use teaching values"));
    m_teachButton->setObjectName(u"causeEffect.message.teach"_s);
    m_teachButton->setToolTip(
        tr("Assume what is not known, here alone; the profile stays as it is"));
    m_demoButton = new Button(tr("Try the demo season"), u"season"_s);
    m_demoButton->setObjectName(u"causeEffect.message.demo"_s);
    for (Button* button : {m_messageButton, m_teachButton, m_demoButton}) row->addWidget(button);
    row->addStretch();
    column->addLayout(row);
    column->addStretch(3);
    connect(m_messageButton, &QAbstractButton::clicked, this,
            [this] { Q_EMIT goTo(m_messageTarget); });
    connect(m_teachButton, &QAbstractButton::clicked, this, [this] {
        m_taughtFor = this->session().currentMachine();
        refresh();
    });
    connect(m_demoButton, &QAbstractButton::clicked, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    return empty;
}

void CauseEffectPage::addActions() {
    const auto add = [this](const char* id, const QString& text, const QKeySequence& key,
                            std::function<void()> act) {
        return addPageAction(this, {QLatin1String(id), text, u"cause"_s, key, {}}, std::move(act));
    };
    add("cause_effect.freeze", tr("&Freeze or go on"), Qt::Key_F5,
        [this] { setFrozen(!m_isFrozen); });
    add("cause_effect.step", tr("&Step"), Qt::Key_F6, [this] { stepOnce(); });
    add("cause_effect.guess", tr("&Guess first, or reveal"), Qt::Key_F7,
        [this] { setGuessing(!m_isGuessing); });
    add("cause_effect.reset", tr("&All levers and faults as entered"),
        QKeySequence(Qt::CTRL | Qt::Key_Backspace), [this] { resetAll(); });
    m_calmAction = add("cause_effect.calm", tr("&Calm pictures (20 a second)"), {},
                       [this] { setCalm(m_calmAction->isChecked()); });
    m_calmAction->setCheckable(true);
}

}  // namespace bw
