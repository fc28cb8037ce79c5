// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/wall_parts.h"

#include <QAction>
#include <QPainter>
#include <QResizeEvent>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

namespace bw {

using namespace Qt::StringLiterals;

int wallBody(const QSize& picture) {
    // The small step of the type is then 24 px, and the sentence 43.
    constexpr double kLeast = 26, kWidth = 1024, kHeight = 720;
    const double scale = std::min(picture.width() / kWidth, picture.height() / kHeight);
    return static_cast<int>(std::lround(kLeast * std::max(1.0, scale)));
}

WallSentence::WallSentence(const QString& objectName, QWidget* parent)
    : QWidget(parent),
      m_text(new TextLabel({}, TextSize::Verdict, Role::Ink, true)),
      m_rule(new HairLine(Qt::Horizontal, Role::Ok)) {
    m_text->setObjectName(objectName);
    m_rule->setThickness(px(2));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(3));
    column->addWidget(m_text->wrapped());
    column->addWidget(m_rule);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void WallSentence::setText(const QString& text, Role rule) {
    m_text->setText(text);
    m_rule->setRole(rule);
}

WallReadOut::WallReadOut(const QString& caption, const QString& objectName, QWidget* parent)
    : QWidget(parent),
      m_caption(new TextLabel(caption, TextSize::Body, Role::Ink, true)),
      m_figure(new TextLabel({}, TextSize::Wall, Role::Ink, true)),
      m_unit(new TextLabel({}, TextSize::Title, Role::Quiet)) {
    m_caption->setObjectName(objectName + u"Caption"_s);
    m_figure->setObjectName(objectName);
    m_unit->setObjectName(objectName + u"Unit"_s);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_caption);
    auto* row = new QHBoxLayout;
    row->setSpacing(px(4));
    // Without the room that the font keeps above its figures.
    const QFontMetrics metrics(m_figure->font());
    m_figure->setFixedHeight(metrics.capHeight() + 2 * metrics.descent());
    m_unit->setContentsMargins(0, 0, 0, metrics.descent() - px(2));
    row->addWidget(m_figure, 0, Qt::AlignBottom);
    row->addWidget(m_unit, 0, Qt::AlignBottom);
    row->addStretch(1);
    column->addLayout(row);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void WallReadOut::set(const QString& figure, const QString& unit, Role role) {
    m_figure->setText(figure);
    m_figure->setRole(role);
    m_unit->setText(unit);
    describe();
}

void WallReadOut::setCaption(const QString& caption) {
    m_caption->setText(caption);
    describe();
}

void WallReadOut::describe() {
    m_figure->setAccessibleName(m_caption->text() + u": "_s + m_figure->text() + u' ' +
                                m_unit->text());
}

KeyRow::KeyRow(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

void KeyRow::setActions(const QList<QAction*>& actions) {
    m_keys.clear();
    QStringList all;
    for (const QAction* action : actions) {
        const QVariant own = action->property(kKeyCap);
        const QString cap =
            own.isValid() ? own.toString() : action->shortcut().toString(QKeySequence::NativeText);
        if (cap.isEmpty() || !action->isVisible() || !action->isEnabled()) continue;
        m_keys.append({cap, action->iconText(), action->isChecked()});
        all.append(cap + u' ' + action->iconText());
    }
    setAccessibleName(all.join(u", "_s));
    updateGeometry();
    update();
}

int KeyRow::lay(QPainter* painter, int width) const {
    const QFontMetrics metrics(textFont(TextSize::Small));
    const QFontMetrics bold(textFont(TextSize::Small, true));
    const int height = metrics.height() + px(4), gap = px(5);
    int x = 0, y = 0;
    for (const Key& key : m_keys) {
        const int cap = std::max(height, bold.horizontalAdvance(key.cap) + px(8));
        const int words = bold.horizontalAdvance(key.words);
        if (x > 0 && x + cap + gap + words > width) {
            x = 0;
            y += height + px(4);
        }
        if (painter) {
            const QRectF box(x + 1.0, y + 1.0, cap - 2.0, height - 2.0);
            painter->setPen(QPen(color(Role::Ink), 2));
            painter->setBrush(color(key.isOn ? Role::Accent : Role::Raised));
            painter->drawRoundedRect(box, 4, 4);
            painter->setFont(textFont(TextSize::Small, true));
            painter->setPen(color(key.isOn ? Role::OnAccent : Role::Ink));
            painter->drawText(box, Qt::AlignCenter, key.cap);
            painter->setFont(textFont(TextSize::Small, key.isOn));
            painter->setPen(color(Role::Ink));
            painter->drawText(QRect(x + cap + gap, y, words + gap, height),
                              Qt::AlignLeft | Qt::AlignVCenter, key.words);
        }
        x += cap + gap + words + px(12);
    }
    return y + height;
}

int KeyRow::heightForWidth(int width) const {
    return lay(nullptr, width);
}
QSize KeyRow::sizeHint() const {
    return {px(300), heightForWidth(width() > px(100) ? width() : px(400))};
}
QSize KeyRow::minimumSizeHint() const {
    return {px(100), width() > px(100) ? heightForWidth(width()) : px(20)};
}

void KeyRow::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void KeyRow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    lay(&painter, width());
}

}  // namespace bw
