// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/records_page.h"

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QSaveFile>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/wall_parts.h"
#include "ui/pages/records/customers_view.h"
#include "ui/pages/records/records_view.h"
#include "ui/pages/records/wear_view.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

RecordsPage::RecordsPage(FarmSession& session, const QStringList& pages, QWidget* parent)
    : Page(session, parent) {
    setObjectName(u"records"_s);
    buildViews(pages);
    buildTools();
    addActions();
    connect(&session, &FarmSession::seasonChanged, this, &Page::markStale);
    connect(&session, &FarmSession::casesChanged, this, &Page::markStale);
    connect(&session, &FarmSession::customersChanged, this, &Page::markStale);
    connect(&session, &FarmSession::yardChanged, this, &Page::markStale);
    connect(&session, &FarmSession::styleChanged, this, &Page::markStale);
}

void RecordsPage::buildViews(const QStringList& pages) {
    m_list = new RecordsView(session(), pages);
    m_wear = new WearView(session());
    m_customers = new CustomersView(session());
    const bool hasYard = pages.contains(u"yard_checks"_s);
    auto* empty = new EmptyPage(
        tr("Nothing was done yet. Catch tests, checks, pre-season lists and cases are kept here by "
           "themselves. This is not a spray record."),
        hasYard ? tr("Do a yard check") : tr("Take a call"), tr("Look at the demo season"));
    empty->setObjectName(u"records.empty"_s);
    m_listStack = new QStackedWidget;
    m_listStack->addWidget(m_list);
    m_listStack->addWidget(empty);
    m_stack = new QStackedWidget;
    m_stack->addWidget(m_listStack);
    m_stack->addWidget(m_wear);
    m_stack->addWidget(m_customers);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_stack);
    connect(empty, &EmptyPage::acted, this,
            [this, hasYard] { Q_EMIT goTo(hasYard ? u"yard_checks"_s : u"call.new"_s); });
    connect(empty, &EmptyPage::secondActed, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    connect(m_list, &RecordsView::goTo, this, &Page::goTo);
    connect(m_list, &RecordsView::failed, this, &RecordsPage::tell);
    connect(m_customers, &CustomersView::failed, this, &RecordsPage::tell);
    connect(m_customers, &CustomersView::linkActivated, this, &RecordsPage::follow);
}

void RecordsPage::buildTools() {
    m_tools = new QWidget(this);
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(8));
    m_views = new SegmentedButtons;
    m_views->setObjectName(u"records.tools.view"_s);
    const QString names[] = {tr("All records"), tr("Wear"), tr("Customers")};
    const QString ids[] = {u"list"_s, u"wear"_s, u"customers"_s};
    for (int i = 0; i < 3; ++i) {
        m_views->addChoice(names[i], QKeySequence(Qt::ALT | (Qt::Key_1 + i)));
        m_views->button(i)->setObjectName(u"records.tools."_s + ids[i]);
    }
    m_views->setCurrentIndex(List);
    row->addWidget(m_views);
    row->addStretch(1);
    m_copy = new Button(tr("Copy table"), u"copy"_s);
    m_copy->setObjectName(u"records.tools.copy"_s);
    m_copy->setKey(QKeySequence(u"Ctrl+Shift+C"_s), false);
    m_save = new Button(tr("Save as CSV…"), u"save"_s);
    m_save->setObjectName(u"records.tools.save"_s);
    row->addWidget(m_copy);
    row->addWidget(m_save);
    connect(m_views, &SegmentedButtons::currentIndexChanged, this, &RecordsPage::showView);
    connect(m_copy, &QAbstractButton::clicked, this, &RecordsPage::copy);
    connect(m_save, &QAbstractButton::clicked, this, &RecordsPage::save);
}

void RecordsPage::addActions() {
    addPageAction(this,
                  {u"records.search"_s, tr("&Search"), u"find"_s, QKeySequence(u"Ctrl+F"_s), {}},
                  [this] {
                      m_views->setCurrentIndex(List);
                      m_list->startSearch();
                  });
    addPageAction(
        this,
        {u"records.copy"_s, tr("&Copy the table"), u"copy"_s, QKeySequence(u"Ctrl+Shift+C"_s), {}},
        [this] { copy(); });
    addPageAction(this, {u"records.save"_s, tr("Save as CS&V…"), u"save"_s, {}, {}},
                  [this] { save(); });
    addPageAction(this,
                  {u"records.addCustomer"_s,
                   tr("&Add a customer"),
                   u"plus"_s,
                   QKeySequence(Qt::Key_Insert),
                   {}},
                  [this] {
                      m_views->setCurrentIndex(Customers);
                      m_customers->add();
                  });
}

RecordsPage::View RecordsPage::view() const {
    return static_cast<View>(m_stack->currentIndex());
}

QString RecordsPage::hint() const {
    return tr("Ctrl+F search · Enter opens · Del removes, Ctrl+Z brings back");
}

void RecordsPage::refresh() {
    const bool isEmpty = session().yardRecords().empty() && session().cases().empty();
    m_listStack->setCurrentIndex(isEmpty ? 1 : 0);
    if (view() == List) m_list->refresh();
    if (view() == Wear) m_wear->refresh();
    if (view() == Customers) m_customers->refresh();
    m_save->setEnabled(view() == List && !isEmpty);
    m_copy->setEnabled(view() != List || !isEmpty);
}

void RecordsPage::showView(int view) {
    m_stack->setCurrentIndex(view);
    refresh();
    if (view == Wear) m_wear->takeFocus();
    if (view == Customers) m_customers->takeFocus();
    if (view == List && m_listStack->currentIndex() == 0) m_list->takeFocus();
}

/// Records are names, of customers and machines: none of them has a place on a wall.
QWidget* RecordsPage::makeWallView() {
    auto* wall = new WallSentence(u"records.wall"_s);
    wall->setText(tr("Records name customers and machines: they stay off the wall."), Role::Quiet);
    return wall;
}

void RecordsPage::showState(const QString& state) {
    m_views->setCurrentIndex(state == u"wear"_s        ? Wear
                             : state == u"customers"_s ? Customers
                                                       : List);
    if (state == u"catch"_s) m_list->showKind(LineKind::CatchTest);
}

void RecordsPage::copy() {
    if (!m_copy->isEnabled()) return;
    const QString text = view() == List   ? m_list->tableText()
                         : view() == Wear ? m_wear->tableText()
                                          : m_customers->tableText();
    QApplication::clipboard()->setText(text);
    Q_EMIT notice(tr("The table is on the clipboard."), false);
}

void RecordsPage::save() {
    if (!m_save->isEnabled()) return;
    bool withCustomers = false;
    if (m_list->hasCustomers()) {
        const int answer = prompts().ask(
            this, {tr("Save as CSV"),
                   tr("Some of these records belong to a customer. With their names?"),
                   tr("Without them the notes stay out too, as they may name people. Names of "
                      "machines stay as typed."),
                   {tr("Without names"), tr("With names and notes"), tr("Cancel")}});
        if (answer > 1) return;
        withCustomers = answer == 1;
    } else {
        withCustomers = true;
    }
    const QString path = prompts().saveFile(this, tr("Save as CSV"), tr("records.csv"),
                                            tr("Comma-separated values (*.csv)"));
    if (path.isEmpty()) return;
    write(path.endsWith(u".csv"_s, Qt::CaseInsensitive) ? path : path + u".csv"_s,
          m_list->csv(withCustomers));
}

void RecordsPage::write(const QString& path, const std::string& text) {
    QSaveFile file(path);
    // The mark tells spreadsheets that what follows is UTF-8.
    const QByteArray bytes = "\xEF\xBB\xBF" + QByteArray::fromStdString(text);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return Q_EMIT notice(tr("%1 was not saved: %2").arg(path, file.errorString()), true);
    Q_EMIT notice(tr("Saved: %1").arg(path), false);
}

void RecordsPage::follow(const QString& link) {
    m_views->setCurrentIndex(List);
    const QString value = link.section(u':', 1);
    if (link.startsWith(u"case:"_s))
        m_list->showRecord(true, value.toLongLong());
    else
        m_list->showMachine(value);
}

void RecordsPage::tell(const Problem& problem) {
    Q_EMIT notice(sentenceOf(problem, session().currentStyle()), true);
}

}  // namespace bw
