// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/jobs_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>
#include <array>
#include <utility>

#include "ui/kit/metrics.h"
#include "ui/pages/season/jobs_delegate.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Widths at a body of 12 px, in the order of the columns.
constexpr std::array<int, kJobColumns> kWidths{148, 43, 48, 46, 42, 48, 43,
                                               42,  70, 42, 48, 86, 138};
/// Who takes what room is left over.
constexpr std::array<std::pair<JobColumn, double>, 2> kStretch{
    {{JobColumn::Name, 0.55}, {JobColumn::Nozzle, 0.45}}};
constexpr int kMostStretch = 280;

bool isEnter(int key) {
    return key == Qt::Key_Return || key == Qt::Key_Enter;
}

}  // namespace

JobsTable::JobsTable(QWidget* parent) : DataTable(parent) {
    setObjectName(u"season.jobs.table"_s);
    setAccessibleName(tr("Jobs of the season"));
    setItemDelegate(new JobsDelegate(this));
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    horizontalHeader()->setMinimumHeight(px(60));
    connect(this, &QAbstractItemView::doubleClicked, this, [this](const QModelIndex& index) {
        if (index.column() == static_cast<int>(JobColumn::Verdict)) Q_EMIT openAsked(index);
    });
}

void JobsTable::setModel(QAbstractItemModel* model) {
    DataTable::setModel(model);
    fitColumns();
}

int JobsTable::neededWidth() const {
    int sum = 0;
    for (int i = 0; i < kJobColumns; ++i) {
        if (!isColumnHidden(i)) sum += px(kWidths[static_cast<std::size_t>(i)]);
    }
    return sum;
}

/// Names get the room that is left over; nothing is narrower than it needs.
void JobsTable::fitColumns() {
    for (int i = 0; i < kJobColumns; ++i)
        setColumnWidth(i, px(kWidths[static_cast<std::size_t>(i)]));
    const int spare = viewport()->width() - neededWidth();
    if (spare <= 0) return;
    for (const auto& [column, part] : kStretch) {
        const int i = static_cast<int>(column);
        setColumnWidth(i,
                       columnWidth(i) + std::min(px(kMostStretch), static_cast<int>(part * spare)));
    }
}

void JobsTable::resizeEvent(QResizeEvent* event) {
    DataTable::resizeEvent(event);
    fitColumns();
}

std::vector<JobColumn> JobsTable::shownColumns() const {
    std::vector<JobColumn> out;
    for (int i = 0; i < kJobColumns; ++i) {
        const auto column = static_cast<JobColumn>(i);
        if (isTyped(column) && !isColumnHidden(i)) out.push_back(column);
    }
    return out;
}

void JobsTable::goToCell(int row, JobColumn column, bool wantsEdit) {
    const QModelIndex index = model()->index(row, static_cast<int>(column));
    if (!index.isValid()) return;
    setFocus();
    setCurrentIndex(index);
    scrollTo(index);
    if (wantsEdit) edit(index);
}

void JobsTable::keyPressEvent(QKeyEvent* event) {
    // A field passes on what it has dealt with: Enter comes here before it is closed.
    if (state() == QAbstractItemView::EditingState) return DataTable::keyPressEvent(event);
    const QModelIndex current = currentIndex();
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    if (event->matches(QKeySequence::Copy)) {
        Q_EMIT copyAsked();
    } else if (event->matches(QKeySequence::Paste)) {
        Q_EMIT pasteAsked();
    } else if (plain && event->key() == Qt::Key_Escape) {
        Q_EMIT dropAsked(current);
    } else if (plain && isEnter(event->key()) && current.isValid()) {
        if (current.column() == static_cast<int>(JobColumn::Verdict))
            Q_EMIT openAsked(current);
        else
            goDown();
    } else if (plain && event->key() == Qt::Key_Right &&
               current.column() == static_cast<int>(JobColumn::Verdict)) {
        Q_EMIT leftAtRight();
    } else {
        DataTable::keyPressEvent(event);
    }
}

/// The next or the previous cell that can be reached, row after row.
QModelIndex JobsTable::stepped(int step) const {
    QModelIndex at = currentIndex();
    int row = at.row(), column = at.column();
    while (at.isValid()) {
        column += step;
        if (column >= kJobColumns || column < 0) {
            row += step;
            column = step > 0 ? 0 : kJobColumns - 1;
        }
        at = model()->index(row, column);
        if (at.isValid() && (at.flags() & Qt::ItemIsEnabled) && !isColumnHidden(column)) return at;
    }
    return currentIndex();
}

QModelIndex JobsTable::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    if (action == MoveNext) return stepped(1);
    if (action == MovePrevious) return stepped(-1);
    return DataTable::moveCursor(action, modifiers);
}

void JobsTable::goDown() {
    const QModelIndex down = moveCursor(MoveDown, Qt::NoModifier);
    if (down.isValid()) setCurrentIndex(down);
}

void JobsTable::followTyped(int row, JobColumn column) {
    m_typed = model()->index(row, static_cast<int>(column));
}

/// Enter stores and goes down, as in a spreadsheet; the other ways out stay where they are. While
/// another cell is being put in hand nothing moves.
void JobsTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    const QPersistentModelIndex typed = std::exchange(m_typed, {});
    if (m_isMoving || !typed.isValid()) {
        DataTable::closeEditor(editor, hint);
    } else {
        DataTable::closeEditor(editor, QAbstractItemDelegate::NoHint);
        setCurrentIndex(typed);
        if (hint == QAbstractItemDelegate::EditNextItem) setCurrentIndex(stepped(1));
        if (hint == QAbstractItemDelegate::EditPreviousItem) setCurrentIndex(stepped(-1));
    }
    if (!m_isMoving && hint == QAbstractItemDelegate::SubmitModelCache) goDown();
}

void JobsTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    m_isMoving = true;
    DataTable::currentChanged(current, previous);
    m_isMoving = false;
    Q_EMIT cellChanged();
}

}  // namespace bw
