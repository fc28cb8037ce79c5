// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/sheet_head.h"

namespace bw {

Sheet sheetWithHead(std::string_view titleCode, const Machine& machine, bool isDemo,
                    const ReportContext& context) {
    Sheet sheet;
    sheet.title = context.say(titleCode);
    sheet.machine = machine.name;
    sheet.footer =
        context.say(isDemo ? "report.footer_demo" : "report.footer", {{"date", context.printed}});
    if (!context.file.empty()) sheet.footer += " · " + context.file;
    return sheet;
}

}  // namespace bw
