// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/buttons.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>
#include <QShortcut>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

struct Colors {
    QColor fill, line, ink;
};

Colors colorsOf(const QAbstractButton& button, bool isPrimary) {
    if (!button.isEnabled())
        return {color(Role::Surface), color(Role::Disabled), color(Role::Disabled)};
    if (isPrimary) return {color(Role::Accent), color(Role::Accent), color(Role::OnAccent)};
    return {color(button.isDown() ? Role::AccentTint : Role::Raised), color(Role::Edge),
            color(Role::Ink)};
}

void paintPanel(QPainter& painter, const QWidget& widget, const Colors& colors,
                bool isDashed = false) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colors.line, 1, isDashed ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(colors.fill);
    painter.drawRoundedRect(QRectF(widget.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
}

/// `onAccent`: a line of the accent's own ink inside keeps the ring apart from a dark fill.
void paintFocusRing(QPainter& painter, const QWidget& widget, bool onAccent = false) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    const QRectF box(widget.rect());
    painter.setPen(QPen(color(Role::OnAccent), 1));
    if (onAccent) painter.drawRoundedRect(box.adjusted(2.5, 2.5, -2.5, -2.5), 2, 2);
    painter.setPen(QPen(color(Role::Focus), 2));
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 3, 3);
}

QString plain(QString text) {
    return text.remove(u'&');
}

}  // namespace

QSizeF keyCapSize(const QString& key) {
    const QFontMetricsF metrics(textFont(TextSize::Small));
    return {std::max<double>(px(18), metrics.horizontalAdvance(key) + px(10)),
            static_cast<double>(px(15))};
}

void paintKeyCap(QPainter& painter, const QRectF& box, const QString& key, const QColor& line,
                 const QColor& fill) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, 1));
    painter.setBrush(fill);
    const QRectF inner = box.adjusted(0.5, 0.5, -0.5, -0.5);
    painter.drawRoundedRect(inner, 3, 3);
    painter.drawLine(QPointF(inner.left() + 2, inner.bottom() - 1),
                     QPointF(inner.right() - 2, inner.bottom() - 1));
    painter.setFont(textFont(TextSize::Small));
    painter.drawText(box.adjusted(0, 0, 0, -1), Qt::AlignCenter, key);
    painter.restore();
}

Button::Button(const QString& text, const QString& iconName, Kind kind, QWidget* parent)
    : QAbstractButton(parent), m_iconName(iconName), m_kind(kind) {
    setText(text);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAttribute(Qt::WA_Hover);
}

void Button::setKey(const QKeySequence& key, bool acts) {
    m_keyText = key.toString(QKeySequence::NativeText);
    if (acts) {
        auto* shortcut = new QShortcut(key, this);
        connect(shortcut, &QShortcut::activated, this, [this] { click(); });
    }
    updateGeometry();
    update();
}

void Button::setIconName(const QString& name) {
    m_iconName = name;
    updateGeometry();
    update();
}

void Button::setKind(Kind kind) {
    m_kind = kind;
    update();
}

void Button::setCompact(bool compact) {
    m_isCompact = compact;
    updateGeometry();
}

QSize Button::sizeHint() const {
    const QFontMetrics metrics(textFont(TextSize::Body, m_isCompact || m_kind == Kind::Primary));
    int width = px(24) + metrics.horizontalAdvance(plain(text()));
    if (!m_iconName.isEmpty()) width += px(22);
    if (!m_keyText.isEmpty()) width += px(8) + static_cast<int>(keyCapSize(m_keyText).width());
    return {width, m_isCompact ? px(22) : px(28)};
}

void Button::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    Colors colors = colorsOf(*this, m_kind == Kind::Primary);
    if (m_kind != Kind::Flat || underMouse() || isDown() || isChecked())
        paintPanel(painter, *this, colors, !isEnabled());
    if (isChecked() && m_kind != Kind::Primary)
        paintPanel(painter, *this,
                   {color(Role::AccentTint), color(Role::Accent), color(Role::Ink)});
    int x = px(12);
    if (!m_iconName.isEmpty()) {
        paintIcon(painter, QRectF(x - px(2), (height() - px(18)) / 2.0, px(18), px(18)), m_iconName,
                  colors.ink);
        x += px(20);
    }
    const QFont font = textFont(TextSize::Body, m_isCompact || m_kind == Kind::Primary);
    painter.setFont(font);
    painter.setPen(colors.ink);
    painter.drawText(QRect(x, 0, width() - x, height()),
                     Qt::AlignVCenter | Qt::AlignLeft | Qt::TextShowMnemonic, text());
    if (!m_keyText.isEmpty()) {
        const QSizeF cap = keyCapSize(m_keyText);
        paintKeyCap(painter,
                    QRectF(width() - px(10) - cap.width(), (height() - cap.height()) / 2,
                           cap.width(), cap.height()),
                    m_keyText, colors.ink,
                    m_kind == Kind::Primary ? colors.fill : color(Role::Raised));
    }
    if (hasFocus()) paintFocusRing(painter, *this, m_kind == Kind::Primary);
}

void Button::changeEvent(QEvent* event) {
    QAbstractButton::changeEvent(event);
    update();
}

IconButton::IconButton(const QString& name, const QString& iconName, QWidget* parent)
    : Button({}, {}, Kind::Flat, parent), m_icon(iconName) {
    setAccessibleName(name);
    setToolTip(name);
}

QSize IconButton::sizeHint() const {
    return {px(28), px(28)};
}

void IconButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const bool framed = underMouse() || isDown() || isChecked();
    if (framed)
        paintPanel(painter, *this,
                   {color(isChecked() || isDown() ? Role::AccentTint : Role::Raised),
                    color(isChecked() ? Role::Ink : Role::Edge), color(Role::Ink)});
    paintIcon(painter, QRectF((width() - px(18)) / 2.0, (height() - px(18)) / 2.0, px(18), px(18)),
              m_icon, color(isEnabled() ? Role::Ink : Role::Disabled));
    if (hasFocus()) paintFocusRing(painter, *this);
}

AnswerRow::AnswerRow(const QString& key, const QString& answer, const QString& meaning,
                     QWidget* parent)
    : QAbstractButton(parent), m_key(key) {
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAttribute(Qt::WA_Hover);
    setAnswer(answer, meaning);
}

void AnswerRow::setAnswer(const QString& answer, const QString& meaning) {
    m_meaning = meaning;
    setText(answer);
    setAccessibleName(m_key + u": "_s + answer);
    setAccessibleDescription(meaning);
    updateGeometry();
    update();
}

int AnswerRow::split(int width) const {
    return m_meaning.isEmpty() ? width : px(55) + static_cast<int>((width - px(55)) * 0.45);
}

int AnswerRow::heightForWidth(int width) const {
    const auto needed = [](const QString& text, int room, const QFont& font) {
        return QFontMetrics(font)
            .boundingRect(0, 0, std::max(room, 40), 4000, Qt::TextWordWrap, text)
            .height();
    };
    const int middle = split(width);
    const int answer = needed(text(), middle - px(60), textFont(TextSize::Body, true));
    const int meaning = m_meaning.isEmpty()
                            ? 0
                            : needed(m_meaning, width - middle - px(8), textFont(TextSize::Small));
    const int least = px(theme().isProjector() ? 29 : 34);
    return std::max(least, std::max(answer, meaning) + px(theme().isProjector() ? 6 : 10));
}

QSize AnswerRow::sizeHint() const {
    return {px(420), heightForWidth(width() > px(220) ? width() : px(420))};
}
QSize AnswerRow::minimumSizeHint() const {
    return {px(220), width() > px(220) ? heightForWidth(width()) : px(34)};
}

void AnswerRow::resizeEvent(QResizeEvent* event) {
    QAbstractButton::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void AnswerRow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Colors colors = colorsOf(*this, false);
    paintPanel(painter, *this,
               {isDown() || underMouse() ? color(Role::AccentTint) : colors.fill,
                hasFocus() ? color(Role::Focus) : color(Role::Line), colors.ink},
               !isEnabled());
    const QRectF cap(px(10), (height() - px(25)) / 2.0, px(26), px(25));
    painter.setPen(QPen(colors.ink, 1.3));
    painter.setBrush(color(Role::Raised));
    painter.drawRoundedRect(cap, 3, 3);
    painter.drawLine(QPointF(cap.left() + 3, cap.bottom() - 2),
                     QPointF(cap.right() - 3, cap.bottom() - 2));
    painter.setFont(textFont(TextSize::ReadOut, true));
    painter.drawText(cap.adjusted(0, 0, 0, -2), Qt::AlignCenter, m_key);
    const int middle = split(width());
    painter.setFont(textFont(TextSize::Body, true));
    painter.drawText(QRect(px(55), 0, middle - px(60), height()),
                     Qt::AlignVCenter | Qt::TextWordWrap, text());
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(isEnabled() ? Role::Quiet : Role::Disabled));
    painter.drawText(QRect(middle, 0, width() - middle - px(8), height()),
                     Qt::AlignVCenter | Qt::TextWordWrap, m_meaning);
    if (hasFocus()) paintFocusRing(painter, *this);
}

namespace {

class SegmentButton : public QAbstractButton {
  public:
    SegmentButton(const QString& text, const QKeySequence& key, QWidget* parent)
        : QAbstractButton(parent), m_key(key.toString(QKeySequence::NativeText)) {
        setText(text);
        setCheckable(true);
        setFocusPolicy(Qt::StrongFocus);
        if (!key.isEmpty())
            connect(new QShortcut(key, this), &QShortcut::activated, this, [this] { click(); });
    }
    QSize sizeHint() const override {
        int width = QFontMetrics(textFont(TextSize::Body, true)).horizontalAdvance(text()) + px(24);
        if (!m_key.isEmpty()) width += px(8) + static_cast<int>(keyCapSize(m_key).width());
        return {width, px(28)};
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const Colors colors =
            isChecked() ? Colors{color(Role::Accent), color(Role::Accent), color(Role::OnAccent)}
                        : Colors{color(Role::Raised), color(Role::Edge), color(Role::Ink)};
        paintPanel(painter, *this, colors);
        painter.setFont(textFont(TextSize::Body, isChecked()));
        painter.setPen(colors.ink);
        painter.drawText(rect().adjusted(px(12), 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                         text());
        if (!m_key.isEmpty()) {
            const QSizeF cap = keyCapSize(m_key);
            paintKeyCap(painter,
                        QRectF(width() - px(10) - cap.width(), (height() - cap.height()) / 2,
                               cap.width(), cap.height()),
                        m_key, colors.ink, colors.fill);
        }
        if (hasFocus()) paintFocusRing(painter, *this, isChecked());
    }

  private:
    QString m_key;
};

}  // namespace

SegmentedButtons::SegmentedButtons(QWidget* parent)
    : QWidget(parent), m_group(new QButtonGroup(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(m_group, &QButtonGroup::idToggled, this, [this](int id, bool on) {
        if (on) Q_EMIT currentIndexChanged(id);
    });
}

int SegmentedButtons::addChoice(const QString& text, const QKeySequence& key) {
    const int index = static_cast<int>(m_group->buttons().size());
    auto* button = new SegmentButton(text, key, this);
    m_group->addButton(button, index);
    layout()->addWidget(button);
    if (index == 0) {
        const QSignalBlocker quiet(m_group);
        button->setChecked(true);
    }
    return index;
}

void SegmentedButtons::setCurrentIndex(int index) {
    if (auto* wanted = m_group->button(index)) wanted->setChecked(true);
}
int SegmentedButtons::currentIndex() const {
    return m_group->checkedId();
}
QAbstractButton* SegmentedButtons::button(int index) const {
    return m_group->button(index);
}

ChoiceBox::ChoiceBox(QWidget* parent) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(QComboBox::AdjustToContents);
    setMinimumHeight(px(26));
}

int ChoiceBox::setCurrentData(const QVariant& data) {
    const int index = findData(data);
    const QSignalBlocker quiet(this);
    setCurrentIndex(index);
    return index;
}

void ChoiceBox::wheelEvent(QWheelEvent* event) {
    if (hasFocus())
        QComboBox::wheelEvent(event);
    else
        event->ignore();
}

QWidget* captioned(const QString& caption, QWidget* control, QWidget* parent) {
    auto* box = new QWidget(parent);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(1));
    auto* label = new TextLabel(caption, TextSize::Small, Role::Quiet);
    label->setBuddy(control);
    column->addWidget(label);
    column->addWidget(control);
    if (control->accessibleName().isEmpty()) control->setAccessibleName(caption);
    box->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    return box;
}

}  // namespace bw
