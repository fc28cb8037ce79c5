// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/messages.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
int textLeft() {
    return px(46);
}
int padding() {
    return px(8);
}
}  // namespace

CautionBox::CautionBox(QWidget* parent)
    : QWidget(parent), m_label(new TextLabel({}, TextSize::Small, Role::Ink, false, this)) {
    m_label->setTextFormat(Qt::RichText);
    m_label->setWordWrap(true);
    m_label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&theme(), &Theme::changed, this, &CautionBox::write);
}

void CautionBox::setTexts(const QStringList& texts, bool runOn) {
    m_texts = texts;
    m_runOn = runOn;
    write();
    setAccessibleName(text());
    // Without a parent, showing would make a window of it.
    if (texts.isEmpty() || parentWidget()) setVisible(!texts.isEmpty());
    updateGeometry();
}

void CautionBox::write() {
    const QString word =
        u"<b><font color=\"%1\">%2</font></b> "_s.arg(color(Role::Caution).name(), tr("Caution."));
    m_label->setText(word + m_texts.join(m_runOn ? u" "_s : u"<br/>"_s));
}

QString CautionBox::text() const {
    QString all = tr("Caution.") + u' ' + m_texts.join(u' ');
    return all.remove(u"<b>"_s).remove(u"</b>"_s);
}

int CautionBox::heightForWidth(int width) const {
    return std::max(px(36), m_label->heightForWidth(std::max(40, width - textLeft() - padding())) +
                                2 * padding());
}

QSize CautionBox::sizeHint() const {
    return {px(400), heightForWidth(std::max(px(200), width()))};
}
QSize CautionBox::minimumSizeHint() const {
    return {px(160), width() > px(160) ? heightForWidth(width()) : px(36)};
}

void CautionBox::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    m_label->setGeometry(textLeft(), padding(), width() - textLeft() - padding(),
                         height() - 2 * padding());
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void CautionBox::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), color(Role::CautionFill));
    painter.fillRect(0, 0, 5, height(), color(Role::CautionBar));
    const double side = px(22);
    paintIcon(painter, QRectF(px(15), padding() - px(2), side, side), u"caution"_s,
              color(Role::Caution));
}

NoticeBar::NoticeBar(QWidget* parent) : QWidget(parent), m_rows(new QVBoxLayout(this)) {
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setSpacing(1);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    hide();
}

void NoticeBar::add(const QString& text, bool isError) {
    constexpr int kMost = 4;
    while (m_rows->count() >= kMost) delete m_rows->itemAt(m_rows->count() - 1)->widget();
    auto* row = new RolePanel(isError ? Role::LimitTint : Role::AccentTint);
    row->setEdges(Qt::BottomEdge);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(px(16), px(4), px(8), px(4));
    line->setSpacing(px(10));
    line->addWidget(
        new IconLabel(isError ? u"caution"_s : u"check"_s, isError ? Role::Limit : Role::Ink, 18),
        0, Qt::AlignTop);
    auto* label = new TextLabel(text, TextSize::Body, Role::Ink);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line->addWidget(label->wrapped(), 1);
    auto* dismiss = new IconButton(tr("Dismiss this message"), u"close"_s);
    line->addWidget(dismiss, 0, Qt::AlignTop);
    connect(dismiss, &QAbstractButton::clicked, this, [this, row] {
        row->hide();
        row->deleteLater();
        m_rows->removeWidget(row);
        setVisible(m_rows->count() > 0);
    });
    row->setProperty("bw.text", text);
    m_rows->insertWidget(0, row);
    show();
}

void NoticeBar::clear() {
    while (auto* item = m_rows->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    hide();
}

QStringList NoticeBar::texts() const {
    QStringList all;
    for (int i = 0; i < m_rows->count(); ++i)
        all.append(m_rows->itemAt(i)->widget()->property("bw.text").toString());
    return all;
}

EmptyPage::EmptyPage(const QString& sentence, const QString& button, const QString& second,
                     QWidget* parent)
    : QWidget(parent) {
    auto* column = new QVBoxLayout(this);
    column->addStretch(2);
    auto* words = new TextLabel(sentence, TextSize::Lead, Role::Ink);
    words->setAlignment(Qt::AlignCenter);
    column->addWidget(words->wrapped());
    column->addSpacing(px(12));
    auto* row = new QHBoxLayout;
    row->addStretch();
    auto* first = new Button(button, {}, Button::Kind::Primary);
    row->addWidget(first);
    connect(first, &QAbstractButton::clicked, this, &EmptyPage::acted);
    if (!second.isEmpty()) {
        auto* other = new Button(second);
        row->addWidget(other);
        connect(other, &QAbstractButton::clicked, this, &EmptyPage::secondActed);
    }
    row->addStretch();
    column->addLayout(row);
    column->addStretch(3);
}

}  // namespace bw
