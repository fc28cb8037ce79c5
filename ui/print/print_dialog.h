// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <functional>
#include <vector>

#include "core/report/report_context.h"
#include "core/report/sheet.h"
#include "ui/print/page_choice.h"

class QPrinter;

namespace bw {

class Button;
class ChoiceBox;
class FarmSession;
class SegmentedButtons;
class SheetPreview;
class TextLabel;
struct Machine;

/// A sheet that a page has to offer: what it is called, and what makes it when it is wanted.
struct SheetOffer {
    QString name;
    std::function<Sheet()> make;
};

/// Words, units and day for sheets of a machine: the session's own.
ReportContext reportContext(const FarmSession& session, const Machine& machine);

/// Asks which printer; false: given up. Put another in its place for tests.
using PrinterChooser = std::function<bool(QPrinter&, QWidget*)>;
void usePrinterChooser(PrinterChooser chooser);

/// Preview of one of several sheets, with paper and orientation, to print, save as PDF or, where
/// there are tables, as CSV. Paper is remembered in the farm file, for US units and others apart.
class PrintDialog : public QDialog {
    Q_OBJECT

  public:
    PrintDialog(FarmSession& session, UnitSystem units, std::vector<SheetOffer> offers,
                QWidget* parent);
    ~PrintDialog() override;

    /// Opens it over a window; it deletes itself when closed.
    static PrintDialog* show(FarmSession& session, UnitSystem units, std::vector<SheetOffer> offers,
                             QWidget* parent);

  private:
    void build();
    QWidget* buildChoices();
    QWidget* buildButtons();
    void takeOffer(int index);
    void showSheet();
    void showCount();
    void remember();
    void savePdfAs();
    void saveCsvAs();
    void print();
    void tell(const QString& text);
    void tell(const Problem& problem, const QString& title);
    QString startPath(const QString& ending) const;

    FarmSession& m_session;
    UnitSystem m_units;
    std::vector<SheetOffer> m_offers;
    Sheet m_sheet;
    PageChoice m_page;
    SheetPreview* m_preview = nullptr;
    ChoiceBox* m_sheets = nullptr;
    ChoiceBox* m_papers = nullptr;
    SegmentedButtons* m_turn = nullptr;
    TextLabel* m_count = nullptr;
    TextLabel* m_status = nullptr;
    Button* m_csv = nullptr;
};

}  // namespace bw
