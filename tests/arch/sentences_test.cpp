// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>

#include "tests/arch/source_tree.h"

namespace bw::arch {
namespace {

/// Codes given to a function that makes a problem, and the files in which each stands.
using CodePlaces = std::map<std::string, std::set<const SourceFile*>>;

CodePlaces problemCodes() {
    static const std::regex maker(
        R"re(\b(\w*[pP]roblem|error|warning|note|clash|refusal|refuse\w*)\s*\(\s*"([a-z]+(_[a-z0-9]+)+)")re");
    CodePlaces codes;
    for (const auto& file : sources()) {
        if (file.isIn("tests")) continue;
        for (std::sregex_iterator it(file.code.begin(), file.code.end(), maker), end; it != end;
             ++it)
            codes[(*it)[2]].insert(&file);
    }
    return codes;
}

/// Names in the gaps of a sentence; "{limits|and}" and "{slow#}" are the gaps limits and slow.
std::set<std::string> gapsOf(const std::string& sentence) {
    static const std::regex gap(R"(\{([^}|#]*)[^}]*\})");
    std::set<std::string> gaps;
    for (std::sregex_iterator it(sentence.begin(), sentence.end(), gap), end; it != end; ++it)
        gaps.insert((*it)[1]);
    return gaps;
}

std::set<std::string> allLiterals() {
    std::set<std::string> out;
    for (const auto& file : sources()) {
        if (file.isIn("tests")) continue;
        for (auto& literal : literalsOf(file)) out.insert(std::move(literal));
    }
    return out;
}

TEST(SentenceFiles, AreReadAndDoNotOverrideEachOther) {
    std::map<std::string, std::string> owner;
    for (const auto& path : filesUnder("resources/text", ".en.json")) {
        Sentences one;
        EXPECT_TRUE(one.add(readText(path))) << path << " is not one object of code: sentence";
        for (const auto& [code, text] : one.all()) {
            const auto [at, isNew] = owner.emplace(code, path);
            EXPECT_TRUE(isNew) << code << " stands in " << at->second << " and in " << path;
            EXPECT_FALSE(text.empty()) << code;
        }
    }
    EXPECT_FALSE(owner.empty());
}

TEST(SentenceFiles, EveryProblemCodeHasASentence) {
    const Sentences sentences = Sentences::shipped();
    const CodePlaces codes = problemCodes();
    ASSERT_GT(codes.size(), 50U);
    for (const auto& [code, files] : codes)
        EXPECT_TRUE(sentences.has("problem." + code)) << code << " of " << (*files.begin())->path;
}

TEST(SentenceFiles, EveryProblemSentenceIsUsed) {
    const auto literals = allLiterals();
    const Sentences sentences = Sentences::shipped();
    for (const auto& [key, text] : sentences.all()) {
        if (!key.starts_with("problem.")) continue;
        EXPECT_TRUE(literals.count(key.substr(8)) || literals.count(key))
            << key << " is said by nobody";
    }
}

/// Every gap of a sentence is the name of an argument that some place of the code fills.
TEST(SentenceFiles, EveryGapIsAnArgument) {
    const auto literals = allLiterals();
    const Sentences sentences = Sentences::shipped();
    for (const auto& [key, text] : sentences.all()) {
        for (const auto& gap : gapsOf(text))
            EXPECT_TRUE(literals.count(gap))
                << key << " has a gap {" << gap << "} that nobody fills";
    }
}

/// For problems more narrowly: filled in a file that raises the problem.
TEST(SentenceFiles, EveryGapOfAProblemIsFilledWhereItIsRaised) {
    const Sentences sentences = Sentences::shipped();
    for (const auto& [code, files] : problemCodes()) {
        const auto found = sentences.all().find("problem." + code);
        if (found == sentences.all().end()) continue;
        for (const auto& gap : gapsOf(found->second)) {
            const bool isFilled =
                std::any_of(files.begin(), files.end(), [&](const SourceFile* file) {
                    const auto literals = literalsOf(*file);
                    return std::find(literals.begin(), literals.end(), gap) != literals.end();
                });
            EXPECT_TRUE(isFilled) << code << ": {" << gap << "} in " << (*files.begin())->path;
        }
    }
}

}  // namespace
}  // namespace bw::arch
