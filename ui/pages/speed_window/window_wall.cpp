// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/window_wall.h"

#include <QActionGroup>
#include <QBoxLayout>
#include <QScrollArea>
#include <QStackedWidget>
#include <algorithm>

#include "core/window/advice.h"
#include "ui/kit/actions.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chips.h"
#include "ui/kit/messages.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/wall_parts.h"
#include "ui/pages/speed_window/duty_view.h"
#include "ui/pages/speed_window/pressure_view.h"
#include "ui/pages/speed_window/rate_view.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Narrower than this (at a body of 12) the read-outs go under the chart.
constexpr double kBesideFrom = 520;

Role ruleOf(Tone tone) {
    return tone == Tone::Ok ? Role::Ok : tone == Tone::Limit ? Role::Limit : Role::Unchecked;
}

}  // namespace

WindowWall::WindowWall(const Sentences& sentences, QWidget* parent)
    : QWidget(parent),
      m_sentences(sentences),
      m_sentence(new WallSentence(u"speedWindow.wall.verdict"_s)),
      m_body(new QBoxLayout(QBoxLayout::LeftToRight)),
      m_caution(new CautionBox) {
    setObjectName(u"speedWindow.wall"_s);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(4));
    column->addWidget(m_sentence);
    m_body->setSpacing(px(8));
    m_body->addWidget(buildViews(), 1);
    m_body->addWidget(buildReadOuts());
    column->addLayout(m_body, 1);
    m_caution->setObjectName(u"speedWindow.wall.caution"_s);
    column->addWidget(m_caution);
    addActions();
}

QWidget* WindowWall::buildViews() {
    m_views = new QStackedWidget;
    m_first = new QStackedWidget;
    m_pressure = new PressureView;
    m_pressure->setObjectName(u"speedWindow.wall.pressureChart"_s);
    m_duty = new DutyView;
    m_duty->setObjectName(u"speedWindow.wall.dutyChart"_s);
    m_first->addWidget(m_pressure);
    m_first->addWidget(m_duty);
    m_rate = new RateView;
    m_rate->setObjectName(u"speedWindow.wall.rateChart"_s);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_stops = new EvidenceList;
    m_stops->setObjectName(u"speedWindow.wall.stops"_s);
    auto* paper = new RolePanel(Role::Surface);
    auto* inside = new QVBoxLayout(paper);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->addWidget(m_stops);
    scroll->setWidget(paper);
    m_views->addWidget(m_first);
    m_views->addWidget(m_rate);
    m_views->addWidget(scroll);
    for (ChartPanel* chart : std::initializer_list<ChartPanel*>{m_pressure, m_duty, m_rate})
        connect(chart, &ChartPanel::cursorMoved, this, &WindowWall::cursorMoved);
    return m_views;
}

QWidget* WindowWall::buildReadOuts() {
    m_readOuts = new QWidget;
    m_readOutBox = new QBoxLayout(QBoxLayout::TopToBottom, m_readOuts);
    m_readOutBox->setContentsMargins(0, 0, 0, 0);
    m_readOutBox->setSpacing(px(6));
    m_speed = new WallReadOut(tr("Speed"), u"speedWindow.wall.speed"_s);
    m_middle = new WallReadOut({}, u"speedWindow.wall.pressure"_s);
    m_rateOut = new WallReadOut({}, u"speedWindow.wall.rate"_s);
    for (WallReadOut* out : {m_speed, m_middle, m_rateOut}) m_readOutBox->addWidget(out);
    m_uncheckedRow = new QWidget;
    auto* row = new QHBoxLayout(m_uncheckedRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(4));
    m_unchecked = new TextLabel({}, TextSize::Body, Role::Unchecked, true);
    m_unchecked->setObjectName(u"speedWindow.wall.unchecked"_s);
    row->addWidget(new IconLabel(u"unchecked"_s, Role::Unchecked, 16));
    row->addWidget(m_unchecked, 1);
    m_readOutBox->addWidget(m_uncheckedRow, 0, Qt::AlignTop);
    m_readOutBox->addStretch(1);
    return m_readOuts;
}

void WindowWall::addActions() {
    auto* group = new QActionGroup(this);
    const auto add = [&](const char* id, const QString& text, const QString& words,
                         const QKeySequence& key, std::function<void()> act) {
        QAction* action = addPageAction(
            this, {u"speed_window.wall."_s + QLatin1StringView(id), text, {}, key, {}},
            std::move(act));
        action->setIconText(words);
        return action;
    };
    const auto addView = [&](const char* id, const QString& text, const QString& words, View view) {
        QAction* action = add(id, text, words, QKeySequence(QString::number(view + 1)),
                              [this, view] { showView(view); });
        action->setCheckable(true);
        group->addAction(action);
        m_viewActions.push_back(action);
    };
    addView("pressure", tr("Pressure against speed"), tr("pressure"), Pressure);
    addView("rate", tr("Rate against speed"), tr("rate"), Rate);
    addView("stops", tr("What stops it"), tr("what stops it"), Stops);
    add("slower", tr("Slower"), tr("speed"), Qt::Key_Left, [this] {
        Q_EMIT cursorStepped(-1);
    })->setProperty(KeyRow::kKeyCap, u"← →"_s);
    add("faster", tr("Faster"), {}, Qt::Key_Right, [this] {
        Q_EMIT cursorStepped(1);
    })->setProperty(KeyRow::kKeyCap, QString());
    add("job", tr("Next job"), tr("job"), Qt::Key_J, [this] { Q_EMIT nextJobWanted(); });
    add("nozzle", tr("Next nozzle"), tr("nozzle"), Qt::Key_N,
        [this] { Q_EMIT nextNozzleWanted(); });
    m_viewActions.front()->setChecked(true);
}

void WindowWall::setStudy(const WindowStudy& study, const VerdictText& verdict) {
    m_study = study;
    // One idea: the nozzle in hand alone, by its size.
    m_study.nozzles = {study.hand()};
    m_study.inHand = 0;
    m_study.isOnWall = true;
    m_study.nozzles.front().nozzle.family.clear();
    m_study.nozzles.front().nozzle.name = study.hand().nozzle.sizeCode;
    m_views->show();
    m_sentence->setText(verdict.title, ruleOf(verdict.tone));
    const QString summary = verdict.title + u". "_s + verdict.text;
    m_pressure->setStudy(&m_study, summary);
    m_duty->setStudy(&m_study, summary);
    m_rate->setStudy(&m_study, summary);
    m_first->setCurrentWidget(m_study.isPulsed() ? static_cast<QWidget*>(m_duty) : m_pressure);
    m_viewActions.front()->setIconText(m_study.isPulsed() ? tr("on-time") : tr("pressure"));
    auto sections = stopsOf(m_study, m_sentences);
    const auto gaps = static_cast<int>(whatIsUnchecked(m_study.model(), m_study.window()).size());
    m_unchecked->setText(tr("Not checked: %1").arg(gaps));
    m_uncheckedRow->setVisible(gaps > 0);
    EvidenceSection stands{tr("Stands on"), {}};
    EvidenceRow row;
    row.text = verdict.text;
    stands.rows.append(row);
    if (!verdict.text.isEmpty()) sections.append(stands);
    m_stops->setSections(sections);
}

void WindowWall::setEmpty(const QString& sentence) {
    m_study = {};
    m_pressure->setStudy(nullptr, {});
    m_duty->setStudy(nullptr, {});
    m_rate->setStudy(nullptr, {});
    m_stops->setSections({});
    m_views->hide();
    m_readOuts->hide();
    m_caution->setTexts({});
    m_sentence->setText(sentence, Role::Limit);
}

void WindowWall::showView(int view) {
    m_viewActions[static_cast<std::size_t>(view)]->setChecked(true);
    m_views->setCurrentIndex(view);
    if (m_study.state == WindowStudy::State::Ready) showCursor(m_cursor);
}

void WindowWall::showCursor(Speed speed) {
    m_cursor = speed;
    if (m_study.state != WindowStudy::State::Ready) return;
    m_pressure->showCursor(speed);
    m_duty->showCursor(speed);
    m_rate->showCursor(speed);
    const OperatingPoint point = m_study.model().at(speed);
    showReadOuts(point);
    showCautions(point);
}

void WindowWall::showReadOuts(const OperatingPoint& point) {
    const NumberStyle& style = m_study.style;
    m_readOuts->setVisible(m_views->currentIndex() != Stops);
    m_speed->set(figure(m_cursor, style), unitOf<bw::Speed>(style));
    const auto share = onTimeShare(m_study.model(), point.boomFlow);
    m_middle->setCaption(share ? tr("On-time") : tr("Boom pressure"));
    if (share)
        m_middle->set(plainNumber(100.0 * *share, 0, style), u"%"_s);
    else
        m_middle->set(figure(point.sensorPressure, style), unitOf<bw::Pressure>(style));
    const bool off = doseFact(point.rateRatio, style.units).has_value();
    m_rateOut->setCaption(off ? tr("Rate, %1 of planned").arg(percent(point.rateRatio, style))
                              : tr("Rate, as planned"));
    m_rateOut->set(figure(point.rate, style), unitOf<AreaRate>(style),
                   off ? Role::Limit : Role::Ink);
}

/// What belongs to the picture: the high end's always, that of a limit passed, that of a rate which
/// is off; with what stops it those of both ends.
void WindowWall::showCautions(const OperatingPoint& point) {
    const bool isStops = m_views->currentIndex() == Stops;
    const auto passed = [&](std::initializer_list<Limit> limits) {
        return std::any_of(limits.begin(), limits.end(), [&](Limit limit) {
            return std::find(point.past.begin(), point.past.end(), limit) != point.past.end();
        });
    };
    QStringList texts{cautionText(u"C19"_s)};
    if (const auto dose = doseFact(point.rateRatio, m_study.style.units); dose && !isStops)
        texts.append(qs(m_sentences.of(*dose, m_study.style)));
    const auto& window = m_study.window();
    const bool isHigh = window.high.speed && m_cursor > *window.high.speed;
    if (isStops || isHigh) texts.append(cautionText(u"C18"_s));
    if (isStops || passed({Limit::PressureFloor, Limit::NozzleMinimum}))
        texts.append(cautionText(u"C20"_s));
    m_caution->setTexts(texts, true);
}

void WindowWall::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool isBeside = width() >= px(kBesideFrom);
    m_body->setDirection(isBeside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_readOutBox->setDirection(isBeside ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

}  // namespace bw
