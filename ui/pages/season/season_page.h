// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <optional>
#include <string>
#include <vector>

#include "core/model/season.h"
#include "ui/kit/page.h"
#include "ui/pages/season/job_cells.h"
#include "ui/pages/season/season_rows.h"

class QModelIndex;
class QSplitter;
class QStackedLayout;

namespace bw {

class DataTable;
class IconLabel;
class JobsModel;
class JobsTable;
class MatrixModel;
class MatrixView;
class SeasonEdits;
class SeasonFoot;
class SeasonHeader;
class SeasonRunner;
class ChoiceFoot;
class ChoiceRunner;
class TextLabel;

/// The season: the jobs of all machines as a table edited like a spreadsheet, each with its
/// verdict, and beside it how every nozzle of one's own serves each job.
class SeasonPage : public Page {
    Q_OBJECT

  public:
    explicit SeasonPage(FarmSession& session, QWidget* parent = nullptr);

    QString title() const override { return tr("Season"); }
    QWidget* headerTools() override;
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override;
    void showState(const QString& state) override;

  protected:
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* buildTables();
    QWidget* buildMessage();
    QWidget* buildFoot();
    void buildActions();
    void buildRowActions();
    void connectTables();
    void connectEdits();
    void linkScrolling();
    void shareWidth();
    /// What is on screen; nothing before the first time.
    struct Shown {
        Season season;
        SeasonScope scope;
        char decimalMark = '.';
        bool operator==(const Shown&) const = default;
    };
    void reload(const Shown& now);
    void showVerdicts();
    void showRateColumns();
    void setMatrixShown(bool shown);
    void takeJobInHand();
    void followSession();
    void showMessage();
    void choose();
    void chooseAgain();
    void leaveChoice();
    void askWishes();
    void showChoice();
    void say(const QString& text, bool isProblem, bool isUnchecked);
    void place(RecordId job, JobColumn column, bool edit);
    void openWindow(const QModelIndex& index, bool ofMatrix);
    void copy(bool withHeading);
    void paste();
    std::vector<RecordId> machinesShown() const;
    QString sentenceInHand(bool& isUnchecked) const;

    SeasonRunner* m_runner;
    ChoiceRunner* m_choice;
    JobsModel* m_model;
    MatrixModel* m_matrixModel;
    SeasonEdits* m_edits;
    QPointer<SeasonHeader> m_header;
    QStackedLayout* m_stack = nullptr;
    QSplitter* m_split = nullptr;
    JobsTable* m_table = nullptr;
    MatrixView* m_matrix = nullptr;
    IconLabel* m_messageIcon = nullptr;
    TextLabel* m_message = nullptr;
    SeasonFoot* m_foot = nullptr;
    ChoiceFoot* m_choiceFoot = nullptr;
    QStackedLayout* m_feet = nullptr;
    QSplitter* m_heights = nullptr;
    std::optional<Shown> m_shown;
    bool m_isRefreshing = false;
    bool m_isSplitByUser = false;
    bool m_wantsRates = false;
    bool m_wantsChoice = false;  ///< a choice stands at the foot and follows what is changed
    std::string m_wishesChosen;  ///< those it was made with
};

}  // namespace bw
