// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/field_rows.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <limits>

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QJsonArray jsonOf(const CurvePoint& p) {
    return {p.flow.si(), p.pressure.si()};
}
QJsonArray jsonOf(const FlowPoint& p) {
    return {p.pressure.si(), p.flow.si()};
}
QJsonArray jsonOf(const DropletBand& b) {
    const auto name = choiceName(b.category);
    return {b.from.si(), b.to.si(),
            QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()))};
}
QJsonArray jsonOf(const DriftBand& b) {
    return {b.from.si(), b.to.si(), b.percent};
}

/// The first number of an entry that is not finite; JSON has no word for it.
std::optional<double> strayNumber(const QJsonArray& entry) {
    for (const auto& value : entry) {
        if (value.isDouble() && !std::isfinite(value.toDouble())) return value.toDouble();
    }
    return std::nullopt;
}

std::string written(const QJsonArray& array) {
    return QJsonDocument(array).toJson(QJsonDocument::Compact).toStdString();
}

template <class T>
Cell listCell(const std::vector<T>& list) {
    QJsonArray out;
    for (const auto& item : list) {
        const QJsonArray entry = jsonOf(item);
        if (const auto stray = strayNumber(entry)) return *stray;
        out.append(entry);
    }
    return written(out);
}

std::optional<QJsonArray> arrayOf(const Cell& cell) {
    const auto* text = std::get_if<std::string>(&cell);
    if (!text) return std::nullopt;
    const auto document = QJsonDocument::fromJson(QByteArray::fromStdString(*text));
    if (!document.isArray()) return std::nullopt;
    return document.array();
}

template <class Q>
bool readQuantity(const QJsonValue& value, Q& out) {
    if (!value.isDouble()) return false;
    out = Q::fromSi(value.toDouble());
    return true;
}

bool readItem(const QJsonArray& a, CurvePoint& p) {
    return a.size() == 2 && readQuantity(a[0], p.flow) && readQuantity(a[1], p.pressure);
}
bool readItem(const QJsonArray& a, FlowPoint& p) {
    return a.size() == 2 && readQuantity(a[0], p.pressure) && readQuantity(a[1], p.flow);
}
bool readItem(const QJsonArray& a, DropletBand& b) {
    if (a.size() != 3 || !readQuantity(a[0], b.from) || !readQuantity(a[1], b.to)) return false;
    return fromCell(Cell(a[2].toString().toStdString()), b.category);
}
bool readItem(const QJsonArray& a, DriftBand& b) {
    if (a.size() != 3 || !readQuantity(a[0], b.from) || !readQuantity(a[1], b.to)) return false;
    b.percent = a[2].toDouble();
    return a[2].isDouble();
}

template <class T>
bool readList(const Cell& cell, std::vector<T>& out) {
    const auto array = arrayOf(cell);
    if (!array) return false;
    out.clear();
    for (const auto& value : *array) {
        T item;
        if (!value.isArray() || !readItem(value.toArray(), item)) return false;
        out.push_back(item);
    }
    return true;
}

}  // namespace

Cell toCell(const std::vector<int>& list) {
    QJsonArray out;
    for (const int number : list) out.append(number);
    return written(out);
}
Cell toCell(const std::vector<CurvePoint>& list) {
    return listCell(list);
}
Cell toCell(const std::vector<FlowPoint>& list) {
    return listCell(list);
}
Cell toCell(const std::vector<DropletBand>& list) {
    return listCell(list);
}
Cell toCell(const std::vector<DriftBand>& list) {
    return listCell(list);
}

bool fromCell(const Cell& cell, double& out) {
    const auto* number = std::get_if<double>(&cell);
    if (!number || !std::isfinite(*number)) return false;
    out = *number;
    return true;
}

bool fromCell(const Cell& cell, int& out) {
    double number = 0.0;
    if (!fromCell(cell, number) || number != std::trunc(number)) return false;
    if (std::abs(number) > std::numeric_limits<int>::max()) return false;
    out = static_cast<int>(number);
    return true;
}

bool fromCell(const Cell& cell, bool& out) {
    double number = 0.0;
    if (!fromCell(cell, number) || (number != 0.0 && number != 1.0)) return false;
    out = number == 1.0;
    return true;
}

bool fromCell(const Cell& cell, std::vector<int>& out) {
    const auto array = arrayOf(cell);
    if (!array) return false;
    out.clear();
    for (const auto& value : *array) {
        if (!value.isDouble() || !fromCell(Cell(value.toDouble()), out.emplace_back()))
            return false;
    }
    return true;
}
bool fromCell(const Cell& cell, std::vector<CurvePoint>& out) {
    return readList(cell, out);
}
bool fromCell(const Cell& cell, std::vector<FlowPoint>& out) {
    return readList(cell, out);
}
bool fromCell(const Cell& cell, std::vector<DropletBand>& out) {
    return readList(cell, out);
}
bool fromCell(const Cell& cell, std::vector<DriftBand>& out) {
    return readList(cell, out);
}

}  // namespace bw
