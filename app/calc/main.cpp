// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "app/calc/requests.h"
#include "core/exchange/json_document.h"

namespace {

constexpr int kAnswered = 0;
constexpr int kUnable = 1;
constexpr int kRefused = 2;

constexpr const char* kHelp =
    "boomwright-calc: one JSON request in, one JSON answer out.\n"
    "\n"
    "  boomwright-calc [FILE]          reads the request from FILE, or from standard input\n"
    "  boomwright-calc --lines [FILE]  one request a line; one answer a line comes back, in order\n"
    "  boomwright-calc --version\n"
    "  boomwright-calc --help\n"
    "\n"
    "README lists the keys of each request. Ends with 0 and an answer, or with 2 and\n"
    "{\"error\": {\"where\", \"what\"}}; with --lines a bad line gets its error and the end is 0.\n"
    "Numbers and advice only: the label, local rules and the maker's handbook come first.\n";

bool printHelp() {
    std::cout << kHelp << "Requests:";
    for (const auto& name : bw::calc::taskNames()) std::cout << ' ' << name;
    return static_cast<bool>(std::cout << std::endl);
}

struct Arguments {
    bool lines = false;
    std::string file;
    std::string unknown;
    bool help = false;
    bool version = false;
};

Arguments read(int argc, char** argv) {
    Arguments out;
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        if (word == "--lines")
            out.lines = true;
        else if (word == "--help" || word == "-h")
            out.help = true;
        else if (word == "--version")
            out.version = true;
        else if (word == "-")
            continue;
        else if (word.starts_with("-") || !out.file.empty())
            out.unknown = word;
        else
            out.file = word;
    }
    return out;
}

int print(const bw::calc::Answer& answer) {
    std::cout << answer.text << '\n' << std::flush;
    if (!std::cout) return kUnable;
    return answer.isError ? kRefused : kAnswered;
}

/// The whole input, but no more than one byte over what a request may be.
std::string wholeText(std::istream& in) {
    std::string text;
    std::string block(65536, '\0');
    while (in && text.size() <= bw::kJsonBytes) {
        in.read(block.data(), static_cast<std::streamsize>(block.size()));
        text.append(block, 0, static_cast<std::size_t>(in.gcount()));
    }
    return text;
}

int answer(std::istream& in, bool lines) {
    if (!lines) return print(bw::calc::answerTo(wholeText(in)));
    bw::calc::answerLines(in, std::cout);
    return std::cout ? kAnswered : kUnable;
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    const Arguments arguments = read(argc, argv);
    if (arguments.help) return printHelp() ? kAnswered : kUnable;
    if (arguments.version)
        return (std::cout << "boomwright-calc " << BW_VERSION << std::endl) ? kAnswered : kUnable;
    if (!arguments.unknown.empty())
        return print(bw::calc::errorAnswer("calc_bad_argument", "command line", arguments.unknown));
    if (arguments.file.empty()) return answer(std::cin, arguments.lines);
    std::ifstream file(arguments.file, std::ios::binary);
    // A folder opens, but its first byte cannot be read; an empty file is left to the reader.
    if (file) file.peek();
    if (file.fail() && !file.eof())
        return print(bw::calc::errorAnswer("calc_no_file", "command line", arguments.file));
    file.clear();
    return answer(file, arguments.lines);
}
