// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/name_rows.h"

#include <QGridLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/list_line.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

NameRows::NameRows(QWidget* parent)
    : QWidget(parent),
      m_name(new ListLine),
      m_customer(new ChoiceBox),
      m_problem(new TextLabel({}, TextSize::Small, Role::Limit)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, px(6), 0, px(8));
    grid->setHorizontalSpacing(px(5));
    grid->setVerticalSpacing(px(4));
    grid->setColumnMinimumWidth(0, px(112));
    grid->setColumnStretch(1, 1);
    m_name->setObjectName(u"machine.name.name"_s);
    m_name->setAccessibleName(tr("Name of the machine"));
    m_customer->setObjectName(u"machine.name.customer"_s);
    m_customer->setAccessibleName(tr("Customer"));
    m_customer->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    auto* add = new IconButton(tr("Add a customer"), u"plus"_s);
    add->setObjectName(u"machine.name.addCustomer"_s);
    const auto label = [&](const QString& text, QWidget* buddy, int row) {
        auto* words = new TextLabel(text);
        words->setBuddy(buddy);
        grid->addWidget(words, row, 0);
    };
    label(tr("Name"), m_name, 0);
    grid->addWidget(m_name, 0, 1, 1, 2);
    grid->addWidget(m_problem->wrapped(), 1, 1, 1, 2);
    label(tr("Customer"), m_customer, 2);
    grid->addWidget(m_customer, 2, 1);
    grid->addWidget(add, 2, 2);
    // Customers have no place on a wall.
    if (theme().isProjector()) {
        for (int column = 0; column < 3; ++column)
            grid->itemAtPosition(2, column)->widget()->hide();
    }
    m_problem->hide();
    connect(m_name, &QLineEdit::returnPressed, this, [this] { takeName(); });
    connect(m_name, &ListLine::focusLeft, this, [this] { takeName(); });
    connect(m_name, &ListLine::escaped, this, &NameRows::dropPending);
    connect(m_customer, &QComboBox::activated, this,
            [this](int index) { Q_EMIT customerWished(m_customer->itemData(index).toLongLong()); });
    connect(add, &QAbstractButton::clicked, this, &NameRows::newCustomerWished);
}

void NameRows::present(const FormView& view, RecordId machine) {
    m_shown = QString::fromStdString(view.machine.name);
    if (!m_name->isModified()) {
        m_name->setText(m_shown);
        m_name->setModified(false);
        m_problem->hide();
    }
    const QSignalBlocker quiet(m_customer);
    m_customer->clear();
    m_customer->addItem(tr("own machine"), 0);
    for (const auto& stored : view.session.customers()) {
        const Customer& customer = stored.customer;
        QString name = QString::fromStdString(customer.name);
        if (!customer.place.empty()) name += u", "_s + QString::fromStdString(customer.place);
        m_customer->addItem(name, QVariant::fromValue<qint64>(stored.id));
    }
    for (const auto& stored : view.session.season().machines) {
        if (stored.id == machine)
            m_customer->setCurrentData(QVariant::fromValue<qint64>(stored.customer));
    }
    if (m_customer->currentIndex() < 0) m_customer->setCurrentIndex(0);
    m_customer->setToolTip(m_customer->currentText());
}

void NameRows::focusName() {
    m_name->setFocus(Qt::OtherFocusReason);
    m_name->selectAll();
}

void NameRows::dropPending() {
    m_name->setText(m_shown);
    m_name->setModified(false);
    m_problem->hide();
}

bool NameRows::commitPending() {
    return takeName();
}

bool NameRows::takeName() {
    const QString name = m_name->text().trimmed();
    if (!m_name->isModified()) return true;
    m_problem->setVisible(name.isEmpty());
    if (name.isEmpty()) {
        m_problem->setText(tr("A machine needs a name. Kept until mended: %1.").arg(m_shown));
        return false;
    }
    m_name->setModified(false);
    if (name != m_shown) Q_EMIT renamed(name);
    return true;
}

QString NameRows::keyOf(const QWidget* widget) const {
    if (widget == m_name) return u"name"_s;
    return widget == m_customer ? u"customer"_s : QString();
}

}  // namespace bw
