// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "ui/kit/page.h"

class QBoxLayout;

namespace bw {

class Button;
class RoleCard;
class TextLabel;

/// The first page, by role: plan, fix, teach. An empty file is offered the demo season or the first
/// machine. What the program cannot do yet is not promised here.
class StartPage : public Page {
    Q_OBJECT

  public:
    /// `pages`: ids of the pages that there are.
    StartPage(FarmSession& session, const QStringList& pages, QWidget* parent = nullptr);
    QString title() const override { return tr("Start"); }
    void refresh() override;

  private:
    QWidget* buildFirstStart();
    QWidget* buildDemoNote();
    void addCards(QBoxLayout& row);
    RoleCard* planCard();
    RoleCard* fixCard();
    RoleCard* teachCard();
    /// A button of a card that asks the frame for a page or command; none if the page is not there.
    Button* way(RoleCard& card, const QString& text, const QString& icon, const QString& target,
                const QKeySequence& key, bool isFirst);
    bool has(const QString& page) const { return m_pageIds.contains(page); }

    QStringList m_pageIds;
    QWidget* m_firstStart;
    QWidget* m_demoNote;
    RoleCard* m_plan = nullptr;
    RoleCard* m_fix = nullptr;
    RoleCard* m_teach = nullptr;
};

}  // namespace bw
