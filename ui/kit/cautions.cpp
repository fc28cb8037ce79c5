// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/cautions.h"

#include "core/diagnosis/knowledge.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

QString cautionText(const QString& id, const QString& lead) {
    const auto& cautions = Knowledge::shipped().cautions;
    const auto found = cautions.find(ss(id));
    const QString text =
        (found == cautions.end() ? u'<' + id + u'>' : qs(found->second.text)).toHtmlEscaped();
    if (!lead.isEmpty()) return u"<b>"_s + lead.toHtmlEscaped() + u"</b> "_s + text;
    const QString stop = u"Stop first."_s;
    return text.startsWith(stop) ? u"<b>"_s + stop + u"</b>"_s + text.mid(stop.size()) : text;
}

QStringList cautionTexts(const QStringList& ids) {
    QStringList texts;
    for (const QString& id : ids) texts.append(cautionText(id));
    return texts;
}

}  // namespace bw
