// SPDX-License-Identifier: GPL-3.0-or-later
// What the program must never say: it calculates, it does not permit; and words that nobody on a
// farm uses.
#include <gtest/gtest.h>

#include <functional>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/arch/source_tree.h"

namespace bw::arch {
namespace {

struct Text {
    std::string place;
    std::string words;
};

void addStrings(const nlohmann::json& node, const std::string& place, std::vector<Text>& out) {
    if (node.is_string()) {
        out.push_back({place, node.get<std::string>()});
        return;
    }
    if (!node.is_structured()) return;
    for (const auto& [key, value] : node.items()) {
        // Sources cite titles of others, "about" speaks to who edits the data, ids to the program.
        if (key != "sources" && key != "source" && key != "about" && key != "id" && key != "group")
            addStrings(value, place + "/" + key, out);
    }
}

/// Everything that somebody may read: sentences, knowledge, demo, help, and the literals of
/// screens.
std::vector<Text> allTexts() {
    std::vector<Text> out;
    for (const auto& path : filesUnder("resources", ".json"))
        addStrings(nlohmann::json::parse(readText(path)), path, out);
    for (const auto& path : filesUnder("resources", ".md")) out.push_back({path, readText(path)});
    for (const auto& file : sources()) {
        if (!file.isIn("ui") && !file.isIn("app")) continue;
        std::string all;
        for (const auto& literal : literalsOf(file)) all += literal + "\n";
        out.push_back({file.path, all});
    }
    return out;
}

void expectNobodySays(const std::vector<std::string>& patterns) {
    const auto texts = allTexts();
    ASSERT_GT(texts.size(), 100U);
    for (const auto& pattern : patterns) {
        const std::regex regex(pattern, std::regex::icase);
        for (const auto& text : texts) {
            std::smatch match;
            EXPECT_FALSE(std::regex_search(text.words, match, regex))
                << text.place << " says \"" << match.str() << "\"";
        }
    }
}

TEST(ForbiddenSentences, NobodyIsGivenLeaveToSpray) {
    expectNobodySays({R"(safe to spray)", R"(you (may|can) spray)", R"(\bok(ay)? to (go|spray)\b)",
                      R"(good to go\b)", R"(clear(ed)? to spray)", R"((no|without) drift[.!])",
                      R"(drift[- ]free)", R"(maximum safe speed|safe speed\b)",
                      R"(recommended speed)"});
}

TEST(ForbiddenSentences, NothingStandsInForLabelOrInspector) {
    expectNobodySays({R"(meets the label)", R"(\b(is|are) legal\b|legally)", R"(\bapproved\b)",
                      R"(pass(es|ed)? (the )?inspection)", R"(no buffer (is )?needed)",
                      R"(no protection (is )?needed)", R"(wear (gloves|goggles|a mask|an apron))"});
}

TEST(ForbiddenSentences, NoOrdersThatTheProgramCannotAnswerFor) {
    expectNobodySays({R"(finish the tank)", R"(go over it again)", R"(spray it again)",
                      R"(\bthe cause is\b)", R"((is|has been) fixed[.!])",
                      R"((turn|screw|set) (the|up the) relief valve (up|higher))",
                      R"(raise the (ceiling|relief))", R"(take the guard off|guards? off\b)",
                      R"(bridge the (switch|interlock))"});
}

TEST(ForbiddenSentences, WordsThatNobodyUsesStayOffTheScreen) {
    expectNobodySays({R"(\bbinding limit)", R"(\brunner-up)", R"(\bposteriors?\b)",
                      R"(\bpriors?\b(?! to))", R"(\blikelihoods?\b)", R"(\bstiction\b)",
                      R"(\bactuator)", R"(\bduty cycle)", R"(\bcoefficient of variation)",
                      R"(\bemitters?\b)", R"(\bchangeover speed)", R"(\bfault tree)"});
}

// The patterns themselves must bite, and must leave proper words alone.
TEST(ForbiddenSentences, ThePatternsBite) {
    const auto says = [](const char* text, const char* pattern) {
        return std::regex_search(text, std::regex(pattern, std::regex::icase));
    };
    EXPECT_TRUE(says("It is Safe to spray now.", R"(safe to spray)"));
    EXPECT_TRUE(says("The cause is the strainer.", R"(\bthe cause is\b)"));
    EXPECT_FALSE(says("How you know it is fixed", R"((is|has been) fixed[.!])"));
}

}  // namespace
}  // namespace bw::arch
