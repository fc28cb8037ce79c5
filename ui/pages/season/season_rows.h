// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QString>
#include <optional>
#include <vector>

#include "core/model/season.h"

namespace bw {

/// One row of the season's tables: a machine's head, one of its jobs, or the line on which a new
/// job of it is typed.
struct SeasonRow {
    enum class Kind { Group, Job, NewJob };
    Kind kind = Kind::Group;
    RecordId machine = 0;
    RecordId job = 0;
    bool operator==(const SeasonRow&) const = default;
};

/// What of the season is shown.
struct SeasonScope {
    RecordId machine = 0;  ///< 0: all
    QString filter;        ///< part of a job's name; empty: all jobs
    bool operator==(const SeasonScope&) const = default;
};
/// The rows for it: per machine its head, its jobs in order and, unless filtered, the empty line.
/// With a filter a machine without a match is left out.
std::vector<SeasonRow> seasonRows(const Season& season, const SeasonScope& scope);

/// A table whose rows are those of the season. New rows are worked in so that what stays keeps its
/// index, its selection and its place on screen.
class SeasonRowsModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    using QAbstractTableModel::QAbstractTableModel;
    int rowCount(const QModelIndex& parent = {}) const override;
    const std::vector<SeasonRow>& rows() const { return m_rows; }
    /// The row, or nothing outside.
    const SeasonRow* rowAt(int row) const;
    /// Where a job stands, -1 if it is not shown.
    int rowOfJob(RecordId job) const;
    /// Where a new job of a machine is typed, -1 if it is not shown.
    int newRowOf(RecordId machine) const;

  protected:
    void setRows(std::vector<SeasonRow> rows);
    /// Says that every cell may have changed.
    void touchAll();

  private:
    std::vector<SeasonRow> m_rows;
};

}  // namespace bw
