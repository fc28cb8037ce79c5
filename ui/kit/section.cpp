// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/section.h"

#include <QAbstractButton>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

class Section::Header : public QAbstractButton {
  public:
    explicit Header(const QString& title, QWidget* parent) : QAbstractButton(parent) {
        setText(title);
        setCheckable(true);
        setChecked(true);
        setFocusPolicy(Qt::StrongFocus);
        setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    }
    QString summary;
    QSize sizeHint() const override { return {px(200), px(29)}; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.fillRect(0, 0, width(), 1, color(Role::Line));
        paintIcon(painter, QRectF(-px(3), (height() - px(16)) / 2.0, px(16), px(16)),
                  isChecked() ? QStringLiteral("down") : QStringLiteral("right"), color(Role::Ink));
        painter.setFont(textFont(TextSize::Body, true));
        painter.setPen(color(Role::Ink));
        const int titleWidth = painter.fontMetrics().horizontalAdvance(text());
        painter.drawText(rect().adjusted(px(18), 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                         text());
        painter.setFont(textFont(TextSize::Small));
        painter.setPen(color(Role::Quiet));
        const QRect rest = rect().adjusted(px(26) + titleWidth, 0, 0, 0);
        painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft,
                         painter.fontMetrics().elidedText(summary, Qt::ElideRight, rest.width()));
        if (!hasFocus()) return;
        painter.setPen(QPen(color(Role::Focus), 2));
        painter.drawRoundedRect(rect().adjusted(1, 2, -1, -1), 3, 3);
    }
};

Section::Section(const QString& title, QWidget* parent)
    : QWidget(parent),
      m_header(new Header(title, this)),
      m_content(new QWidget),
      m_body(new QVBoxLayout(m_content)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_header);
    column->addWidget(m_content);
    m_body->setContentsMargins(0, 0, 0, px(8));
    m_body->setSpacing(px(4));
    m_header->setAccessibleName(title);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    connect(m_header, &QAbstractButton::toggled, this, [this](bool open) {
        m_content->setVisible(open);
        Q_EMIT foldedChanged(!open);
    });
}

Section::Header* Section::headerWidget() const {
    return static_cast<Header*>(m_header);
}

void Section::setTitle(const QString& title) {
    m_header->setText(title);
    m_header->setAccessibleName(title);
    m_header->update();
}

void Section::setSummary(const QString& summary) {
    headerWidget()->summary = summary;
    m_header->setAccessibleDescription(summary);
    m_header->update();
}

void Section::setFolded(bool folded) {
    m_header->setChecked(!folded);
}
bool Section::isFolded() const {
    return !m_header->isChecked();
}

}  // namespace bw
