// The house has four floors and nothing looks up: every #include in the tree is read.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <string>

#include <gtest/gtest.h>

namespace {

namespace fs = std::filesystem;

const std::map<std::string, int> floors{{"geometry", 0}, {"models", 1}, {"exporters", 2}, {"cli", 3}};

struct Include {
  fs::path file;  // below the project
  std::string header;
  bool own;  // in quotes
};

std::vector<Include> includes() {
  std::vector<Include> found;
  const std::regex line_form(R"(^\s*#include\s*([<"])([^>"]+)[>"].*$)");
  for (const auto& [floor, level] : floors)
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(PROJECT_DIR) / floor)) {
      const std::string ending = entry.path().extension().string();
      if (ending != ".h" && ending != ".cpp") continue;
      std::ifstream in(entry.path());
      for (std::string line; std::getline(in, line);) {
        std::smatch match;
        if (std::regex_match(line, match, line_form))
          found.push_back({fs::relative(entry.path(), PROJECT_DIR), match[2], match[1] == "\""});
      }
    }
  return found;
}

TEST(Layers, EveryIncludePointsDownOrStaysOnItsFloor) {
  int own = 0;
  for (const Include& include : includes()) {
    if (!include.own) continue;
    ++own;
    const auto target = floors.find(fs::path(include.header).begin()->string());
    ASSERT_NE(target, floors.end()) << include.file << " includes \"" << include.header << "\" from no floor";
    EXPECT_LE(target->second, floors.at(include.file.begin()->string()))
        << include.file << " looks up to " << include.header;
  }
  EXPECT_GT(own, 50);
}

TEST(Layers, TheKernelIsSeenOnlyInTheGeometryFloorAndTheStepWriter) {
  // The kernel's headers end in .hxx.
  int kernel = 0;
  for (const Include& include : includes()) {
    if (!include.header.ends_with(".hxx")) continue;
    ++kernel;
    const bool geometry = *include.file.begin() == "geometry";
    const bool header_of_bridge = include.file.parent_path() == fs::path("geometry/kernel");
    const bool step_writer = include.file == fs::path("exporters/step.cpp");
    EXPECT_TRUE(geometry || step_writer) << include.file << " includes " << include.header;
    if (include.file.extension() == ".h") {
      EXPECT_TRUE(header_of_bridge) << include.file << " includes " << include.header;
    }
  }
  EXPECT_GT(kernel, 20);
}

TEST(Layers, OnlyTheCommandLinePrints) {
  for (const Include& include : includes())
    if (include.header == "iostream") {
      EXPECT_EQ(*include.file.begin(), "cli") << include.file;
    }
}

TEST(Layers, TheTopLevelHoldsWhatItShould) {
  const std::vector<std::string> allowed{
      "CMakeLists.txt", "DEVELOPERS.md", "LICENSE", "README.md", "cli",   "docs",
      "exporters",      "geometry",      "models",  "tests",     "build", "out"};
  for (const auto& entry : fs::directory_iterator(PROJECT_DIR)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(".") || name.starts_with("build")) continue;
    EXPECT_NE(std::find(allowed.begin(), allowed.end(), name), allowed.end()) << name;
  }
}

}  // namespace
