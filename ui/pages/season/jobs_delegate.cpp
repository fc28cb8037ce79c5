// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/jobs_delegate.h"

#include <QLineEdit>
#include <QPainter>
#include <algorithm>

#include "ui/kit/chips.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/season/droplet_editor.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/name_editor.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

JobColumn columnOf(const QModelIndex& index) {
    return static_cast<JobColumn>(index.column());
}

bool isPlaceholder(const QModelIndex& index) {
    return index.data(PlaceholderRole).toBool();
}

void drawText(QPainter& painter, const QRect& box, const QString& text, Role role,
              TextSize size = TextSize::Body, bool bold = false) {
    painter.setFont(textFont(size, bold));
    painter.setPen(color(role));
    painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(text, Qt::ElideRight, box.width()));
}

void paintDroplets(QPainter& painter, const QRect& box, const QModelIndex& index) {
    double x = box.left();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const QVariant& value : index.data(DropletsRole).toList()) {
        const auto category = static_cast<DropletCategory>(value.toInt());
        const QSizeF size = dropletChipSize(category);
        if (x + size.width() > box.right() + 1) {
            drawText(painter, QRect(qRound(x), box.top(), px(12), box.height()), u"…"_s, Role::Ink);
            break;
        }
        paintDropletChip(painter, QPointF(x + size.width() / 2, QRectF(box).center().y()),
                         category);
        x += size.width() + px(2);
    }
}

/// Chip and name: in ink where the job names its nozzle, quiet where it is the best so far.
void paintNozzle(QPainter& painter, const QRect& box, const QModelIndex& index) {
    const QString pinned = index.data(Qt::DisplayRole).toString();
    const QString best = index.data(BestNozzleRole).toString();
    if (pinned.isEmpty() && best.isEmpty()) return;
    QRect rest = box;
    const QString code = index.data(SizeCodeRole).toString();
    if (!code.isEmpty()) {
        const QSizeF size = nozzleChipSize(code);
        painter.setRenderHint(QPainter::Antialiasing);
        paintNozzleChip(painter, QPointF(box.left() + size.width() / 2, QRectF(box).center().y()),
                        code);
        rest.setLeft(box.left() + qRound(size.width()) + px(5));
    }
    // Where the name has no room the chip tells the size.
    const bool isPinned = !pinned.isEmpty();
    const bool isChosen = index.data(IsChosenRole).toBool();
    const QString whose = isChosen ? JobsModel::tr("plan: %1") : JobsModel::tr("best: %1");
    const QString full = isPinned ? pinned : whose.arg(best);
    const TextSize size = isPinned ? TextSize::Body : TextSize::Small;
    const bool fits =
        code.isEmpty() || QFontMetrics(textFont(size)).horizontalAdvance(full) <= rest.width();
    const QString brief = isPinned   ? JobsModel::tr("pinned")
                          : isChosen ? JobsModel::tr("plan")
                                     : JobsModel::tr("best");
    drawText(painter, rest, fits ? full : brief, isPinned ? Role::Ink : Role::Quiet,
             fits ? size : TextSize::Small);
}

Span markSpan(JobStanding standing) {
    Span span;
    span.from = 0;
    span.to = 10;
    span.slow = 3;
    span.usual = 5;
    span.fast = 7;
    span.low = standing == JobStanding::UsualOnly ? 4.4 : 1.5;
    span.high = standing == JobStanding::DoesNotHold ? 3.0 : 8.5;
    span.state = standing == JobStanding::Holds       ? SpanState::All
                 : standing == JobStanding::UsualOnly ? SpanState::UsualOnly
                                                      : SpanState::Neither;
    return span;
}

Role roleOf(JobStanding standing) {
    switch (standing) {
        case JobStanding::Holds:
            return Role::Ok;
        case JobStanding::UsualOnly:
        case JobStanding::DoesNotHold:
            return Role::Limit;
        case JobStanding::NotChecked:
            break;
    }
    return Role::Unchecked;
}

/// Mark, word and, where it holds, the room to spare.
void paintVerdict(QPainter& painter, const QRect& box, const QModelIndex& index) {
    const QVariant value = index.data(StandingRole);
    const QString word = index.data(Qt::DisplayRole).toString();
    if (!value.isValid()) return drawText(painter, box, word, Role::Quiet, TextSize::Small);
    const auto standing = static_cast<JobStanding>(value.toInt());
    const QRectF mark(box.left(), box.center().y() - px(9), px(22), px(18));
    if (standing == JobStanding::NotChecked)
        paintIcon(painter, QRectF(mark.left() + px(2), mark.top(), px(18), px(18)), u"unchecked"_s,
                  color(Role::Unchecked));
    else
        paintSpanThumb(painter, mark, markSpan(standing), theme().look());
    QRect rest = box.adjusted(px(27), 0, 0, 0);
    const QString room = index.data(RoomRole).toString();
    if (!room.isEmpty()) {
        painter.setFont(textFont(TextSize::Small));
        painter.setPen(color(Role::Quiet));
        painter.drawText(rest, Qt::AlignRight | Qt::AlignVCenter, room);
        rest.setRight(rest.right() - painter.fontMetrics().horizontalAdvance(room) - px(4));
    }
    drawText(painter, rest, word, roleOf(standing), TextSize::Body,
             standing != JobStanding::NotChecked);
}

/// A corner in the role of the problem and its triangle: form beside colour.
void paintProblem(QPainter& painter, const QRect& box, const QModelIndex& index) {
    const bool isError = index.data(ProblemIsErrorRole).toBool();
    const Role role = isError ? Role::Limit : Role::Caution;
    painter.setPen(QPen(color(role), 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(box).adjusted(0.5, 0.5, -1.5, -1.5));
    const double size = px(10);
    paintIcon(painter, QRectF(box.left() + px(2), box.top() + px(2), size, size), u"caution"_s,
              color(role));
}

}  // namespace

void JobsDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const JobColumn column = columnOf(index);
    const bool isOwn = (column == JobColumn::Droplets || column == JobColumn::Nozzle ||
                        column == JobColumn::Verdict) &&
                       !isPlaceholder(index) && !index.data(GroupRole).toBool();
    const bool hasProblem = !index.data(ProblemRole).toString().isEmpty();
    if (!isOwn && !hasProblem) return TableDelegate::paint(painter, option, index);
    if (!isOwn) TableDelegate::paint(painter, option, index);
    painter->save();
    if (isOwn) {
        paintGround(painter, option, index);
        const QRect inner = option.rect.adjusted(px(6), 0, -px(6), 0);
        if (column == JobColumn::Droplets) paintDroplets(*painter, inner, index);
        if (column == JobColumn::Nozzle) paintNozzle(*painter, inner, index);
        if (column == JobColumn::Verdict) paintVerdict(*painter, inner, index);
    }
    if (hasProblem) paintProblem(*painter, option.rect, index);
    painter->setRenderHint(QPainter::Antialiasing, false);
    paintFocus(painter, option);
    painter->restore();
}

QWidget* JobsDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    const JobColumn column = columnOf(index);
    QWidget* editor = column == JobColumn::Droplets ? new DropletEditor(parent)
                      : column == JobColumn::Nozzle ? nozzleEditor(parent, index)
                                                    : new QLineEdit(parent);
    editor->setObjectName(u"season.table.editor"_s);
    editor->setAccessibleName(wordsOf(column));
    return editor;
}

/// A line with the known names below it: typed, or picked.
QWidget* JobsDelegate::nozzleEditor(QWidget* parent, const QModelIndex& index) const {
    const auto* model = static_cast<const JobsModel*>(index.model());
    QStringList names;
    if (const SeasonRow* row = model->rowAt(index.row())) {
        for (const auto& name : model->readingOf(row->machine).nozzleNames) names << qs(name);
    }
    auto* line = new NameEditor(names, parent);
    connect(line, &NameEditor::picked, this, [this, line] {
        auto* self = const_cast<JobsDelegate*>(this);
        Q_EMIT self->commitData(line);
        Q_EMIT self->closeEditor(line);
    });
    line->setPlaceholderText(JobsModel::tr("best of your own"));
    return line;
}

void JobsDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    auto* line = static_cast<QLineEdit*>(editor);
    const QString text = index.data(Qt::EditRole).toString();
    // A verdict that comes in meanwhile must not touch a field that is open.
    if (!line->isModified() && line->text() != text) line->setText(text);
}

/// Only what was really typed: leaving a field untouched is no edit.
void JobsDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const {
    const auto* line = static_cast<QLineEdit*>(editor);
    if (line->text() != index.data(Qt::EditRole).toString() || line->isModified())
        model->setData(index, line->text(), Qt::EditRole);
}

/// Room for a figure with its unit, however narrow the column.
void JobsDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const {
    const int least = columnOf(index) == JobColumn::Nozzle ? px(220) : px(92);
    QRect box = option.rect;
    box.setWidth(std::max(box.width(), least));
    const int width = editor->parentWidget()->width();
    if (box.right() > width) box.moveRight(width);
    editor->setGeometry(box);
}

}  // namespace bw
