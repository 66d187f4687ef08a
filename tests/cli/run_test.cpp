// The program as a function: arguments in, exit status and text out.
#include "cli/run.h"

#include <filesystem>
#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "support/temporary_folder.h"

namespace {

using nlohmann::json;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;

struct Result {
  int status = 0;
  std::string out, err;
};

Result run(const std::vector<std::string>& arguments) {
  std::ostringstream out, err;
  const int status = cli::run(arguments, out, err);
  return {status, out.str(), err.str()};
}

const std::string garden = std::string(PROJECT_DIR) + "/models/designs/school-garden.xml";
const std::string faults = std::string(PROJECT_DIR) + "/tests/data/planted-faults.xml";

TEST(Run, HelpNamesTheCommands) {
  const Result result = run({"--help"});
  EXPECT_EQ(result.status, cli::done);
  EXPECT_THAT(result.out, HasSubstr("make"));
  EXPECT_THAT(result.out, HasSubstr("check"));
}

TEST(Run, AWrongCommandLineIsStatusTwo) {
  EXPECT_EQ(run({}).status, cli::wrong_input);
  EXPECT_EQ(run({"mend", garden}).status, cli::wrong_input);
  EXPECT_EQ(run({"check"}).status, cli::wrong_input);
  EXPECT_EQ(run({"check", garden, "--units", "ell"}).status, cli::wrong_input);
  EXPECT_EQ(run({"make", garden, "--only", "everything"}).status, cli::wrong_input);
}

TEST(Check, ASoundDesignHasNothingToSayButAdvice) {
  const Result result = run({"check", garden});
  EXPECT_EQ(result.status, cli::done);
  EXPECT_THAT(result.out, HasSubstr("note: no ball of 0.24 in gets into the house: proven"));
  // Advice on floor, run, nests and litter, and what the other note is about.
  EXPECT_THAT(result.out, EndsWith("\n0 errors, 0 warnings, 6 notes\n"));
  EXPECT_EQ(result.err, "");
}

TEST(Check, FindingsAreStatusOneAndReadableByPrograms) {
  const Result result = run({"check", faults, "--json"});
  EXPECT_EQ(result.status, cli::findings);
  const json parsed = json::parse(result.out);
  ASSERT_EQ(parsed.at("findings").size(), 18U);
  for (const json& finding : parsed["findings"]) {
    EXPECT_FALSE(finding.at("rule").get<std::string>().empty());
    EXPECT_EQ(finding.at("parts").size(), finding.at("called").size());
  }
}

TEST(Check, ValuesCanBeReplaced) {
  // A garden door moved to the right until the leaf cannot clear it on its wall: 72 in less 22, 1 and 23 leaves 26.
  EXPECT_EQ(run({"check", garden, "--set", "wall[@side='front']/door/@left=26in"}).status, cli::done);
  const Result off = run({"check", garden, "--set", "wall[@side='front']/door/@left=27in"});
  EXPECT_EQ(off.status, cli::findings);
  EXPECT_THAT(off.out, HasSubstr("slider.on-wall"));
  EXPECT_THAT(off.out, HasSubstr("1\" past the corner"));
}

TEST(Check, UnitsOfWhatIsPrintedCanBeChosen) {
  const Result result =
      run({"check", garden, "--units", "mm", "--set", "wall[@side='front']/door/@left=27in"});
  EXPECT_THAT(result.out, HasSubstr("25.5 mm past the corner"));  // 25.4, to the nearest half
}

TEST(Check, EveryProblemOfADesignIsNamedInOneRun) {
  const support::TemporaryFolder folder;
  const std::string path = (folder.path() / "bad.xml").string();
  std::ofstream(path)
      << "<coop format=\"1\" name=\"n\" units=\"mm\">\n<flock birds=\"-3\"/>\n<house width=\"2 furlongs\" "
         "depth=\"1500\" wall-height=\"1400\"/>\n<roof pich=\"30deg\"/>\n</coop>\n";
  const Result result = run({"check", path, "--json"});
  EXPECT_EQ(result.status, cli::wrong_input);
  for (const char* place : {":2:", ":3:", ":4:"})
    EXPECT_THAT(result.err, HasSubstr("bad.xml" + std::string(place)));
  EXPECT_THAT(result.err, HasSubstr("pitch"));  // nearest spelling
  EXPECT_GE(json::parse(result.out).at("problems").size(), 3U);
}

TEST(Check, AFileThatIsNotThereIsNamed) {
  const Result result = run({"check", "no/such/design.xml"});
  EXPECT_EQ(result.status, cli::wrong_input);
  EXPECT_THAT(result.err, HasSubstr("no/such/design.xml"));
}

TEST(Check, ASizeThatCannotBeBuiltIsAProblem) {
  const Result result = run({"check", garden, "--set", "wall[@side='front']/door/@left=2in"});
  EXPECT_EQ(result.status, cli::wrong_input);
  EXPECT_THAT(result.err, HasSubstr("keeper's door"));
}

TEST(Make, SaysWhatItMade) {
  const support::TemporaryFolder folder;
  const Result result =
      run({"make", garden, "-o", (folder.path() / "pack").string(), "--only", "stl", "--json"});
  EXPECT_EQ(result.status, cli::done);
  const json parsed = json::parse(result.out);
  EXPECT_GT(parsed.at("parts").get<int>(), 100);
  EXPECT_TRUE(std::filesystem::exists(folder.path() / "pack/solid/school-garden.stl"));
  EXPECT_TRUE(std::filesystem::exists(folder.path() / "pack/plan.json"));
  EXPECT_FALSE(std::filesystem::exists(folder.path() / "pack/solid/school-garden.step"));
}

TEST(Make, DoesNotReplaceAFolderThatIsNotItsOwn) {
  const support::TemporaryFolder folder;
  std::filesystem::create_directory(folder.path() / "mine");
  std::ofstream(folder.path() / "mine/letter.txt") << "dear";
  const Result result = run({"make", garden, "-o", (folder.path() / "mine").string(), "--only", "stl"});
  EXPECT_EQ(result.status, cli::not_written);
  EXPECT_TRUE(std::filesystem::exists(folder.path() / "mine/letter.txt"));
}

std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

TEST(Start, WritesADesignThatChecksWithoutAWarning) {
  const support::TemporaryFolder folder;
  const std::string path = (folder.path() / "my.xml").string();
  const Result result = run({"start", "--birds", "5", "--units", "in", "--roof", "gable", "-o", path});
  EXPECT_EQ(result.status, cli::done);
  EXPECT_THAT(result.out, HasSubstr("coopwright check " + path));
  EXPECT_THAT(text_of(path), HasSubstr("birds=\"5\" size=\"medium\""));
  const Result checked = run({"check", path});
  EXPECT_EQ(checked.status, cli::done);
  EXPECT_THAT(checked.out, HasSubstr("\n0 errors, 0 warnings, "));
}

TEST(Start, NeverReplacesAFileUnlessForced) {
  const support::TemporaryFolder folder;
  const std::string path = (folder.path() / "my.xml").string();
  std::ofstream(path) << "dear";
  const std::vector<std::string> start{"start",  "--birds",      "5",  "--units", "mm",
                                       "--roof", "single-slope", "-o", path};
  const Result refused = run(start);
  EXPECT_EQ(refused.status, cli::not_written);
  EXPECT_THAT(refused.err, HasSubstr("--force"));
  EXPECT_EQ(text_of(path), "dear");
  std::vector<std::string> forced = start;
  forced.push_back("--force");
  EXPECT_EQ(run(forced).status, cli::done);
  EXPECT_THAT(text_of(path), HasSubstr("</coop>"));
}

TEST(Start, RefusesWhatItCannotPlan) {
  for (const char* birds : {"1", "61", "-3", "five"})
    EXPECT_EQ(run({"start", "--birds", birds, "--units", "in", "--roof", "gable", "-o", "x.xml"}).status,
              cli::wrong_input)
        << birds;
  EXPECT_EQ(run({"start", "--birds", "5", "--units", "in", "--roof", "flat", "-o", "x.xml"}).status,
            cli::wrong_input);
  EXPECT_FALSE(std::filesystem::exists("x.xml"));
}

TEST(Start, AsksUntilAnAnswerWillDo) {
  cli::Options options;
  options.roof = "gable";
  std::istringstream in("many\n1\n12 \n\nell\nmm\n\nmy coop.xml\n");
  std::ostringstream out;
  EXPECT_TRUE(cli::ask(options, in, out));
  EXPECT_EQ(options.birds, 12);
  EXPECT_EQ(options.size, "medium");
  EXPECT_EQ(options.units, "mm");
  EXPECT_EQ(options.roof, "gable");
  EXPECT_EQ(options.out, "my coop.xml");
  EXPECT_THAT(out.str(), HasSubstr("2 to 60"));
  EXPECT_THAT(out.str(), Not(HasSubstr("Roof")));  // it was said
}

TEST(Start, GivesUpWhereTheAnswersEnd) {
  cli::Options options;
  std::istringstream in("12\n");
  std::ostringstream out;
  EXPECT_FALSE(cli::ask(options, in, out));
}

}  // namespace
