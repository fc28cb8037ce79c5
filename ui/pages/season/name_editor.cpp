// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/name_editor.h"

#include <QKeyEvent>
#include <QListWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr int kRow = 22;  ///< height of a name at a body of 12 px
}  // namespace

NameEditor::NameEditor(const QStringList& names, QWidget* parent)
    : HangingField(parent), m_names(names), m_list(new QListWidget) {
    auto* column = new QVBoxLayout(hanging());
    column->setContentsMargins(1, 1, 1, 1);
    m_list->setFocusPolicy(Qt::NoFocus);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setObjectName(u"season.nozzle.list"_s);
    m_list->setAccessibleName(tr("Nozzles that can be pinned"));
    m_list->setFixedWidth(px(240));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    column->addWidget(m_list);
    narrow({});
    connect(this, &QLineEdit::textEdited, this, &NameEditor::narrow);
    connect(m_list, &QListWidget::itemClicked, this, [this](const QListWidgetItem* item) {
        setText(item->text());
        setModified(true);
        Q_EMIT picked();
    });
}

/// The names that hold the text; all of them while nothing is typed.
void NameEditor::narrow(const QString& text) {
    m_list->clear();
    const QString part = text.trimmed();
    for (const QString& name : m_names) {
        if (!name.contains(part, Qt::CaseInsensitive)) continue;
        auto* item = new QListWidgetItem(name, m_list);
        item->setSizeHint(QSize(px(200), px(kRow)));
    }
    constexpr int kMostRows = 8;
    const int rows = std::clamp(m_list->count(), 1, kMostRows);
    m_list->setMinimumHeight(px(kRow));
    m_list->setMaximumHeight(rows * px(kRow) + 2);
    placePanel();
}

void NameEditor::step(int by) {
    if (m_list->count() == 0) return;
    const int row = std::clamp(m_list->currentRow() + by, 0, m_list->count() - 1);
    m_list->setCurrentRow(row);
    setText(m_list->item(row)->text());
    setModified(true);
}

void NameEditor::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Down)
        step(1);
    else if (event->key() == Qt::Key_Up)
        step(-1);
    else
        QLineEdit::keyPressEvent(event);
}

}  // namespace bw
