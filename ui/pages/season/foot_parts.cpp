// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/foot_parts.h"

#include <QHBoxLayout>

#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

TextLabel* footText(const QString& text, Role role) {
    return (new TextLabel(text, TextSize::Small, role))->wrapped();
}

QHBoxLayout* footRow(const QString& icon, Role role, const QString& text, Role textRole) {
    auto* row = new QHBoxLayout;
    row->setSpacing(px(8));
    row->addWidget(new IconLabel(icon, role, 18), 0, Qt::AlignTop);
    row->addWidget(footText(text, textRole), 1);
    return row;
}

QString jobNames(const FarmSession& session, const std::vector<RecordId>& jobs) {
    QStringList names;
    for (const RecordId id : jobs) {
        if (const Job* job = session.job(id)) names << qs(job->name);
    }
    return names.join(u", "_s);
}

}  // namespace bw
