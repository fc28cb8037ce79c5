// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/page.h"

class QStackedWidget;

namespace bw {

class Button;
class CustomersView;
class RecordsView;
class SegmentedButtons;
class WearView;
struct Problem;

/// What was done: yard checks, catch tests, lists and cases; wear of each nozzle set; customers.
/// Not a spray record.
class RecordsPage : public Page {
    Q_OBJECT

  public:
    /// `pages`: ids of the pages there are, to which a record can lead.
    RecordsPage(FarmSession& session, const QStringList& pages, QWidget* parent = nullptr);

    QString title() const override { return tr("Records"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override {
        return {QStringLiteral("catch"), QStringLiteral("wear"), QStringLiteral("customers")};
    }
    void showState(const QString& state) override;

  protected:
    QWidget* makeWallView() override;

  private:
    enum View { List, Wear, Customers };
    void buildTools();
    void buildViews(const QStringList& pages);
    void addActions();
    void showView(int view);
    void copy();
    void save();
    void write(const QString& path, const std::string& text);
    void follow(const QString& link);
    void tell(const Problem& problem);
    View view() const;

    QWidget* m_tools = nullptr;
    SegmentedButtons* m_views = nullptr;
    Button* m_copy = nullptr;
    Button* m_save = nullptr;
    QStackedWidget* m_stack = nullptr;
    QStackedWidget* m_listStack = nullptr;
    RecordsView* m_list = nullptr;
    WearView* m_wear = nullptr;
    CustomersView* m_customers = nullptr;
};

}  // namespace bw
