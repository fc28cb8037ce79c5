// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/cursor_strip.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/window/advice.h"
#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/other_nozzles.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

enum Out { kSpeed, kSensor, kNozzle, kOneNozzle, kBoom, kRate, kOnTime };

}  // namespace

CursorStrip::CursorStrip(QWidget* parent) : QWidget(parent) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(px(15), px(6), px(12), px(6));
    all->setSpacing(px(3));
    m_top = new QBoxLayout(QBoxLayout::LeftToRight);
    m_top->setSpacing(px(14));
    all->addLayout(m_top);
    m_row = new QHBoxLayout;
    m_row->setSpacing(px(14));
    m_top->addLayout(m_row);
    m_outs = {
        addReadOut(u"speed"_s, tr("At the cursor")), addReadOut(u"sensor"_s, tr("Boom sensor")),
        addReadOut(u"nozzle"_s, tr("Nozzle")),       addReadOut(u"oneNozzle"_s, tr("One nozzle")),
        addReadOut(u"boom"_s, tr("Boom")),           addReadOut(u"rate"_s, tr("Rate, as planned")),
        addReadOut(u"onTime"_s, tr("On-time"))};
    for (const ReadOut& out : m_outs) m_row->addWidget(out.box, 0, Qt::AlignLeft | Qt::AlignTop);
    m_row->addStretch(1);
    auto* side = new QVBoxLayout;
    side->setSpacing(px(2));
    m_top->addLayout(side, 1);
    auto* drops = new QHBoxLayout;
    drops->setSpacing(px(6));
    m_dropletWords = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_dropletWords->setObjectName(u"speedWindow.cursor.droplets"_s);
    m_droplets = new DropletChips;
    drops->addWidget(m_droplets);
    drops->addWidget(m_dropletWords, 1);
    side->addLayout(drops);
    m_others = new OtherNozzles;
    m_others->setObjectName(u"speedWindow.cursor.others"_s);
    side->addWidget(m_others);
    m_words = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_words->setObjectName(u"speedWindow.cursor.words"_s);
    m_words->setWordWrap(true);
    m_words->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    setWordLines(2);
    all->addWidget(m_words);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

QSize CursorStrip::minimumSizeHint() const {
    return {px(360), QWidget::minimumSizeHint().height()};
}

CursorStrip::ReadOut CursorStrip::addReadOut(const QString& name, const QString& caption) {
    ReadOut out{new QWidget, new TextLabel(caption, TextSize::Small, Role::Quiet),
                new TextLabel({}, TextSize::ReadOut, Role::Ink, true),
                new TextLabel({}, TextSize::Small, Role::Quiet)};
    auto* column = new QVBoxLayout(out.box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(out.caption);
    auto* figures = new QHBoxLayout;
    figures->setSpacing(px(5));
    figures->addWidget(out.figure);
    figures->addWidget(out.unit, 0, Qt::AlignBottom);
    figures->addStretch(1);
    column->addLayout(figures);
    out.figure->setObjectName(u"speedWindow.cursor."_s + name);
    out.unit->setObjectName(u"speedWindow.cursor."_s + name + u"Unit"_s);
    return out;
}

void CursorStrip::fill(ReadOut& out, const QString& figure, const QString& unit) {
    out.figure->setText(figure);
    out.unit->setText(unit);
    out.figure->setAccessibleName(out.caption->text() + u": "_s + figure + u' ' + unit);
}

void CursorStrip::show(const WindowStudy& study, const Sentences& sentences, Speed speed) {
    const OperatingPoint point = study.model().at(speed);
    const NumberStyle& style = study.style;
    fill(m_outs[kSpeed], figure(speed, style), unitOf<Speed>(style));
    fill(m_outs[kSensor], figure(point.sensorPressure, style), unitOf<Pressure>(style));
    fill(m_outs[kNozzle], figure(point.nozzlePressure, style), unitOf<Pressure>(style));
    fill(m_outs[kOneNozzle], figure(point.nozzleFlow, style), unitOf<Flow>(style));
    fill(m_outs[kBoom], figure(point.boomFlow, style), unitOf<Flow>(style));
    showRate(study, point);
    const auto share = onTimeShare(study.model(), point.boomFlow);
    m_outs[kOnTime].box->setVisible(share.has_value());
    if (share) fill(m_outs[kOnTime], plainNumber(100.0 * *share, 0, style), u"%"_s);
    arrange();
    showDroplets(point);
    showOthers(study, speed);
    showWords(study, sentences, point);
}

void CursorStrip::showRate(const WindowStudy& study, const OperatingPoint& point) {
    const bool off = doseFact(point.rateRatio, study.style.units).has_value();
    m_outs[kRate].caption->setText(
        off ? tr("Rate, %1 of planned").arg(percent(point.rateRatio, study.style))
            : tr("Rate, as planned"));
    fill(m_outs[kRate], figure(point.rate, study.style), unitOf<AreaRate>(study.style));
    m_outs[kRate].figure->setRole(off ? Role::Limit : Role::Ink);
}

void CursorStrip::showDroplets(const OperatingPoint& point) {
    m_droplets->setVisible(point.droplets.has_value());
    if (point.droplets) m_droplets->setCategories({*point.droplets});
    QString words = point.droplets ? tr("drops, as entered") : tr("drops: none listed here");
    if (point.driftPercent)
        words += u", "_s + tr("drift class %1 %").arg(static_cast<int>(*point.driftPercent));
    m_dropletWords->setText(words);
    m_dropletWords->setAccessibleName(
        (point.droplets ? letters(*point.droplets) + u' ' : QString()) + words);
}

void CursorStrip::showOthers(const WindowStudy& study, Speed speed) {
    // The sets aboard first: those are at hand in the field.
    std::vector<OtherNozzles::Entry> entries;
    for (const bool isAboard : {true, false}) {
        for (std::size_t i = 0; i < study.nozzles.size(); ++i) {
            const auto& n = study.nozzles[i];
            if (i == study.inHand || !n.model || (n.position > 0) != isAboard) continue;
            const OperatingPoint p = n.model->at(speed);
            QString name = qs(n.nozzle.name);
            if (isAboard) name += u" · "_s + tr("position %1").arg(n.position);
            entries.push_back({qs(n.nozzle.sizeCode), name, shown(p.sensorPressure, study.style),
                               p.droplets, doseFact(p.rateRatio, study.style.units).has_value()});
        }
    }
    m_others->setEntries(std::move(entries));
}

void CursorStrip::showWords(const WindowStudy& study, const Sentences& sentences,
                            const OperatingPoint& point) {
    // Off the rate, what it makes of the dose comes first: it may not be cut off.
    const auto dose = doseFact(point.rateRatio, study.style.units);
    QString words = dose ? qs(sentences.of(*dose, study.style)) + u' ' : QString();
    words += qs(sentences.of(pointFact(study.model(), point), study.style));
    m_words->setText(words);
    m_words->setToolTip(words);
    m_words->setRole(dose ? Role::Caution : Role::Quiet);
}

void CursorStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(color(Role::Line), 1));
    painter.setBrush(color(Role::Raised));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.fillRect(0, 0, px(5), height(), color(Role::Focus));
}

void CursorStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

/// The droplets stand beside the read-outs where there is room for the widest figures of all, else
/// below. Never decided by the figures of the moment: nothing may jump while the cursor is dragged.
void CursorStrip::arrange() {
    int row = px(190);
    for (auto& out : m_outs) {
        const int least = widest(out);
        out.box->setMinimumWidth(least);
        if (!out.box->isHidden()) row += least + m_row->spacing();
    }
    const bool isNarrow = contentsRect().width() < row;
    if (isNarrow == m_isNarrow) return;
    m_isNarrow = isNarrow;
    m_top->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_top->setSpacing(isNarrow ? px(4) : px(14));
    setWordLines(isNarrow ? 3 : 2);
}

/// How wide a read-out gets with the longest caption and figure it may show.
int CursorStrip::widest(const ReadOut& out) const {
    const QFontMetrics caption(out.caption->font()), figure(out.figure->font());
    const QString longest =
        &out == &m_outs[kRate] ? tr("Rate, %1 of planned").arg(u"188 %"_s) : out.caption->text();
    return std::max(caption.horizontalAdvance(longest),
                    figure.horizontalAdvance(u"0.888"_s) + px(5) + out.unit->sizeHint().width());
}

/// So many lines are kept free for the words, so that nothing jumps while the cursor is dragged.
void CursorStrip::setWordLines(int lines) {
    m_words->setFixedHeight(lines * QFontMetrics(m_words->font()).lineSpacing() + px(2));
}

}  // namespace bw
