// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/page_choice.h"

#include <QObject>

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kMargin = 12.0, kSmallMargin = 8.0;  // mm

QPageSize::PageSizeId idOf(Paper paper) {
    switch (paper) {
        case Paper::A4:
            return QPageSize::A4;
        case Paper::Letter:
            return QPageSize::Letter;
        case Paper::A5:
            return QPageSize::A5;
        case Paper::HalfLetter:
            return QPageSize::Statement;  // 5.5 x 8.5 in
    }
    return QPageSize::A4;
}

}  // namespace

QPageLayout pageLayoutOf(const PageChoice& choice) {
    const bool isSmall = choice.paper == Paper::A5 || choice.paper == Paper::HalfLetter;
    const double margin = isSmall ? kSmallMargin : kMargin;
    return {QPageSize(idOf(choice.paper)),
            choice.isLandscape ? QPageLayout::Landscape : QPageLayout::Portrait,
            QMarginsF(margin, margin, margin, margin), QPageLayout::Millimeter};
}

QString paperName(Paper paper) {
    switch (paper) {
        case Paper::A4:
            return QObject::tr("A4");
        case Paper::Letter:
            return QObject::tr("Letter");
        case Paper::A5:
            return QObject::tr("A5");
        case Paper::HalfLetter:
            return QObject::tr("Half letter");
    }
    return {};
}

Paper usualPaper(UnitSystem units) {
    return units == UnitSystem::Us ? Paper::Letter : Paper::A4;
}

QString paperKey(Paper paper) {
    switch (paper) {
        case Paper::A4:
            return u"a4"_s;
        case Paper::Letter:
            return u"letter"_s;
        case Paper::A5:
            return u"a5"_s;
        case Paper::HalfLetter:
            return u"half_letter"_s;
    }
    return {};
}

Paper paperFor(const QString& key, Paper otherwise) {
    for (const Paper paper : kPapers) {
        if (paperKey(paper) == key) return paper;
    }
    return otherwise;
}

}  // namespace bw
