// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

#include "tests/arch/source_tree.h"

namespace bw::arch {
namespace {

/// One row of the table in DEVELOPERS.md.
struct Rule {
    std::string folder;
    std::vector<std::string> mayInclude;
    std::set<std::string> qtModules;  ///< empty: no Qt
};

std::string trimmed(std::string s) {
    s.erase(0, s.find_first_not_of(" \t"));
    s.erase(s.find_last_not_of(" \t") + 1);
    return s;
}

std::vector<std::string> inBackticks(const std::string& cell) {
    static const std::regex pattern("`([^`]+)`");
    std::vector<std::string> out;
    for (std::sregex_iterator it(cell.begin(), cell.end(), pattern), end; it != end; ++it)
        out.push_back((*it)[1]);
    return out;
}

std::vector<Rule> readRules() {
    std::vector<Rule> rules;
    bool isTable = false;
    for (const auto& line : splitLines(readText("DEVELOPERS.md"))) {
        if (line.starts_with("| folder | may include")) isTable = true;
        if (!isTable || !line.starts_with("| `")) {
            if (isTable && line.empty()) break;
            continue;
        }
        std::vector<std::string> cells;
        std::istringstream row(line.substr(1));
        for (std::string cell; std::getline(row, cell, '|');) cells.push_back(cell);
        Rule rule{inBackticks(cells.at(0)).at(0), inBackticks(cells.at(1)), {}};
        std::istringstream modules(cells.at(2));
        for (std::string module; modules >> module;) {
            if (module != "none") rule.qtModules.insert("Qt" + trimmed(module));
        }
        rules.push_back(rule);
    }
    return rules;
}

const std::vector<Rule>& rules() {
    static const std::vector<Rule> table = readRules();
    return table;
}

const Rule* ruleFor(const SourceFile& file) {
    const Rule* best = nullptr;
    for (const auto& rule : rules()) {
        if (file.isIn(rule.folder) && (!best || rule.folder.size() > best->folder.size()))
            best = &rule;
    }
    return best;
}

/// "ui/pages/season" for a page that has a folder, the file's own stem for one that has none.
std::string ownPage(const SourceFile& file) {
    const std::string pages = "ui/pages/";
    const auto slash = file.path.find('/', pages.size());
    if (slash != std::string::npos) return file.path.substr(0, slash);
    return file.path.substr(0, file.path.rfind('.'));
}

bool mayInclude(const Rule& rule, const SourceFile& file, const std::string& name) {
    return std::any_of(rule.mayInclude.begin(), rule.mayInclude.end(),
                       [&](const std::string& allowed) {
                           const std::string folder = allowed == "{page}" ? ownPage(file) : allowed;
                           return name == folder || name.starts_with(folder + "/") ||
                                  (allowed == "{page}" && name.starts_with(folder + "."));
                       });
}

bool isGenerated(const std::string& name) {
    return name.ends_with(".moc") || name.starts_with("moc_") || name.starts_with("ui_");
}

bool isQt(const std::string& name) {
    return std::regex_search(name, std::regex("^(Qt[A-Z]|Q[A-Z]|qt[a-z]*/|q[a-z]+\\.h$)"));
}

/// Where Debian's Qt keeps a header without a module in its name; only what this code includes.
std::string qtModuleOf(const std::string& name) {
    static const std::regex withModule("^(Qt[A-Z][A-Za-z]+)(/.*)?$");
    std::smatch match;
    if (std::regex_match(name, match, withModule)) return match[1];
    static const std::regex sql("^QSql");
    static const std::regex charts(
        "^Q([A-Za-z]*Series|Chart[A-Za-z]*|[A-Za-z]*Axis|Legend[A-Za-z]*)$");
    static const std::regex widgets(
        "(Widget|Layout|Button|Dialog|Label|Box|View|MainWindow|Action|Delegate|Edit|Menu|ToolBar|"
        "StatusBar|TabBar|ToolTip|Style|Application|Header|ScrollBar|ScrollArea|Splitter|Frame|"
        "Completer)$");
    if (std::regex_search(name, sql)) return "QtSql";
    if (std::regex_search(name, charts)) return "QtCharts";
    if (std::regex_search(name, widgets) && name != "QCoreApplication" && name != "QGuiApplication")
        return "QtWidgets or QtGui";
    return "QtCore or QtGui";
}

bool mayUseQt(const Rule& rule, const std::string& name) {
    if (rule.qtModules.empty()) return false;
    const std::string module = qtModuleOf(name);
    if (module == "QtWidgets or QtGui")
        return rule.qtModules.count("QtWidgets") || rule.qtModules.count("QtGui");
    if (module == "QtCore or QtGui") return true;
    return rule.qtModules.count(module) > 0;
}

TEST(IncludeOrder, TheTableIsThere) {
    ASSERT_GE(rules().size(), 20U);
    EXPECT_EQ(rules().front().folder, "core/base");
}

TEST(IncludeOrder, EveryFileHasARow) {
    for (const auto& file : sources()) EXPECT_NE(ruleFor(file), nullptr) << file.path;
}

TEST(IncludeOrder, FoldersIncludeOnlyWhatTheirRowLists) {
    for (const auto& file : sources()) {
        const Rule* rule = ruleFor(file);
        if (!rule) continue;
        for (const auto& include : includesOf(file)) {
            if (!include.isProject || isGenerated(include.name)) continue;
            EXPECT_TRUE(mayInclude(*rule, file, include.name))
                << file.path << " includes " << include.name;
        }
    }
}

TEST(IncludeOrder, QtOnlyWhereTheRowSaysSo) {
    for (const auto& file : sources()) {
        const Rule* rule = ruleFor(file);
        if (!rule) continue;
        for (const auto& include : includesOf(file)) {
            if (include.isProject || !isQt(include.name)) continue;
            EXPECT_TRUE(mayUseQt(*rule, include.name))
                << file.path << " includes <" << include.name << ">";
        }
    }
}

TEST(IncludeOrder, NobodyIncludesUiButAppAndTests) {
    for (const auto& file : sources()) {
        if (file.isIn("ui") || file.isIn("app") || file.isIn("tests")) continue;
        for (const auto& include : includesOf(file))
            EXPECT_FALSE(include.name.starts_with("ui/"))
                << file.path << " includes " << include.name;
    }
}

TEST(IncludeOrder, CoreLinksNoQt) {
    const std::string build = readText("core/CMakeLists.txt");
    ASSERT_FALSE(build.empty());
    EXPECT_EQ(build.find("Qt6"), std::string::npos);
    const std::string calc = readText("app/calc/CMakeLists.txt");
    EXPECT_EQ(calc.find("Qt6"), std::string::npos);
}

// The rules themselves must bite.
TEST(IncludeOrder, WouldCatchAWrongInclude) {
    const auto wrong = sourceOf("core/model/x.cpp",
                                "#include \"core/window/speed_window.h\"\n#include <QString>\n");
    const auto includes = includesOf(wrong);
    ASSERT_EQ(includes.size(), 2U);
    const Rule* rule = ruleFor(wrong);
    ASSERT_NE(rule, nullptr);
    EXPECT_FALSE(mayInclude(*rule, wrong, includes[0].name));
    EXPECT_TRUE(isQt(includes[1].name));
    EXPECT_FALSE(mayUseQt(*rule, includes[1].name));
    const auto page = sourceOf("ui/pages/season/season_page.cpp", "");
    EXPECT_FALSE(mayInclude(*ruleFor(page), page, "ui/pages/machine/machine_page.h"));
    EXPECT_TRUE(mayInclude(*ruleFor(page), page, "ui/pages/season/jobs_model.h"));
    const auto store = sourceOf("core/store/x.cpp", "");
    EXPECT_TRUE(mayUseQt(*ruleFor(store), "QSqlQuery"));
    EXPECT_FALSE(mayUseQt(*ruleFor(store), "QtWidgets/QWidget"));
}

}  // namespace
}  // namespace bw::arch
