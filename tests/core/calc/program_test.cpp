// SPDX-License-Identifier: GPL-3.0-or-later
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sstream>

#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;

struct Ran {
    int code = -1;
    std::string output;
};

/// Runs the built program through the shell; `rest` is what follows its name.
Ran run(const std::string& rest, const std::string& before = {}) {
    const std::string command = before + "'" + BW_CALC_PROGRAM + "' " + rest;
    Ran out;
    FILE* pipe = popen(command.c_str(), "r");
    EXPECT_NE(pipe, nullptr);
    if (!pipe) return out;
    char block[4096];
    for (std::size_t n = 0; (n = std::fread(block, 1, sizeof block, pipe)) > 0;)
        out.output.append(block, n);
    const int status = pclose(pipe);
    out.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return out;
}

class CalcProgram : public ::testing::Test {
  protected:
    void SetUp() override {
        m_folder =
            std::filesystem::temp_directory_path() / ("bw calc " + std::to_string(::getpid()));
        std::filesystem::create_directories(m_folder);
    }
    void TearDown() override { std::filesystem::remove_all(m_folder); }
    std::string file(const std::string& name, const std::string& text) {
        const auto path = m_folder / name;
        std::ofstream(path, std::ios::binary) << text;
        return path.string();
    }
    std::filesystem::path m_folder;
};

TEST_F(CalcProgram, AnswersFromAFileAndFromStandardInputAlike) {
    const std::string request = demoRequest(0, 0, "Demo low-drift fan 04").dump();
    const std::string path = file("request.json", request);
    const Ran fromFile = run("'" + path + "'");
    EXPECT_EQ(fromFile.code, 0);
    EXPECT_EQ(fromFile.output, calc::answerTo(request).text + "\n");
    const Ran fromInput = run("< '" + path + "'");
    EXPECT_EQ(fromInput.code, 0);
    EXPECT_EQ(fromInput.output, fromFile.output);
    EXPECT_EQ(run("- < '" + path + "'").output, fromFile.output);
}

TEST_F(CalcProgram, EndsWithTwoAndTheErrorOnStandardOutput) {
    const Ran bad =
        run("'" + file("bad.json", R"({"do": "convert", "value": "2,8 bar", "to": "psi"})") + "'");
    EXPECT_EQ(bad.code, 2);
    EXPECT_EQ(parsed(bad.output)["error"]["where"], "value");
    EXPECT_EQ(run("< /dev/null").code, 2);
}

TEST_F(CalcProgram, LinesGoOnAfterABadOneAndEndWithNothing) {
    const std::string path =
        file("lines.jsonl",
             "{\"do\": \"convert\", \"value\": \"1 m\", \"to\": \"cm\"}\n{]\n{\"do\": \"convert\", "
             "\"value\": \"1 m\", \"to\": \"mm\"}\n");
    for (const Ran& lines : {run("--lines '" + path + "'"), run("--lines < '" + path + "'"),
                             run("'" + path + "' --lines")}) {
        EXPECT_EQ(lines.code, 0);
        std::istringstream in(lines.output);
        std::string first, second, third, rest;
        std::getline(in, first), std::getline(in, second), std::getline(in, third);
        EXPECT_FALSE(std::getline(in, rest));
        EXPECT_EQ(number(parsed(first)["value"], "cm"), 100);
        EXPECT_TRUE(parsed(second).contains("error"));
        EXPECT_EQ(number(parsed(third)["value"], "mm"), 1000);
    }
}

TEST_F(CalcProgram, SaysWhatItIs) {
    EXPECT_EQ(run("--version").code, 0);
    EXPECT_THAT(run("--version").output,
                ::testing::MatchesRegex("boomwright-calc [0-9]+\\.[0-9]+\\.[0-9]+\n"));
    EXPECT_THAT(run("--help").output, ::testing::HasSubstr("--lines"));
    for (const auto& name : calc::taskNames())
        EXPECT_THAT(run("--help").output, ::testing::HasSubstr(name));
    EXPECT_EQ(run("--help").code, 0);
}

TEST_F(CalcProgram, RefusesArgumentsAndFilesItCannotUse) {
    for (const std::string& arguments :
         {std::string("--liens"), "'" + (m_folder / "absent.json").string() + "'",
          "'" + m_folder.string() + "'", std::string("one two")}) {
        const Ran refusedRun = run(arguments);
        EXPECT_EQ(refusedRun.code, 2) << arguments;
        EXPECT_EQ(parsed(refusedRun.output)["error"]["where"], "command line") << arguments;
    }
}

TEST_F(CalcProgram, DoesNotDependOnTheLocale) {
    const std::string path =
        file("request.json", R"({"do": "convert", "value": "2.5 bar", "to": "kPa"})");
    const Ran german = run("'" + path + "'", "LC_ALL=de_DE.UTF-8 ");
    EXPECT_EQ(german.output, "{\"value\":{\"value\":250.0,\"unit\":\"kPa\"}}\n");
}

}  // namespace
}  // namespace bw
