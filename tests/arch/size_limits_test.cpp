// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <regex>

#include "tests/arch/source_tree.h"

namespace bw::arch {
namespace {

constexpr std::size_t kFileLines = 400;
constexpr std::size_t kTestFileLines = 500;
constexpr std::size_t kFunctionLines = 80;
constexpr std::size_t kMedianFunctionLines = 10;

struct Function {
    std::size_t firstLine = 0;
    std::size_t lines = 0;
};

/// What an opening brace begins, by the text since the last `;`, `{` or `}`.
bool beginsFunction(const std::string& head) {
    static const std::regex container(
        R"(^\s*(inline\s+|export\s+)?(namespace|extern)\b|\b(class|struct|union|enum)\b[^()]*$)");
    static const std::regex signature(
        R"(\)\s*(const|noexcept|override|final|mutable|&&?|->\s*[\w:<>,&*\s]+|requires\b.*|:\s.*|\s)*$)");
    if (std::regex_search(head, container)) return false;
    return std::regex_search(head, signature);
}

/// Functions with a body, outermost only (a lambda counts with the function around it). Works on
/// braces alone, so strings and comments must be blanked.
std::vector<Function> functionsOf(const SourceFile& file) {
    std::vector<Function> out;
    std::string head;
    std::size_t line = 1;
    int depth = 0;
    int functionDepth = -1;
    for (const char c : file.skeleton) {
        if (c == '\n') ++line;
        if (c == '{') {
            if (functionDepth < 0 &&
                beginsFunction(head.size() > 600 ? head.substr(head.size() - 600) : head)) {
                functionDepth = depth;
                const auto headLines = static_cast<std::size_t>(
                    std::count(head.begin() + static_cast<long>(head.find_first_not_of(" \n\t")),
                               head.end(), '\n'));
                out.push_back({line - headLines, 0});
            }
            ++depth;
            head.clear();
        } else if (c == '}') {
            --depth;
            if (depth == functionDepth) {
                out.back().lines = line - out.back().firstLine + 1;
                functionDepth = -1;
            }
            head.clear();
        } else if (c == ';') {
            head.clear();
        } else if (!(c == '\n' && head.empty())) {
            head += c;
        }
    }
    return out;
}

TEST(SizeLimits, CountsFunctionsRight) {
    const auto file =
        sourceOf("core/x.cpp",
                 "namespace a {\n"
                 "// { not a brace\n"
                 "struct S {\n    int f() const { return 1; }\n    int x = 0;\n};\n"
                 "constexpr int k[] = {1, 2};\n"
                 "int g(int a,\n      int b) {\n    auto l = [](int q) { return \"}\"[q]; };\n    "
                 "if (a) {\n        return l(b);\n    }\n    return 0;\n}\n"
                 "S::S() : x{1} {\n}\n"
                 "}\n");
    const auto functions = functionsOf(file);
    ASSERT_GE(functions.size(), 2U);
    EXPECT_EQ(functions[0].lines, 1U);
    EXPECT_EQ(functions[1].firstLine, 8U);
    EXPECT_EQ(functions[1].lines, 8U);
}

TEST(SizeLimits, FilesStayReadable) {
    for (const auto& file : sources()) {
        const std::size_t limit = file.isIn("tests") ? kTestFileLines : kFileLines;
        EXPECT_LE(file.lines().size(), limit) << file.path << ": split it";
    }
}

TEST(SizeLimits, FunctionsStayReadable) {
    std::vector<std::size_t> lengths;
    for (const auto& file : sources()) {
        for (const auto& function : functionsOf(file)) {
            EXPECT_LE(function.lines, kFunctionLines)
                << file.path << ":" << function.firstLine << ": split it";
            if (!file.isIn("tests")) lengths.push_back(function.lines);
        }
    }
    ASSERT_FALSE(lengths.empty());
    std::sort(lengths.begin(), lengths.end());
    const auto at = [&](double part) {
        return lengths[static_cast<std::size_t>(part * static_cast<double>(lengths.size() - 1))];
    };
    std::cout << lengths.size() << " functions: median " << at(0.5) << " lines, 95th percentile "
              << at(0.95) << ", longest " << lengths.back() << "\n";
    EXPECT_LE(at(0.5), kMedianFunctionLines);
}

}  // namespace
}  // namespace bw::arch
