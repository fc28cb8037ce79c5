// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <functional>
#include <regex>

#include "core/base/csv_text.h"
#include "tests/arch/source_tree.h"

namespace bw::arch {
namespace {

/// Reports every code line that matches, in the files that the rule is for.
void expectNowhere(const std::string& pattern, const std::string& why,
                   const std::function<bool(const SourceFile&)>& isMeant) {
    const std::regex regex(pattern);
    for (const auto& file : sources()) {
        if (file.isIn("tests/arch") || !isMeant(file)) continue;
        const auto lines = file.codeLines();
        for (std::size_t i = 0; i < lines.size(); ++i) {
            EXPECT_FALSE(std::regex_search(lines[i], regex))
                << file.path << ":" << i + 1 << ": " << why << "\n  " << lines[i];
        }
    }
}

bool isProduct(const SourceFile& file) {
    return !file.isIn("tests");
}

TEST(HouseRules, EveryFileNamesItsLicence) {
    for (const auto& file : sources()) {
        EXPECT_TRUE(file.text.starts_with("// SPDX-License-Identifier: GPL-3.0-or-later\n"))
            << file.path;
    }
    for (const auto* script :
         {"packaging/setup", "packaging/start", "packaging/check", ".ci/run"}) {
        EXPECT_NE(
            readText(script).substr(0, 120).find("# SPDX-License-Identifier: GPL-3.0-or-later\n"),
            std::string::npos)
            << script;
    }
    for (const auto& path : {"CMakeLists.txt", "core/CMakeLists.txt", "tests/CMakeLists.txt"}) {
        EXPECT_TRUE(readText(path).starts_with("# SPDX-License-Identifier: GPL-3.0-or-later\n"))
            << path;
    }
}

TEST(HouseRules, HeadersAreReadOnce) {
    for (const auto& file : sources()) {
        if (!file.isHeader()) continue;
        EXPECT_NE(file.text.find("\n#pragma once\n"), std::string::npos) << file.path;
    }
}

TEST(HouseRules, FileNamesAreLowerSnakeCase) {
    const std::regex name("^([a-z0-9_]+/)*[a-z][a-z0-9_]*\\.(h|cpp)$");
    for (const auto& file : sources()) EXPECT_TRUE(std::regex_match(file.path, name)) << file.path;
}

TEST(HouseRules, ColoursComeFromThePalette) {
    expectNowhere(
        R"(QColor\s*[({]\s*["0-9#]|QColor\s*[({]\s*u"|QColor\s+\w+\s*[({]\s*["0-9#u]|qRgba?\s*\(|QColor::from|Qt::(dark|light)?(red|green|blue|cyan|magenta|yellow|gray|black|white)\b)",
        "a colour belongs into ui/kit/palette",
        [](const SourceFile& f) { return f.isIn("ui") && !f.isIn("ui/kit"); });
}

TEST(HouseRules, NoSpinBoxForNumbers) {
    expectNowhere("QDoubleSpinBox",
                  "it reads the other decimal mark as a group mark; use the quantity field",
                  isProduct);
}

TEST(HouseRules, SeriesAreReplacedNotAppendedTo) {
    expectNowhere(R"([sS]eries\w*\s*(\(\s*\))?\s*(->|\.)\s*append\s*\()",
                  "append on a series in a chart is quadratic; use replace()", isProduct);
    expectNowhere(R"([sS]eries\w*\s*(->|\.)?\s*<<)", "use replace()", isProduct);
}

TEST(HouseRules, NoOpenGlAndNoGlobalStyleSheet) {
    expectNowhere("setUseOpenGL", "it crashes off screen", isProduct);
    expectNowhere(R"((qApp|app|application|QApplication::instance\(\))\s*(->|\.)\s*setStyleSheet)",
                  "a global style sheet fights the palette", isProduct);
}

TEST(HouseRules, SqlLivesInTheStore) {
    expectNowhere(
        R"(QSqlQuery|QSqlDatabase|"\s*(SELECT|INSERT INTO|UPDATE \w+ SET|DELETE FROM|CREATE TABLE|PRAGMA)\b)",
        "SQL belongs into core/store",
        [](const SourceFile& f) { return isProduct(f) && !f.isIn("core/store"); });
}

TEST(HouseRules, CoreHasNoTranslationAndNoConsole) {
    expectNowhere(R"(\btr\s*\(|std::c(out|err)\b|\bprintf\s*\()",
                  "core returns codes; it speaks to nobody",
                  [](const SourceFile& f) { return f.isIn("core"); });
}

TEST(HouseRules, NoUsingNamespaceInHeaders) {
    expectNowhere(R"(^\s*using namespace\s)", "a header opens no namespace for others",
                  [](const SourceFile& f) { return f.isHeader(); });
}

/// CSV files whose rows claim something: those of the program and those of the tests.
std::vector<std::string> dataTables() {
    auto out = filesUnder("resources", ".csv");
    for (auto& path : filesUnder("tests/reference", ".csv")) out.push_back(path);
    return out;
}

TEST(HouseRules, EveryRowOfEveryTableNamesItsSource) {
    ASSERT_FALSE(dataTables().empty());
    for (const auto& path : dataTables()) {
        const CsvTable table = parseCsv(readText(path));
        ASSERT_TRUE(table.column("source").has_value()) << path << " has no column `source`";
        EXPECT_FALSE(table.rows.empty()) << path;
        for (std::size_t row = 0; row < table.rows.size(); ++row) {
            EXPECT_EQ(table.rows[row].size(), table.header.size()) << path << " row " << row + 1;
            EXPECT_FALSE(table.at(row, "source").empty()) << path << " row " << row + 1;
        }
    }
}

std::string outputOf(const std::string& command, int& exitCode) {
    std::string out;
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) return out;
    std::array<char, 4096> buffer{};
    while (const auto got = fread(buffer.data(), 1, buffer.size(), pipe))
        out.append(buffer.data(), got);
    exitCode = pclose(pipe);
    return out;
}

TEST(HouseRules, SourcesAreFormatted) {
    int exitCode = 0;
    outputOf("clang-format-14 --version 2>/dev/null", exitCode);
    if (exitCode != 0) GTEST_SKIP() << "clang-format-14 is not installed";
    std::string command = "cd '" BW_SOURCE_DIR "' && clang-format-14 --dry-run --Werror";
    for (const auto& file : sources()) command += " " + file.path;
    const std::string output =
        outputOf(command + " 2>&1 | sed -n 's/^\\([^:]*\\):.*error:.*/\\1/p' | sort -u", exitCode);
    EXPECT_EQ(output, "") << "not formatted; run clang-format-14 -i on these";
}

}  // namespace
}  // namespace bw::arch
