// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The project's own files as texts, for the tests that look at the code itself.
namespace bw::arch {

struct SourceFile {
    std::string path;      ///< from the project's root, with forward slashes
    std::string text;      ///< as it stands
    std::string code;      ///< comments blanked out, line ends kept
    std::string skeleton;  ///< as `code`, with the contents of strings and characters blanked too

    std::vector<std::string> lines() const;
    std::vector<std::string> codeLines() const;
    bool isHeader() const { return path.ends_with(".h"); }
    bool isIn(std::string_view folder) const { return path.starts_with(std::string(folder) + "/"); }
};

/// The text of one file below the root; empty if there is none.
std::string readText(const std::string& path);
/// Every .h and .cpp file of core, ui, app and tests.
const std::vector<SourceFile>& sources();
/// Paths below a folder of the root that end so; "" takes every file.
std::vector<std::string> filesUnder(const std::string& folder, std::string_view ending = {});
std::vector<std::string> splitLines(std::string_view text);
/// A text as a source file, for trying the tools themselves.
SourceFile sourceOf(std::string path, std::string text);

struct Include {
    std::string name;
    bool isProject = false;  ///< in quotes
};
std::vector<Include> includesOf(const SourceFile& file);

/// The string literals of a file, without their quotes, escapes as written.
std::vector<std::string> literalsOf(const SourceFile& file);

}  // namespace bw::arch
