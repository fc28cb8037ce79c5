// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/base/problem.h"
#include "core/text/sentences.h"
#include "core/units/format.h"
#include "core/units/parse.h"

namespace bw {

inline QString qs(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
inline std::string ss(const QString& text) {
    return text.toStdString();
}

/// "2.8 bar" in the style's unit.
template <class Q>
QString shown(Q q, const NumberStyle& style) {
    return qs(format(anyQuantity(q), style));
}
inline QString shown(AnyQuantity q, const NumberStyle& style) {
    return qs(format(q, style));
}
inline QString shownIn(AnyQuantity q, Unit unit, const NumberStyle& style) {
    return qs(format(q, unit, style.decimalMark));
}
/// The figure alone, "2.8".
template <class Q>
QString figure(Q q, const NumberStyle& style) {
    const Unit unit = displayUnit(style.units, kDimensionOf<Q>);
    return qs(formatNumber(in(q, unit), unit, style.decimalMark));
}
template <class Q>
QString figureIn(Q q, Unit unit, const NumberStyle& style) {
    return qs(formatNumber(in(q, unit), unit, style.decimalMark));
}
/// A plain number with so many decimals.
inline QString plainNumber(double number, int decimals, const NumberStyle& style) {
    return qs(formatFixed(number, decimals, style.decimalMark));
}
/// "31 %" of a part of one, without decimals.
inline QString percent(double part, const NumberStyle& style) {
    return plainNumber(part * 100.0, 0, style) + QStringLiteral(" %");
}
/// "bar"
inline QString symbol(Unit unit) {
    return qs(info(unit).symbol);
}
template <class Q>
QString unitOf(const NumberStyle& style) {
    return symbol(displayUnit(style.units, kDimensionOf<Q>));
}
inline DecimalMarks marksOf(const NumberStyle& style) {
    return style.decimalMark == ',' ? DecimalMarks::OwnComma : DecimalMarks::OwnPoint;
}

/// The shipped English sentences, read once. Constant data, for widgets that have no session.
const Sentences& shippedSentences();
/// The sentence of a problem, for a reader.
inline QString sentenceOf(const Problem& problem, const NumberStyle& style = {}) {
    return qs(shippedSentences().of(problem, style));
}

}  // namespace bw
