// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace bw::calc {

/// What comes back for one request: one JSON object in one line, without its line end.
struct Answer {
    bool isError = false;  ///< then the object is {"error": {"where", "what"}}
    std::string text;
};

/// What may be asked: the words that "do" knows.
std::vector<std::string> taskNames();

/// Answers one request. Never throws: whatever the bytes are, there is an answer or an error.
Answer answerTo(std::string_view request);

/// An error of the program's own surroundings (a file that cannot be read) in the same form.
Answer errorAnswer(std::string_view code, std::string_view where, std::string_view name);

/// Reads requests line by line and writes one answer a line, in order, each flushed; empty lines
/// are passed over.
void answerLines(std::istream& in, std::ostream& out);

}  // namespace bw::calc
