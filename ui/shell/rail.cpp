// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/rail.h"

#include <QButtonGroup>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

namespace {
int pipeX() {
    return px(13);
}
int fullWidth() {
    return px(160);
}
int foldedWidth() {
    return px(56);
}
}  // namespace

class Rail::Item : public QAbstractButton {
  public:
    Item(const PageEntry& entry, QWidget* parent)
        : QAbstractButton(parent),
          id(entry.id),
          m_icon(entry.icon),
          m_key(entry.key.toString(QKeySequence::NativeText)) {
        setText(entry.title);
        setCheckable(true);
        setObjectName(QStringLiteral("rail.") + entry.id);
        setAccessibleName(m_key.isEmpty() ? entry.title
                                          : entry.title + QStringLiteral(", ") + m_key);
        setToolTip(accessibleName());
        setAttribute(Qt::WA_Hover);
        setFocusPolicy(Qt::StrongFocus);
    }
    const QString id;
    bool isFolded = false;
    QSize sizeHint() const override { return {isFolded ? foldedWidth() : fullWidth(), px(44)}; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF plate(px(22), px(2), width() - px(22), height() - px(4));
        if (isChecked())
            painter.fillRect(plate, color(Role::Raised));
        else if (underMouse())
            painter.fillRect(plate, color(Role::Surface));
        paintDisc(painter);
        paintWords(painter);
        if (!hasFocus()) return;
        painter.setPen(QPen(color(Role::Focus), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(plate.adjusted(1, 1, -1, -1), 3, 3);
    }

  private:
    void paintDisc(QPainter& painter) const {
        const QPointF at(pipeX(), height() / 2.0);
        const QColor line = color(isChecked() ? Role::Accent : Role::Edge);
        painter.setPen(QPen(line, px(2)));
        painter.drawLine(at, QPointF(px(22), at.y()));
        painter.setPen(QPen(line, px(2)));
        painter.setBrush(isChecked() ? color(Role::Accent) : color(Role::Sunken));
        const double radius = isChecked() ? px(6) : px(4);
        painter.drawEllipse(at, radius, radius);
    }
    void paintWords(QPainter& painter) const {
        const QColor ink = color(isChecked() ? Role::Accent : Role::Ink);
        const double side = px(20);
        const double top = isFolded ? (height() - side) / 2 : px(5);
        paintIcon(painter, QRectF(px(28), top, side, side), m_icon, ink);
        if (isFolded) return;
        painter.setPen(ink);
        painter.setFont(textFont(TextSize::Body, isChecked()));
        const QRectF words(px(54), px(5), width() - px(54), px(18));
        // A title that fills the rail stays whole rather than bold.
        if (painter.fontMetrics().horizontalAdvance(text()) > words.width() - px(2))
            painter.setFont(textFont(TextSize::Body));
        painter.drawText(m_key.isEmpty() ? QRectF(words.left(), 0, words.width(), height()) : words,
                         Qt::AlignVCenter | Qt::AlignLeft, text());
        painter.setFont(textFont(TextSize::Small));
        painter.setPen(color(Role::Quiet));
        painter.drawText(words.translated(0, px(16)), Qt::AlignVCenter | Qt::AlignLeft, m_key);
    }
    QString m_icon;
    QString m_key;
};

class Rail::Heading : public QWidget {
  public:
    Heading(const QString& text, QWidget* parent) : QWidget(parent), m_text(text) {}
    bool isFolded = false;
    QSize sizeHint() const override { return {px(56), isFolded ? px(12) : px(26)}; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        if (isFolded) {
            painter.fillRect(px(26), height() / 2, width() - px(34), 1, color(Role::Line));
            return;
        }
        painter.setFont(textFont(TextSize::Small));
        painter.setPen(color(Role::Quiet));
        painter.drawText(QRectF(px(28), 0, width() - px(28), height()),
                         Qt::AlignVCenter | Qt::AlignLeft, m_text);
    }

  private:
    QString m_text;
};

Rail::Rail(const std::vector<PageEntry>& pages, QWidget* parent)
    : QWidget(parent), m_group(new QButtonGroup(this)) {
    setObjectName(QStringLiteral("rail"));
    setAccessibleName(tr("Pages"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, px(6), 0, px(6));
    column->setSpacing(0);
    QString group;
    for (const auto& entry : pages) {
        if (entry.group != group) {
            if (!group.isEmpty()) column->addSpacing(px(8));
            group = entry.group;
            m_headings.push_back(new Heading(group, this));
            m_headings.back()->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
            column->addWidget(m_headings.back());
        }
        auto* item = new Item(entry, this);
        item->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
        m_items.push_back(item);
        m_group->addButton(item);
        column->addWidget(item);
        // Clicks and keys alike: in an exclusive group the arrow keys take the next button.
        connect(item, &QAbstractButton::toggled, this, [this, item](bool on) {
            if (on) Q_EMIT pageChosen(item->id);
        });
    }
    column->addStretch(1);
    setFolded(false);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

void Rail::setCurrent(const QString& pageId) {
    for (Item* item : m_items) {
        if (item->id != pageId) continue;
        const QSignalBlocker quiet(item);
        item->setChecked(true);
    }
    update();
}

void Rail::setFolded(bool folded) {
    m_isFolded = folded;
    for (Item* item : m_items) item->isFolded = folded;
    for (Heading* heading : m_headings) heading->isFolded = folded;
    setFixedWidth(folded ? foldedWidth() : fullWidth());
    for (Item* item : m_items) item->updateGeometry();
    for (Heading* heading : m_headings) heading->updateGeometry();
    update();
}

void Rail::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), color(Role::Sunken));
    painter.fillRect(width() - 1, 0, 1, height(), color(Role::Line));
    if (m_items.empty()) return;
    painter.setPen(QPen(color(Role::Edge), px(2)));
    const int top = m_items.front()->geometry().center().y(),
              bottom = m_items.back()->geometry().center().y();
    painter.drawLine(pipeX(), top, pipeX(), bottom);
}

}  // namespace bw
