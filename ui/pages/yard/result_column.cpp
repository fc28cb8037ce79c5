// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/result_column.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/kit/metrics.h"

namespace bw {

ResultColumn::ResultColumn(QWidget* parent)
    : QWidget(parent), m_verdict(new VerdictPanel), m_list(new EvidenceList) {
    setFixedWidth(px(316));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(new HairLine(Qt::Vertical));
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    row->addLayout(column, 1);
    column->addWidget(m_verdict);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(m_list);
    column->addWidget(scroll, 1);
    auto* foot = new RolePanel(Role::Surface);
    foot->setEdges(Qt::TopEdge);
    m_foot = new QVBoxLayout(foot);
    m_foot->setContentsMargins(px(14), px(8), px(14), px(10));
    m_foot->setSpacing(px(6));
    column->addWidget(foot);
}

void ResultColumn::setVerdict(const QString& title, const QString& text, Tone tone) {
    m_verdict->setVerdict(title, text, tone);
}

void ResultColumn::setSections(const QVector<EvidenceSection>& sections) {
    m_list->setSections(sections);
}

}  // namespace bw
