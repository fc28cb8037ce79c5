// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialog.h"

#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QPrintDialog>
#include <QPrinter>
#include <QStandardPaths>
#include <QVBoxLayout>

#include "core/store/farm_file.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_painter.h"
#include "ui/print/sheet_preview.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

PrinterChooser& chooser() {
    static PrinterChooser inForce;
    return inForce;
}

bool choosePrinter(QPrinter& printer, QWidget* parent) {
    if (chooser()) return chooser()(printer, parent);
    QPrintDialog dialog(&printer, parent);
    return dialog.exec() == QDialog::Accepted;
}

QString paperSetting(UnitSystem units) {
    return units == UnitSystem::Us ? u"print.paper.us"_s : u"print.paper.metric"_s;
}

/// A name that every file system takes.
QString fileNameOf(const Sheet& sheet) {
    QString name = qs(sheet.fileName.empty() ? sheet.title : sheet.fileName);
    for (QChar& c : name) {
        if (u"/\\:*?\"<>|"_s.contains(c) || c < u' ') c = u'-';
    }
    constexpr int kMost = 80;
    return name.left(kMost).trimmed();
}

}  // namespace

void usePrinterChooser(PrinterChooser other) {
    chooser() = std::move(other);
}

ReportContext reportContext(const FarmSession& session, const Machine& machine) {
    return {session.sentences(), session.styleOf(machine),
            ss(QLocale(QLocale::English).toString(session.now().date(), u"d MMM yyyy"_s)),
            ss(QFileInfo(session.path()).fileName())};
}

PrintDialog::PrintDialog(FarmSession& session, UnitSystem units, std::vector<SheetOffer> offers,
                         QWidget* parent)
    : QDialog(parent), m_session(session), m_units(units), m_offers(std::move(offers)) {
    setObjectName(u"print"_s);
    setWindowTitle(tr("Print"));
    m_page.paper = paperFor(session.file().setting(paperSetting(units)), usualPaper(units));
    build();
    takeOffer(0);
    const QSize room = parent ? parent->window()->size() : QSize(px(1100), px(680));
    resize(std::min(px(1120), room.width() - px(40)), std::min(px(760), room.height() - px(30)));
    m_preview->setFocus();
}

PrintDialog::~PrintDialog() = default;

PrintDialog* PrintDialog::show(FarmSession& session, UnitSystem units,
                               std::vector<SheetOffer> offers, QWidget* parent) {
    auto* dialog = new PrintDialog(session, units, std::move(offers), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
    return dialog;
}

void PrintDialog::build() {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(px(12), px(12), px(12), px(12));
    row->setSpacing(px(14));
    m_preview = new SheetPreview;
    m_preview->setObjectName(u"print.preview"_s);
    row->addWidget(m_preview, 1);
    auto* column = new QVBoxLayout;
    column->setSpacing(px(10));
    column->addWidget(buildChoices());
    m_count = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_count->setObjectName(u"print.count"_s);
    column->addWidget(m_count);
    column->addWidget((new TextLabel(tr("Page Up, Page Down: pages. + and -: size. 0: whole page."),
                                     TextSize::Small, Role::Quiet))
                          ->wrapped());
    column->addStretch(1);
    m_status = (new TextLabel({}, TextSize::Body, Role::Ink))->wrapped();
    m_status->setObjectName(u"print.status"_s);
    column->addWidget(m_status);
    column->addWidget(buildButtons());
    auto* side = new QWidget;
    side->setLayout(column);
    column->setContentsMargins(0, 0, 0, 0);
    side->setFixedWidth(px(230));
    row->addWidget(side);
    connect(m_preview, &SheetPreview::pageChanged, this, &PrintDialog::showCount);
}

QWidget* PrintDialog::buildChoices() {
    auto* choices = new QWidget;
    auto* column = new QVBoxLayout(choices);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(10));
    m_sheets = new ChoiceBox;
    m_sheets->setObjectName(u"print.sheet"_s);
    m_sheets->setAccessibleName(tr("Sheet"));
    for (const auto& offer : m_offers) m_sheets->addItem(offer.name);
    column->addWidget(captioned(tr("Sheet"), m_sheets));
    m_papers = new ChoiceBox;
    m_papers->setObjectName(u"print.paper"_s);
    m_papers->setAccessibleName(tr("Paper"));
    for (const Paper paper : kPapers) m_papers->addItem(paperName(paper), paperKey(paper));
    m_papers->setCurrentData(paperKey(m_page.paper));
    column->addWidget(captioned(tr("Paper"), m_papers));
    m_turn = new SegmentedButtons;
    m_turn->setObjectName(u"print.turn"_s);
    m_turn->addChoice(tr("Upright"), QKeySequence(Qt::ALT | Qt::Key_U));
    m_turn->addChoice(tr("Across"), QKeySequence(Qt::ALT | Qt::Key_A));
    m_turn->button(0)->setObjectName(u"print.turn.upright"_s);
    m_turn->button(1)->setObjectName(u"print.turn.across"_s);
    column->addWidget(captioned(tr("Orientation"), m_turn));
    connect(m_sheets, &QComboBox::currentIndexChanged, this, &PrintDialog::takeOffer);
    connect(m_papers, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_page.paper = paperFor(m_papers->itemData(index).toString(), m_page.paper);
        remember();
        showSheet();
    });
    connect(m_turn, &SegmentedButtons::currentIndexChanged, this, [this](int index) {
        m_page.isLandscape = index == 1;
        showSheet();
    });
    return choices;
}

QWidget* PrintDialog::buildButtons() {
    auto* buttons = new QWidget;
    auto* column = new QVBoxLayout(buttons);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(6));
    const auto add = [&](const char* name, const QString& text, const QString& iconName,
                         const QKeySequence& key, Button::Kind kind, auto act) {
        auto* button = new Button(text, iconName, kind);
        button->setObjectName(QString::fromLatin1(name));
        if (!key.isEmpty()) button->setKey(key);
        column->addWidget(button);
        connect(button, &QAbstractButton::clicked, this, act);
        return button;
    };
    add("print.print", tr("Print…"), u"print"_s, QKeySequence::Print, Button::Kind::Primary,
        [this] { print(); });
    add("print.pdf", tr("Save as PDF…"), u"save"_s, QKeySequence::Save, Button::Kind::Plain,
        [this] { savePdfAs(); });
    m_csv = add("print.csv", tr("Save table as CSV…"), u"table"_s, {}, Button::Kind::Plain,
                [this] { saveCsvAs(); });
    add("print.close", tr("Close"), {}, {}, Button::Kind::Flat, [this] { reject(); });
    return buttons;
}

void PrintDialog::takeOffer(int index) {
    if (index < 0 || index >= static_cast<int>(m_offers.size())) return;
    m_sheet = m_offers[static_cast<std::size_t>(index)].make();
    m_page.isLandscape = m_sheet.prefersLandscape;
    {
        const QSignalBlocker quiet(m_turn);
        m_turn->setCurrentIndex(m_page.isLandscape ? 1 : 0);
    }
    m_csv->setVisible(hasTable(m_sheet));
    showSheet();
}

void PrintDialog::showSheet() {
    m_preview->setSheet(m_sheet, m_page);
    tell(QString());
    showCount();
}

void PrintDialog::showCount() {
    m_count->setText(
        tr("Page %1 of %2").arg(m_preview->currentPage() + 1).arg(m_preview->pageCount()));
}

/// In the farm file; where that may not be written it is remembered until the dialog closes.
void PrintDialog::remember() {
    static_cast<void>(m_session.file().setSetting(paperSetting(m_units), paperKey(m_page.paper)));
}

QString PrintDialog::startPath(const QString& ending) const {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return QDir(folder.isEmpty() ? QDir::homePath() : folder)
        .filePath(fileNameOf(m_sheet) + ending);
}

void PrintDialog::savePdfAs() {
    QString path =
        prompts().saveFile(this, tr("Save as PDF"), startPath(u".pdf"_s), tr("PDF files (*.pdf)"));
    if (path.isEmpty()) return;
    if (QFileInfo(path).suffix().isEmpty()) path += u".pdf"_s;
    const auto saved = savePdf(m_sheet, path, m_page);
    if (!saved) return tell(saved.problem(), tr("No PDF was saved"));
    tell(tr("Saved: %1").arg(QFileInfo(path).fileName()));
}

void PrintDialog::saveCsvAs() {
    QString path = prompts().saveFile(this, tr("Save table as CSV"), startPath(u".csv"_s),
                                      tr("CSV files (*.csv)"));
    if (path.isEmpty()) return;
    if (QFileInfo(path).suffix().isEmpty()) path += u".csv"_s;
    const auto saved = saveCsv(m_sheet, path, m_session.decimalMark() == ',' ? ';' : ',');
    if (!saved) return tell(saved.problem(), tr("No table was saved"));
    tell(tr("Saved: %1").arg(QFileInfo(path).fileName()));
}

void PrintDialog::print() {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(pageLayoutOf(m_page));
    printer.setDocName(fileNameOf(m_sheet));
    printer.setCreator(u"Boomwright"_s);
    if (!choosePrinter(printer, this)) return;
    if (!paintSheet(m_sheet, printer))
        return tell(error("print_not_started"), tr("Nothing was printed"));
    tell(tr("Sent to the printer"));
}

void PrintDialog::tell(const QString& text) {
    m_status->setText(text);
    m_status->setVisible(!text.isEmpty());
}

void PrintDialog::tell(const Problem& problem, const QString& title) {
    tell(title);
    prompts().ask(this, {title,
                         qs(m_session.sentences().of(problem, {})),
                         tr("The preview stays open: try another place."),
                         {tr("Go on")},
                         true});
}

}  // namespace bw
