// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/plain_words.h"

#include <QDate>
#include <QLocale>
#include <cmath>

#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

QString dayWords(const std::string& iso) {
    const QDate day = QDate::fromString(qs(iso).left(10), Qt::ISODate);
    return day.isValid() ? QLocale(QLocale::English).toString(day, u"d MMM yyyy"_s) : qs(iso);
}

QString offWords(double part, const NumberStyle& style) {
    const double percent = (part - 1) * 100;
    const QString figure = plainNumber(std::abs(percent), 1, style) + u" %"_s;
    return (percent < 0 ? u"\u2212"_s : u"+"_s) + figure;
}

}  // namespace bw
