// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_header.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>

#include "ui/kit/buttons.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/span_bar.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// What the thumbs of the matrix mean: as many signs as there is room for.
class Signs : public QWidget {
  public:
    Signs() {
        setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
        setFixedHeight(px(40));
        setAccessibleName(SeasonHeader::tr(
            "Signs: a full bar holds slow to fast, a hatched one the usual speed only, an empty "
            "one neither, a dotted one is not checked"));
        setToolTip(accessibleName());
        connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setFont(textFont(TextSize::Small));
        double x = 0;
        const auto sign = [&](SpanState state, double low, double high, const QString& word) {
            const double needed = px(44) + painter.fontMetrics().horizontalAdvance(word) + px(6);
            if (x + needed > width()) return;
            Span span;
            span.from = 0;
            span.to = 10;
            span.slow = 3;
            span.usual = 5;
            span.fast = 7;
            span.low = low;
            span.high = high;
            span.state = state;
            const QRectF box(x, height() / 2.0 - px(10), px(40), px(18));
            paintSpanThumb(painter, box, span, theme().look());
            painter.setPen(color(Role::Quiet));
            painter.drawText(QRectF(x + px(44), 0, needed, height()),
                             Qt::AlignLeft | Qt::AlignVCenter, word);
            x += needed + px(8);
        };
        sign(SpanState::All, 2, 8, SeasonHeader::tr("all"));
        sign(SpanState::UsualOnly, 4.4, 8, SeasonHeader::tr("usual only"));
        sign(SpanState::Neither, 0, 2.4, SeasonHeader::tr("neither"));
        sign(SpanState::NotChecked, 2, 8, SeasonHeader::tr("not checked"));
    }
};

}  // namespace

SeasonHeader::SeasonHeader(QWidget* parent)
    : QWidget(parent),
      m_machines(new ChoiceBox),
      m_filter(new QLineEdit),
      m_matrix(new IconButton(tr("Show or hide the matrix of jobs and nozzles (Ctrl+Shift+M)"),
                              u"nozzle"_s)),
      m_add(new Button(tr("Job"), u"plus"_s)),
      m_choose(new Button(tr("Choose sets"), {}, Button::Kind::Primary)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(10));
    m_machines->setObjectName(u"season.shown.machine"_s);
    m_machines->setAccessibleName(tr("Machines shown"));
    m_machines->setFixedWidth(px(186));
    m_filter->setObjectName(u"season.shown.filter"_s);
    m_filter->setAccessibleName(tr("Find a job"));
    m_filter->setPlaceholderText(tr("part of its name"));
    m_filter->setClearButtonEnabled(true);
    m_filter->setFixedWidth(px(150));
    m_filter->installEventFilter(this);
    m_matrix->setObjectName(u"season.shown.matrix"_s);
    m_matrix->setCheckable(true);
    m_matrix->setChecked(true);
    m_add->setObjectName(u"season.jobs.add"_s);
    m_add->setKey(QKeySequence(Qt::Key_Insert), false);
    m_add->setToolTip(tr("A new job under the one in hand"));
    row->addWidget(captioned(tr("Shown"), m_machines));
    row->addWidget(captioned(tr("Find a job"), m_filter));
    row->addWidget(new Signs, 1);
    row->addWidget(m_matrix);
    row->addWidget(m_add);
    m_choose->setObjectName(u"season.choose"_s);
    m_choose->setKey(QKeySequence(Qt::Key_F5), false);
    m_choose->setToolTip(tr("The fewest nozzle sets that hold every job"));
    row->addWidget(m_choose);
    connect(m_machines, &QComboBox::activated, this, &SeasonHeader::scopeChanged);
    connect(m_filter, &QLineEdit::textChanged, this, &SeasonHeader::scopeChanged);
    connect(m_matrix, &QAbstractButton::toggled, this, &SeasonHeader::matrixSwitched);
    connect(m_add, &QAbstractButton::clicked, this, &SeasonHeader::addAsked);
    connect(m_choose, &QAbstractButton::clicked, this, &SeasonHeader::chooseAsked);
}

/// The machine shown stays shown as long as it is there.
void SeasonHeader::setMachines(const std::vector<StoredMachine>& machines, std::size_t jobs) {
    std::vector<std::pair<QString, qint64>> wanted;
    if (machines.size() != 1) wanted.emplace_back(tr("All machines, %1 jobs").arg(jobs), 0);
    for (const auto& stored : machines) wanted.emplace_back(qs(stored.machine.name), stored.id);
    // Filled anew only where something has changed: the list may be open.
    if (wanted == m_listed) return;
    m_listed = wanted;
    const QVariant before = m_machines->currentData();
    m_machines->clear();
    for (const auto& [text, id] : wanted) m_machines->addItem(text, QVariant::fromValue(id));
    if (m_machines->setCurrentData(before) < 0) m_machines->setCurrentIndex(0);
    m_machines->setToolTip(m_machines->currentText());
}

SeasonScope SeasonHeader::scope() const {
    return {m_machines->currentData().toLongLong(), m_filter->text()};
}

void SeasonHeader::clearFilter() {
    m_filter->clear();
}

void SeasonHeader::focusFilter() {
    m_filter->setFocus(Qt::ShortcutFocusReason);
    m_filter->selectAll();
}

void SeasonHeader::setMatrixShown(bool shown) {
    m_matrix->setChecked(shown);
}

bool SeasonHeader::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_filter && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Escape && !m_filter->text().isEmpty()) {
            m_filter->clear();
            return true;
        }
        if (key == Qt::Key_Down || key == Qt::Key_Return || key == Qt::Key_Enter) {
            Q_EMIT leftFilter();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace bw
