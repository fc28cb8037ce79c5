// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/arch/source_tree.h"

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>

namespace bw::arch {
namespace {

/// Walks C++ text and blanks comments, and in the skeleton strings as well. Raw strings included.
class Blanker {
  public:
    explicit Blanker(const std::string& text) : m_text(text), m_code(text), m_skeleton(text) {}

    void run() {
        while (m_at < m_text.size()) {
            if (startsWith("//")) {
                blank(m_text.find('\n', m_at), true);
            } else if (startsWith("/*")) {
                const auto end = m_text.find("*/", m_at + 2);
                blank(end == std::string::npos ? end : end + 2, true);
            } else if (startsWith("R\"") && !isWordBefore()) {
                rawString();
            } else if (m_text[m_at] == '"' || (m_text[m_at] == '\'' && !isWordBefore())) {
                quoted(m_text[m_at]);
            } else {
                ++m_at;
            }
        }
    }
    std::string code() { return std::move(m_code); }
    std::string skeleton() { return std::move(m_skeleton); }

  private:
    bool startsWith(std::string_view s) const {
        return std::string_view(m_text).substr(m_at).starts_with(s);
    }
    /// A digit separator (1'000) or a suffix is no quotation; prefixes of strings are.
    bool isWordBefore() const {
        return m_at > 0 &&
               (std::isalnum(static_cast<unsigned char>(m_text[m_at - 1])) ||
                m_text[m_at - 1] == '_') &&
               m_text[m_at - 1] != 'u';
    }
    void blank(std::size_t end, bool isComment) {
        end = std::min(end, m_text.size());
        for (; m_at < end; ++m_at) {
            if (m_text[m_at] == '\n') continue;
            m_skeleton[m_at] = ' ';
            if (isComment) m_code[m_at] = ' ';
        }
    }
    void quoted(char mark) {
        const auto start = m_at + 1;
        auto end = start;
        while (end < m_text.size() && m_text[end] != mark && m_text[end] != '\n')
            end += m_text[end] == '\\' ? 2 : 1;
        m_at = start;
        blank(end, false);
        ++m_at;
    }
    void rawString() {
        const auto open = m_text.find('(', m_at);
        const std::string close = ")" + m_text.substr(m_at + 2, open - m_at - 2) + "\"";
        const auto end = m_text.find(close, open);
        m_at = open + 1;
        blank(end, false);
        m_at += close.size();
    }

    const std::string& m_text;
    std::string m_code;
    std::string m_skeleton;
    std::size_t m_at = 0;
};

const std::filesystem::path& root() {
    static const std::filesystem::path path = BW_SOURCE_DIR;
    return path;
}

std::vector<SourceFile> readSources() {
    std::vector<SourceFile> out;
    for (const auto* folder : {"core", "ui", "app", "tests"}) {
        for (const auto& path : filesUnder(folder)) {
            if (path.ends_with(".h") || path.ends_with(".cpp"))
                out.push_back(sourceOf(path, readText(path)));
        }
    }
    return out;
}

}  // namespace

std::vector<std::string> splitLines(std::string_view text) {
    std::vector<std::string> lines;
    std::istringstream stream{std::string(text)};
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> SourceFile::lines() const {
    return splitLines(text);
}
std::vector<std::string> SourceFile::codeLines() const {
    return splitLines(code);
}

std::string readText(const std::string& path) {
    std::ifstream file(root() / path, std::ios::binary);
    std::ostringstream out;
    out << file.rdbuf();
    return out.str();
}

SourceFile sourceOf(std::string path, std::string text) {
    SourceFile file{std::move(path), std::move(text), {}, {}};
    Blanker blanker(file.text);
    blanker.run();
    file.code = blanker.code();
    file.skeleton = blanker.skeleton();
    return file;
}

std::vector<std::string> filesUnder(const std::string& folder, std::string_view ending) {
    std::vector<std::string> out;
    const auto start = root() / folder;
    if (!std::filesystem::exists(start)) return out;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(start)) {
        const auto path = std::filesystem::relative(entry.path(), root()).generic_string();
        if (entry.is_regular_file() && path.ends_with(ending)) out.push_back(path);
    }
    std::sort(out.begin(), out.end());
    return out;
}

const std::vector<SourceFile>& sources() {
    static const std::vector<SourceFile> files = readSources();
    return files;
}

std::vector<Include> includesOf(const SourceFile& file) {
    static const std::regex pattern(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])");
    std::vector<Include> out;
    for (const auto& line : file.codeLines()) {
        std::smatch match;
        if (std::regex_search(line, match, pattern)) out.push_back({match[2], match[1] == "\""});
    }
    return out;
}

std::vector<std::string> literalsOf(const SourceFile& file) {
    std::vector<std::string> out;
    for (std::size_t at = 0; (at = file.skeleton.find('"', at)) != std::string::npos;) {
        const auto end = file.skeleton.find('"', at + 1);
        if (end == std::string::npos) break;
        out.push_back(file.code.substr(at + 1, end - at - 1));
        at = end + 1;
    }
    return out;
}

}  // namespace bw::arch
