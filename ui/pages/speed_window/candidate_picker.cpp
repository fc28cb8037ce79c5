// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/candidate_picker.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QScreen>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/nozzle_icon.h"

namespace bw {

using namespace Qt::StringLiterals;

CandidatePicker::CandidatePicker(QWidget* parent)
    : QFrame(parent, Qt::Popup), m_find(new QLineEdit), m_list(new QListWidget) {
    setObjectName(u"speedWindow.candidates"_s);
    setFrameShape(QFrame::StyledPanel);
    setAccessibleName(tr("Candidate nozzles"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(8), px(8), px(8), px(8));
    column->setSpacing(px(6));
    auto* words = new TextLabel(tr("Take nozzles in to compare, or put them back. Sizes alone know "
                                   "no limits: those stay not checked."),
                                TextSize::Small, Role::Quiet);
    column->addWidget(words->wrapped());
    m_find->setObjectName(u"speedWindow.candidates.find"_s);
    m_find->setPlaceholderText(tr("Find by name or size"));
    m_find->setAccessibleName(m_find->placeholderText());
    m_find->setClearButtonEnabled(true);
    column->addWidget(m_find);
    m_list->setObjectName(u"speedWindow.candidates.list"_s);
    m_list->setAccessibleName(tr("Nozzles"));
    m_list->setIconSize(nozzleChipSize(u"0067"_s).toSize());
    column->addWidget(m_list, 1);
    setFixedSize(px(340), px(380));
    m_find->installEventFilter(this);
    m_list->installEventFilter(this);
    connect(m_find, &QLineEdit::textChanged, this, &CandidatePicker::narrow);
    connect(m_list, &QListWidget::itemChanged, this, [this](QListWidgetItem* item) {
        const QString name = item->data(Qt::UserRole).toString();
        if (item->checkState() == Qt::Checked)
            Q_EMIT taken(name);
        else
            Q_EMIT putBack(name);
    });
}

void CandidatePicker::setEntries(const std::vector<Entry>& entries) {
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    for (const Entry& entry : entries) {
        auto* item = new QListWidgetItem(
            nozzleIcon(entry.code),
            entry.isSizeOnly ? tr("%1, size only").arg(entry.name) : entry.name, m_list);
        item->setData(Qt::UserRole, entry.name);
        item->setToolTip(entry.name);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(entry.isTaken ? Qt::Checked : Qt::Unchecked);
    }
    narrow(m_find->text());
}

void CandidatePicker::openBelow(QWidget& anchor) {
    m_find->clear();
    QPoint at = anchor.mapToGlobal(QPoint(anchor.width() - width(), anchor.height() + px(2)));
    if (const QScreen* screen = anchor.screen()) {
        const QRect room = screen->availableGeometry();
        at.setX(std::clamp(at.x(), room.left(), std::max(room.left(), room.right() - width())));
        at.setY(std::clamp(at.y(), room.top(), std::max(room.top(), room.bottom() - height())));
    }
    move(at);
    show();
    m_find->setFocus(Qt::PopupFocusReason);
}

void CandidatePicker::narrow(const QString& text) {
    QListWidgetItem* first = nullptr;
    for (int i = 0; i < m_list->count(); ++i) {
        QListWidgetItem* item = m_list->item(i);
        const bool fits = item->text().contains(text.trimmed(), Qt::CaseInsensitive);
        item->setHidden(!fits);
        if (fits && !first) first = item;
    }
    if (!m_list->currentItem() || m_list->currentItem()->isHidden()) m_list->setCurrentItem(first);
}

void CandidatePicker::toggle(QListWidgetItem* item) {
    if (!item || item->isHidden()) return;
    item->setCheckState(item->checkState() == Qt::Checked ? Qt::Unchecked : Qt::Checked);
}

void CandidatePicker::moveBy(int rows) {
    const int step = rows > 0 ? 1 : -1;
    int row = m_list->currentRow() + step;
    while (row >= 0 && row < m_list->count() && m_list->item(row)->isHidden()) row += step;
    if (row >= 0 && row < m_list->count()) m_list->setCurrentRow(row);
}

bool CandidatePicker::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QFrame::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        toggle(m_list->currentItem());
        return true;
    }
    if (watched == m_find && (key == Qt::Key_Down || key == Qt::Key_Up)) {
        moveBy(key == Qt::Key_Down ? 1 : -1);
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

}  // namespace bw
