// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "core/model/nozzle.h"
#include "core/model/origin.h"

namespace bw {

/// A printed sheet as data: blocks from top to bottom, without fonts, sizes or pages. All texts are
/// ready to read (UTF-8, figures with their units); what paints it breaks pages and chooses sizes.

/// A small picture before a text, readable without colour: its letters or its form say it too.
struct SheetMark {
    enum class Kind { NozzleSize, Droplets, OriginMark, NotChecked };
    Kind kind = Kind::NotChecked;
    std::string code;                 ///< NozzleSize: the size code, "03"
    std::vector<DropletCategory> of;  ///< Droplets
    Origin origin = Origin::Assumed;  ///< OriginMark

    static SheetMark nozzleSize(std::string sizeCode) {
        return {Kind::NozzleSize, std::move(sizeCode), {}, {}};
    }
    static SheetMark droplets(std::vector<DropletCategory> categories) {
        return {Kind::Droplets, {}, std::move(categories), {}};
    }
    static SheetMark originOf(Origin origin) { return {Kind::OriginMark, {}, {}, origin}; }
    static SheetMark notChecked() { return {}; }
    bool operator==(const SheetMark&) const = default;
};

/// The head of a page: what it is about in large, one value opposite, a line under each.
struct SheetBanner {
    std::string title;
    std::string subtitle;
    std::string value;
    std::string note;
    bool operator==(const SheetBanner&) const = default;
};

struct SheetHeading {
    std::string text;
    bool operator==(const SheetHeading&) const = default;
};

enum class SheetText { Small, Body, Lead };  ///< Lead: large and bold
struct SheetParagraph {
    std::string text;
    SheetText size = SheetText::Body;
    bool operator==(const SheetParagraph&) const = default;
};

/// Cautions in one box with a heavy bar and the warning mark. Ids as in the knowledge's cautions.
struct SheetCaution {
    std::string id;
    std::string lead;  ///< "High end:"; may be empty
    std::string text;
    bool operator==(const SheetCaution&) const = default;
};
struct SheetCautions {
    std::vector<SheetCaution> items;
    bool operator==(const SheetCautions&) const = default;
};

/// A label with its value, side by side with others as the width allows.
struct SheetFact {
    std::string label;
    std::string value;
    std::string note;  ///< a line under the value
    std::optional<SheetMark> mark;
    bool operator==(const SheetFact&) const = default;
};
struct SheetFacts {
    std::vector<SheetFact> facts;
    bool isLarge = false;
    bool operator==(const SheetFacts&) const = default;
};

/// A list with marks; each may have a quiet second part.
struct SheetListItem {
    std::string text;
    std::string note;
    std::optional<SheetMark> mark;  ///< none: a dash
    bool operator==(const SheetListItem&) const = default;
};
struct SheetList {
    std::vector<SheetListItem> items;
    bool operator==(const SheetList&) const = default;
};

/// A table; its head is repeated on each page, a row is never split.
struct SheetColumn {
    std::string title;
    bool isNumber = false;  ///< right-aligned and never broken
    double share = 1.0;     ///< of the width that numbers leave, among the text columns
    bool operator==(const SheetColumn&) const = default;
};
struct SheetRow {
    std::vector<std::string> cells;
    bool isEmphasised = false;  ///< bold, with a bar before it
    bool operator==(const SheetRow&) const = default;
};
struct SheetTable {
    std::vector<SheetColumn> columns;
    std::vector<SheetRow> rows;
    bool operator==(const SheetTable&) const = default;
};

/// A bar for each place (a nozzle, a section), told apart by hatch and letter, not by colour.
struct SheetBar {
    std::string label;
    std::optional<double> value;  ///< nothing: not measured, a dotted gap
    std::string letter;           ///< over the bar, "R" replace; empty: nothing asked
    bool isOff = false;           ///< hatched
    bool operator==(const SheetBar&) const = default;
};
struct SheetLimit {
    double value = 0.0;
    std::string label;
    bool operator==(const SheetLimit&) const = default;
};
struct SheetBarGroup {
    std::string label;
    int bars = 0;
    bool operator==(const SheetBarGroup&) const = default;
};
struct SheetBarChart {
    std::string axis;  ///< what the bars measure, with its unit
    double from = 0.0, to = 1.0;
    std::vector<double> ticks;
    std::vector<std::string> tickTexts;
    std::vector<SheetBar> bars;
    std::vector<SheetLimit> limits;     ///< lines across all bars
    std::vector<SheetBarGroup> groups;  ///< brackets under the bars, left to right
    bool operator==(const SheetBarChart&) const = default;
};

/// An axis of a chart; ticks within from and to, each with its text.
struct SheetAxis {
    std::string title;
    double from = 0.0, to = 1.0;
    std::vector<std::pair<double, std::string>> ticks;
    bool operator==(const SheetAxis&) const = default;
};
struct SheetSeries {
    std::string label;  ///< at the end of the line
    std::vector<std::pair<double, double>> points;
    int dash = 0;  ///< 0 solid, 1 dashed, 2 dotted
    bool operator==(const SheetSeries&) const = default;
};
/// A stretch of one axis that is hatched (out of bounds) or lightly tinted (the plan).
struct SheetBand {
    bool isAlongX = true;
    double from = 0.0, to = 0.0;
    bool isHatched = true;
    bool isFalling = false;  ///< hatch "\" instead of "/"
    std::string label;
    bool operator==(const SheetBand&) const = default;
};
struct SheetLine {
    bool isUpright = true;
    double at = 0.0;
    std::string label;
    bool operator==(const SheetLine&) const = default;
};
struct SheetLineChart {
    SheetAxis x, y;
    std::vector<SheetSeries> series;
    std::vector<SheetBand> bands;
    std::vector<SheetLine> lines;
    double heightShare = 0.5;  ///< of its width
    bool operator==(const SheetLineChart&) const = default;
};

/// A window on a scale with rows of figures hanging under it, each figure at its own place.
struct SheetScaleColumn {
    double at = 0.0;
    std::vector<std::string> figures;  ///< one a row
    bool isBold = false;
    bool operator==(const SheetScaleColumn&) const = default;
};
struct SheetScale {
    double from = 0.0, to = 1.0;
    std::string title;          ///< left of the bar
    std::string words;          ///< under the title
    std::optional<double> low;  ///< end of the window; nothing: open
    std::optional<double> high;
    std::string lowFigure, highFigure;
    std::string lowReason, highReason;
    bool isEmpty = false;      ///< no window at all: hatched throughout
    bool isUnchecked = false;  ///< drawn with dots
    double slow = 0.0, usual = 0.0, fast = 0.0;
    std::string usualWords;
    std::string rowsTitle;
    std::vector<std::string> rowLabels;
    std::vector<SheetScaleColumn> columns;
    bool operator==(const SheetScale&) const = default;
};

/// Boxes to tick by hand (or ticked already, with date), each with room for a note if asked.
struct SheetTick {
    std::string text;
    std::string note;
    std::string done;  ///< date; empty: open
    bool hasNoteLine = false;
    bool operator==(const SheetTick&) const = default;
};
struct SheetTicks {
    std::vector<SheetTick> items;
    bool operator==(const SheetTicks&) const = default;
};

/// Lines to fill in by hand.
struct SheetBlanks {
    std::string label;
    int lines = 1;
    bool operator==(const SheetBlanks&) const = default;
};

struct SheetSpace {
    double lines = 1.0;  ///< of body text
    bool operator==(const SheetSpace&) const = default;
};
struct SheetRule {  ///< a line across
    bool operator==(const SheetRule&) const = default;
};
struct SheetPageBreak {
    bool operator==(const SheetPageBreak&) const = default;
};

struct SheetBlock;
/// Blocks side by side, of equal width; kept on one page. On a narrow page one under the other.
struct SheetSideBySide {
    std::vector<std::vector<SheetBlock>> parts;
    bool operator==(const SheetSideBySide&) const;
};

struct SheetBlock {
    std::variant<SheetBanner, SheetHeading, SheetParagraph, SheetCautions, SheetFacts, SheetList,
                 SheetTable, SheetBarChart, SheetLineChart, SheetScale, SheetTicks, SheetBlanks,
                 SheetSpace, SheetRule, SheetPageBreak, SheetSideBySide>
        content;
    bool operator==(const SheetBlock&) const = default;
};
inline bool SheetSideBySide::operator==(const SheetSideBySide& other) const {
    return parts == other.parts;
}

struct Sheet {
    std::string title;     ///< "Cab card"; in the head of every page
    std::string machine;   ///< beside it; may be empty
    std::string footer;    ///< "Printed 25 Nov 2026 · Not a spray record"
    std::string fileName;  ///< suggested for saving, without ending
    bool prefersLandscape = false;
    /// Everything between two page breaks is to fill one page: the text is made as large as that
    /// allows, from the smallest readable size up.
    bool fillsPages = false;
    std::vector<SheetBlock> blocks;

    template <class Block>
    void add(Block block) {
        blocks.push_back({std::move(block)});
    }
    bool operator==(const Sheet&) const = default;
};

/// Every text of a sheet in reading order, for tests and for copying as plain text.
std::vector<std::string> textsOf(const Sheet& sheet);

/// A table as CSV (RFC 4180: CRLF, quotes doubled). Cells that a spreadsheet would take for a
/// formula are kept as text by an apostrophe.
std::string toCsv(const SheetTable& table, char separator = ',');

}  // namespace bw
