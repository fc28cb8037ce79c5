// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/fault_panel.h"

#include <QLineEdit>
#include <QListWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/diagnosis/knowledge.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/cause_effect/fault_groups.h"
#include "ui/pages/cause_effect/lever_row.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kUsualSeverity = 0.5;  ///< where the knowledge names none
constexpr int kCauseRole = Qt::UserRole;

double firstSeverity(const std::string& id) {
    const Cause* cause = Knowledge::shipped().cause(id);
    return cause ? cause->severity.to : kUsualSeverity;
}

}  // namespace

FaultPanel::FaultPanel(const Sentences& sentences, QWidget* parent)
    : QWidget(parent),
      m_sentences(sentences),
      m_rows(new QVBoxLayout),
      m_none(new TextLabel(tr("No fault is in. Choose one below."), TextSize::Body, Role::Quiet)),
      m_search(new QLineEdit),
      m_list(new QListWidget) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(6));
    m_rows->setSpacing(px(4));
    column->addLayout(m_rows);
    m_none->setObjectName(u"causeEffect.faults.none"_s);
    column->addWidget(m_none->wrapped());
    m_search->setObjectName(u"causeEffect.faults.search"_s);
    m_search->setPlaceholderText(tr("Search the causes"));
    m_search->setAccessibleName(m_search->placeholderText());
    m_search->setClearButtonEnabled(true);
    column->addWidget(m_search);
    m_list->setObjectName(u"causeEffect.faults.list"_s);
    m_list->setAccessibleName(tr("Causes that can be put in"));
    m_list->setMinimumHeight(px(140));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setWordWrap(true);
    column->addWidget(m_list, 1);
    fillList();
    connect(m_search, &QLineEdit::textChanged, this, &FaultPanel::search);
    connect(m_search, &QLineEdit::returnPressed, this, [this] {
        for (int i = 0; i < m_list->count(); ++i) {
            QListWidgetItem* item = m_list->item(i);
            if (item->isHidden() || !(item->flags() & Qt::ItemIsUserCheckable)) continue;
            m_list->setCurrentItem(item);
            return m_list->setFocus();
        }
    });
    connect(m_list, &QListWidget::itemChanged, this, &FaultPanel::toggle);
}

QString FaultPanel::nameOf(const std::string& id) const {
    const Cause* cause = Knowledge::shipped().cause(id);
    return cause ? qs(cause->name) : qs(m_sentences.text("cause_effect.fault." + id));
}

void FaultPanel::fillList() {
    const QSignalBlocker quiet(m_list);
    for (const FaultGroup& group : faultGroups()) {
        auto* head = new QListWidgetItem(group.title, m_list);
        head->setFlags(Qt::ItemIsEnabled);
        head->setFont(textFont(TextSize::Small, true));
        for (const std::string& cause : group.causes) {
            auto* item = new QListWidgetItem(nameOf(cause), m_list);
            item->setData(kCauseRole, qs(cause));
            item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
            item->setCheckState(Qt::Unchecked);
        }
    }
}

/// Hides what does not match; a heading stays while one of its causes does.
void FaultPanel::search(const QString& text) {
    QListWidgetItem* head = nullptr;
    for (int i = 0; i < m_list->count(); ++i) {
        QListWidgetItem* item = m_list->item(i);
        if (!(item->flags() & Qt::ItemIsUserCheckable)) {
            head = item;
            head->setHidden(true);
            continue;
        }
        const bool fits = item->text().contains(text.trimmed(), Qt::CaseInsensitive) ||
                          (head && head->text().contains(text.trimmed(), Qt::CaseInsensitive));
        item->setHidden(!fits);
        if (fits && head) head->setHidden(false);
    }
}

void FaultPanel::setFaults(const std::vector<Fault>& faults, const NumberStyle& style) {
    const auto isSame = [](const Fault& a, const Fault& b) { return a.cause == b.cause; };
    const bool keepsRows =
        std::equal(faults.begin(), faults.end(), m_faults.begin(), m_faults.end(), isSame);
    m_faults = faults;
    if (!keepsRows || m_levers.size() != faults.size()) showRows(style);
    for (std::size_t i = 0; i < m_levers.size(); ++i) {
        m_levers[i]->setStyle(style, Unit::Percent);
        m_levers[i]->setValue(anyQuantity(faults[i].severity));
    }
    const QSignalBlocker quiet(m_list);
    for (int i = 0; i < m_list->count(); ++i) {
        QListWidgetItem* item = m_list->item(i);
        if (!(item->flags() & Qt::ItemIsUserCheckable)) continue;
        const std::string cause = ss(item->data(kCauseRole).toString());
        const bool isIn = std::any_of(faults.begin(), faults.end(),
                                      [&](const Fault& f) { return f.cause == cause; });
        item->setCheckState(isIn ? Qt::Checked : Qt::Unchecked);
    }
    m_none->setVisible(faults.empty());
}

void FaultPanel::showRows(const NumberStyle& style) {
    for (LeverRow* row : m_levers) {
        row->hide();
        row->deleteLater();
    }
    m_levers.clear();
    for (const Fault& fault : m_faults) {
        const QString name = nameOf(fault.cause);
        auto* row = new LeverRow(u"causeEffect.fault."_s + qs(fault.cause), name, Dimension::None,
                                 Unit::Percent);
        row->setStyle(style, Unit::Percent);
        row->setRange(0, 100, 1);
        row->setBounds(0, 100);
        row->setRemovable(tr("Take “%1” out").arg(name));
        connect(row, &LeverRow::moved, this,
                [this, cause = fault.cause](AnyQuantity severity) { put(cause, severity.si); });
        connect(row, &LeverRow::removeWished, this, [this, cause = fault.cause] { take(cause); });
        m_rows->addWidget(row);
        m_levers.push_back(row);
    }
}

void FaultPanel::toggle(QListWidgetItem* item) {
    const std::string cause = ss(item->data(kCauseRole).toString());
    if (item->checkState() == Qt::Checked)
        put(cause, firstSeverity(cause));
    else
        take(cause);
}

void FaultPanel::put(const std::string& cause, double severity) {
    std::vector<Fault> faults = m_faults;
    const auto found = std::find_if(faults.begin(), faults.end(),
                                    [&](const Fault& f) { return f.cause == cause; });
    if (found == faults.end())
        faults.push_back({cause, severity});
    else
        found->severity = severity;
    Q_EMIT changed(faults, tr("%1, %2 %").arg(nameOf(cause)).arg(qRound(severity * 100)));
}

void FaultPanel::take(const std::string& cause) {
    std::vector<Fault> faults = m_faults;
    std::erase_if(faults, [&](const Fault& f) { return f.cause == cause; });
    Q_EMIT changed(faults, tr("mended: %1").arg(nameOf(cause)));
}

}  // namespace bw
