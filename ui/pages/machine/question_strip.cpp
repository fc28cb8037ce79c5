// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/question_strip.h"

#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>

#include "core/model/machine_fields.h"
#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

/// One mark a question: full square given, dashed ring assumed, line open. No disc: that is the
/// mark of what was measured.
class QuestionStrip::Marks : public QWidget {
  public:
    std::vector<SetupQuestion> questions;
    QSize sizeHint() const override { return {px(13) * 10, px(14)}; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const double side = px(10);
        const double top = (height() - side) / 2.0;
        for (std::size_t i = 0; i < questions.size(); ++i) {
            const QRectF box(static_cast<double>(i) * px(13), top, side, side);
            if (questions[i].state == QuestionState::Open) {
                painter.setPen(QPen(color(Role::Unchecked), 1.5));
                painter.drawLine(QPointF(box.left() + 1, box.center().y()),
                                 QPointF(box.right() - 1, box.center().y()));
            } else if (questions[i].state == QuestionState::Assumed) {
                paintOriginMark(painter, box, Origin::Assumed, theme().look());
            } else {
                painter.fillRect(box.adjusted(1, 1, -1, -1), color(Role::Ink));
            }
        }
    }
};

QuestionStrip::QuestionStrip(QWidget* parent)
    : QWidget(parent), m_marks(new Marks), m_words(new TextLabel) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(px(16), px(7), px(12), px(5));
    row->setSpacing(px(10));
    m_marks->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    row->addWidget(m_marks, 0, Qt::AlignTop);
    row->addWidget(m_words->wrapped(), 1);
    m_words->setObjectName(u"machine.questions.words"_s);
    m_words->setTextFormat(Qt::RichText);
    m_words->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
    connect(m_words, &QLabel::linkActivated, this, &QuestionStrip::questionTaken);
}

void QuestionStrip::present(const FarmSession& session, const Machine& machine) {
    const auto questions = tenQuestions(machine);
    const auto count = [&](QuestionState state) {
        return std::count_if(questions.begin(), questions.end(),
                             [&](const SetupQuestion& q) { return q.state == state; });
    };
    QString words = tr("Ten questions: %1 given, %2 assumed, %3 open.")
                        .arg(count(QuestionState::Given))
                        .arg(count(QuestionState::Assumed))
                        .arg(count(QuestionState::Open));
    const auto next = std::min_element(
        questions.begin(), questions.end(),
        [](const SetupQuestion& a, const SetupQuestion& b) { return a.state < b.state; });
    if (next->state != QuestionState::Given) {
        QString key;
        for (const auto& candidate : next->keys) {
            const auto view = fieldView(machine, candidate);
            const bool isOpen = !view || !view->isKnown || view->origin == Origin::Assumed;
            if (key.isEmpty() && isOpen) key = qs(candidate);
        }
        const QString label =
            key == u"sets_aboard"_s ? tr("Nozzle set aboard") : labelOf(session, machine, key);
        words += u' ' + tr("Next: %1.")
                            .arg(u"<a href=\"%1\"><font color=\"%2\">%3</font></a>"_s.arg(
                                key, color(Role::Accent).name(), label.toHtmlEscaped()));
    }
    m_words->setText(words);
    m_marks->questions = questions;
    m_marks->setToolTip(tr("Square: given. Dashed ring: assumed. Line: open."));
    m_marks->update();
}

}  // namespace bw
