// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_entry.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/kit/buttons.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/catch_watch.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// A key and what it does, as a hint.
class KeyHint : public QWidget {
  public:
    KeyHint(const QString& key, const QString& text) : m_key(key) {
        auto* row = new QHBoxLayout(this);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        auto* words = new TextLabel(text, TextSize::Small, Role::Quiet);
        words->setContentsMargins(static_cast<int>(keyCapSize(key).width()) + px(6), 0, 0, 0);
        row->addWidget(words);
        setMinimumHeight(static_cast<int>(keyCapSize(key).height()) + 1);
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const QSizeF cap = keyCapSize(m_key);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setFont(textFont(TextSize::Small));
        paintKeyCap(painter, QRectF({0.5, (height() - cap.height()) / 2}, cap), m_key,
                    color(Role::Edge), color(Role::Raised));
    }

  private:
    QString m_key;
};

bool isTakeBack(const QKeyEvent* event) {
    return event->key() == Qt::Key_Backspace && event->modifiers() == Qt::ControlModifier;
}

}  // namespace

CatchLine::CatchLine(QWidget* parent) : FigureLine(parent) {}

bool CatchLine::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTakeBack(static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return FigureLine::event(event);
}

void CatchLine::keyPressEvent(QKeyEvent* event) {
    const bool isEmpty = text().trimmed().isEmpty();
    if (isTakeBack(event)) return Q_EMIT takeBackWanted();
    if (event->key() == Qt::Key_Space && isEmpty) return Q_EMIT watchWanted();
    // Behind a figure the stroke is a fraction's: 20 1/2 fl oz.
    if (event->key() == Qt::Key_Slash && isEmpty) return Q_EMIT skipWanted();
    if (event->key() == Qt::Key_Down) return Q_EMIT moveWanted(1);
    if (event->key() == Qt::Key_Up) return Q_EMIT moveWanted(-1);
    FigureLine::keyPressEvent(event);
}

CatchEntryCard::CatchEntryCard(QWidget* parent)
    : RolePanel(Role::Raised, parent),
      m_watch(new CatchWatch),
      m_counted(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_number(new TextLabel({}, TextSize::Entry, Role::Ink, true)),
      m_of(new TextLabel({}, TextSize::Lead, Role::Quiet)),
      m_last(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_line(new CatchLine),
      m_problem(new TextLabel({}, TextSize::Small, Role::Limit)),
      m_jump(new QuantityEdit(Dimension::None, Unit::None)),
      m_again(new SegmentedButtons) {
    setEdges(Qt::TopEdge | Qt::BottomEdge | Qt::LeftEdge | Qt::RightEdge);
    m_watch->setObjectName(u"yard.catch.watch"_s);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(px(14), px(10), px(14), px(10));
    row->setSpacing(px(14));
    row->addWidget(m_watch);
    row->addWidget(buildNozzle(), 1);
    row->addWidget(buildField());
    row->addWidget(buildKeys());
}

QWidget* CatchEntryCard::buildNozzle() {
    m_counted->setObjectName(u"yard.catch.counted"_s);
    m_number->setObjectName(u"yard.catch.nozzle"_s);
    m_of->setObjectName(u"yard.catch.of"_s);
    m_last->setObjectName(u"yard.catch.last"_s);
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(2));
    column->addWidget(m_counted->wrapped());
    auto* line = new QHBoxLayout;
    line->setSpacing(px(8));
    line->addWidget(m_number);
    line->addWidget(m_of->wrapped(), 1);
    column->addLayout(line);
    column->addWidget(m_last->wrapped());
    return box;
}

QWidget* CatchEntryCard::buildField() {
    m_line->setObjectName(u"yard.catch.entry"_s);
    m_line->setFont(textFont(TextSize::Entry, true));
    m_line->setFixedWidth(px(216));
    m_problem->setObjectName(u"yard.catch.problem"_s);
    m_problem->hide();
    m_again->setObjectName(u"yard.catch.again"_s);
    m_again->addChoice(tr("typed wrong: instead"));
    m_again->addChoice(tr("after cleaning"));
    m_again->button(0)->setObjectName(u"yard.catch.again.instead"_s);
    m_again->button(1)->setObjectName(u"yard.catch.again.cleaned"_s);
    m_again->setAccessibleName(tr("This nozzle was caught before: what is the new catch?"));
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(3));
    column->addWidget(m_line);
    column->addWidget(m_problem->wrapped());
    column->addWidget(m_again, 0, Qt::AlignLeft);
    connect(m_line, &QLineEdit::returnPressed, this, &CatchEntryCard::enter);
    connect(m_line, &FigureLine::escaped, this, [this] {
        m_line->clear();
        m_problem->hide();
    });
    connect(m_line, &QLineEdit::textEdited, this, [this](const QString& text) {
        m_problem->hide();
        showUnit(text);
    });
    connect(m_line, &CatchLine::watchWanted, m_watch, &CatchWatch::toggleWatch);
    connect(m_line, &CatchLine::skipWanted, this, &CatchEntryCard::skipWanted);
    connect(m_line, &CatchLine::moveWanted, this, &CatchEntryCard::moveWanted);
    connect(m_line, &CatchLine::takeBackWanted, this, &CatchEntryCard::takeBackWanted);
    connect(m_watch, &CatchWatch::over, this, [this] { takeFocus(); });
    return box;
}

QWidget* CatchEntryCard::buildKeys() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(3));
    column->addWidget(new KeyHint(tr("Enter"), tr("next nozzle")));
    column->addWidget(new KeyHint(tr("Space"), tr("watch, beeps")));
    column->addWidget(new KeyHint(u"/"_s, tr("skip this one")));
    m_jump->setObjectName(u"yard.catch.jump"_s);
    m_jump->line()->setObjectName(u"yard.catch.jump.line"_s);
    m_jump->setLabel(tr("Go to nozzle"));
    m_jump->setPlaceholder(tr("go to nozzle"));
    m_jump->setToolTip(tr("Number of a nozzle, Enter. Up and down do the same one by one."));
    m_jump->setFixedWidth(px(116));
    column->addWidget(m_jump);
    connect(m_jump, &QuantityEdit::committed, this, [this] { jump(); });
    return box;
}

void CatchEntryCard::show(const Content& content) {
    const bool isOther = content.nozzle != m_content.nozzle;
    const bool wasCaught = m_content.isCaught;
    m_content = content;
    m_counted->setText(content.counted);
    m_number->setText(QString::number(content.nozzle));
    m_of->setText(content.of);
    m_last->setText(content.last);
    m_watch->setSeconds(content.seconds);
    showUnit(m_line->text());
    m_line->setAccessibleName(
        tr("Catch of nozzle %1, %2").arg(content.nozzle).arg(symbol(content.unit)));
    m_again->setVisible(content.isCaught);
    if (content.isCaught && (isOther || !wasCaught))
        m_again->setCurrentIndex(content.isAgain ? 1 : 0);
    if (isOther) {
        m_line->clear();
        m_problem->hide();
    }
}

/// The usual unit stands beside a bare number only.
void CatchEntryCard::showUnit(const QString& text) {
    const bool hasLetters =
        std::any_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
    const QString seconds = tr("in %1 s").arg(plainNumber(m_content.seconds, 0, {}));
    m_line->setUnitText(hasLetters ? seconds : symbol(m_content.unit) + u' ' + seconds);
}

void CatchEntryCard::tell(const QString& problem) {
    m_problem->setText(problem);
    m_problem->show();
}

void CatchEntryCard::takeFocus() {
    m_line->setFocus(Qt::OtherFocusReason);
}

void CatchEntryCard::enter() {
    const QString text = m_line->text().trimmed();
    const DecimalMarks marks =
        m_content.decimalMark == ',' ? DecimalMarks::OwnComma : DecimalMarks::OwnPoint;
    const auto read = parseQuantity(ss(text), Dimension::Volume, m_content.unit, marks);
    if (!read) return refuse(read.problem());
    if (read->quantity.si < 0) return refuse(error("value_under_zero"));
    const QString typed = read->unitWasTyped ? text : text + u' ' + symbol(m_content.unit);
    const bool isAgain = m_content.isCaught && m_again->currentIndex() == 1;
    m_line->clear();
    m_problem->hide();
    m_watch->stopWatch();
    Q_EMIT caught(Volume::fromSi(read->quantity.si), typed, isAgain);
}

void CatchEntryCard::refuse(const Problem& problem) {
    tell(sentenceOf(problem, {UnitSystem::Metric, m_content.decimalMark}));
    m_line->selectAll();
}

void CatchEntryCard::jump() {
    const auto value = m_jump->quantity();
    m_jump->setQuantity(std::nullopt);
    if (value) Q_EMIT nozzleWanted(static_cast<int>(std::lround(value->si)));
    takeFocus();
}

}  // namespace bw
