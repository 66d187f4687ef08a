// The example designs' whole packs, made by running the program as a person would.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <numbers>
#include <set>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "geometry/kernel/guard.h"
#include "support/admesh.h"
#include "support/part21.h"
#include "support/temporary_folder.h"

namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using support::read_bytes;

int run(const std::string& command) {
  const int status = std::system((command + " >/dev/null").c_str());
  return WEXITSTATUS(status);
}

std::string quoted(const fs::path& path) { return std::string("'").append(path.string()).append("'"); }

int make(const std::string& design, const fs::path& out, const std::string& before = "") {
  return run(before + quoted(PROGRAM) + " make " +
             quoted(fs::path(PROJECT_DIR) / "models/designs" / (design + ".xml")) + " -o " + quoted(out));
}

std::map<std::string, std::string> files_of(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file())
      files[fs::relative(entry.path(), folder).string()] = read_bytes(entry.path());
  return files;
}

// The designs' packs, made once for all tests.
class DemoPack : public testing::TestWithParam<const char*> {
 protected:
  static fs::path pack(const std::string& design) {
    static support::TemporaryFolder folder;
    const fs::path out = folder.path() / design;
    if (!fs::exists(out) && make(design, out) != 0) throw std::runtime_error("make failed: " + design);
    return out;
  }
  [[nodiscard]] fs::path pack() const { return pack(GetParam()); }
  [[nodiscard]] json plan() const { return json::parse(read_bytes(pack() / "plan.json")); }
};
INSTANTIATE_TEST_SUITE_P(Design, DemoPack, testing::Values("school-garden", "windy-track"));

TEST_P(DemoPack, HoldsTheFilesThatItLists) {
  std::set<std::string> listed;
  const json all = plan();
  for (const json& file : all.at("files")) listed.insert(file.get<std::string>());
  std::set<std::string> there;
  for (const auto& [name, bytes] : files_of(pack())) {
    there.insert(name);
    EXPECT_FALSE(bytes.empty()) << name;
  }
  EXPECT_EQ(listed, there);
  for (const char* name : {".step", ".glb", ".stl"})
    EXPECT_TRUE(there.count(std::string("solid/") + GetParam() + name)) << name;
}

double shoelace(const json& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const json &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    twice += a[0].get<double>() * b[1].get<double>() - a[1].get<double>() * b[0].get<double>();
  }
  return std::abs(twice) / 2;
}

TEST_P(DemoPack, EveryVolumeIsTheClosedFormOfItsPart) {
  int bevelled = 0;
  const json all = plan();
  for (const json& mark : all.at("marks")) {
    double area = shoelace(mark["outline"]["outer"]);
    for (const json& hole : mark["outline"]["holes"]) area -= shoelace(hole);
    double volume = area * mark["thickness"].get<double>();
    // Four rounded long edges each lose (1 - pi / 4) r2 along the whole length.
    const double radius = mark["rounding"];
    volume -= (4 - std::numbers::pi) * radius * radius * mark["blank"][0].get<double>();
    if (!mark["bevels"].empty()) {
      // A board ripped to the ridge's plumb plane loses a prism: half of thickness x thickness x slope, along its length.
      ASSERT_EQ(mark["bevels"].size(), 1U);
      const json& outward = mark["bevels"][0]["outward"];
      const double slope = -outward[2].get<double>() / outward[1].get<double>(), t = mark["thickness"];
      volume -= t * t * slope / 2 * mark["blank"][0].get<double>();
      ++bevelled;
    }
    EXPECT_NEAR(mark["volume"].get<double>(), volume, 1e-6 * volume) << mark["label"];
  }
  EXPECT_GE(bevelled, 1);  // the topmost piece of cover
}

TEST_P(DemoPack, EveryTriangleFileIsClosedAndHasItsSolidsVolume) {
  const json all = plan();
  double whole = 0;
  for (const json& mark : all.at("marks")) {
    const double volume = mark["volume"];
    whole += volume * mark["count"].get<double>();
    const auto judged =
        support::judge_stl(pack() / "solid/parts" / (mark["label"].get<std::string>() + ".stl"));
    EXPECT_EQ(judged.disconnected + judged.degenerate + judged.mended, 0) << mark["label"];
    EXPECT_EQ(judged.parts, 1) << mark["label"];
    EXPECT_NEAR(judged.volume, volume, 1e-4 * volume) << mark["label"];
  }
  const auto judged = support::judge_stl(pack() / "solid" / (std::string(GetParam()) + ".stl"));
  EXPECT_NEAR(judged.volume, whole, 1e-4 * whole);
}

// Walks the product tree: calls with the path of names and, at leaves, the shape.
void walk(const TDF_Label& label, const std::string& path,
          const std::function<void(const std::string&, const TopoDS_Shape&)>& leaf) {
  TDF_Label product = label;
  if (XCAFDoc_ShapeTool::IsReference(label)) XCAFDoc_ShapeTool::GetReferredShape(label, product);
  Handle(TDataStd_Name) name;
  std::string here = path;
  if (product.FindAttribute(TDataStd_Name::GetID(), name))
    here += "/" + std::string(TCollection_AsciiString(name->Get()).ToCString());
  TDF_LabelSequence components;
  if (!XCAFDoc_ShapeTool::GetComponents(product, components))
    return leaf(here, XCAFDoc_ShapeTool::GetShape(product));
  for (int i = 1; i <= components.Length(); ++i) walk(components(i), here, leaf);
}

TEST_P(DemoPack, StepReadsBackWithTheSameTreeNamesAndVolumes) {
  geometry::kernel::silence();
  Handle(TDocStd_Document) document = new TDocStd_Document("XCAF");
  STEPCAFControl_Reader reader;
  ASSERT_EQ(reader.ReadFile((pack() / "solid" / (std::string(GetParam()) + ".step")).c_str()),
            IFSelect_RetDone);
  ASSERT_TRUE(reader.Transfer(document));
  TDF_LabelSequence roots;
  XCAFDoc_DocumentTool::ShapeTool(document->Main())->GetFreeShapes(roots);
  ASSERT_EQ(roots.Length(), 1);
  std::multimap<std::string, double> read;
  walk(roots.First(), "", [&](const std::string& path, const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    read.emplace(path, properties.Mass());
  });

  const json all = plan();
  std::multimap<std::string, double> expected;
  const std::function<void(const json&, const std::string&)> expect = [&](const json& node,
                                                                          const std::string& path) {
    const std::string here = path + "/" + node["name"].get<std::string>();
    for (const json& part : node["parts"]) {
      const json& mark = *std::find_if(all["marks"].begin(), all["marks"].end(), [&](const json& m) {
        return m["label"] == all["parts"][part.get<std::size_t>()]["mark"];
      });
      expected.emplace(here + "/" + mark["label"].get<std::string>() + " " + mark["name"].get<std::string>(),
                       mark["volume"]);
    }
    for (const json& child : node["assemblies"]) expect(child, here);
  };
  expect(all["tree"], "");
  ASSERT_EQ(read.size(), all["parts"].size());
  ASSERT_EQ(read.size(), expected.size());
  for (auto a = read.begin(), b = expected.begin(); a != read.end(); ++a, ++b) {
    EXPECT_EQ(a->first, b->first);
    EXPECT_NEAR(a->second, b->second, 1e-6 * b->second) << a->first;
  }
}

TEST_P(DemoPack, StepKeepsToTheGrammarOfIso10303Part21) {
  const auto exchange =
      support::part21::read(read_bytes(pack() / "solid" / (std::string(GetParam()) + ".step")));
  const auto schema = support::part21::records(exchange, "ADVANCED_BREP_SHAPE_REPRESENTATION");
  // One B-rep for each mark, however many parts share it.
  EXPECT_EQ(support::part21::records(exchange, "MANIFOLD_SOLID_BREP").size(), plan()["marks"].size());
  EXPECT_FALSE(schema.empty());
}

TEST_P(DemoPack, IsTheSameToTheByteInAnotherFolderAndLocale) {
  const support::TemporaryFolder other;
  ASSERT_EQ(make(GetParam(), other.path() / "again"), 0);
  ASSERT_EQ(
      make(GetParam(), other.path() / "german", "cd " + quoted(other.path()) + " && LC_ALL=de_DE.UTF-8 "), 0);
  const auto first = files_of(pack());
  EXPECT_GT(first.size(), 10U);
  for (const char* name : {"again", "german"}) {
    const auto second = files_of(other.path() / name);
    ASSERT_EQ(first.size(), second.size());
    for (const auto& [file, bytes] : first)
      EXPECT_TRUE(second.at(file) == bytes) << file << " differs in " << name;
  }
}

TEST_P(DemoPack, HasADimensionedSheetForEveryWallAndTheTruss) {
  std::set<std::string> shown;
  for (const auto& [name, bytes] : files_of(pack() / "sheets")) {
    EXPECT_NE(bytes.find("viewBox"), std::string::npos) << name;
    shown.insert(name.substr(3));
  }
  for (const char* sheet :
       {"general-view.svg", "open-view.svg", "front-wall-frame.svg", "right-wall-frame.svg",
        "back-wall-frame.svg", "left-wall-frame.svg", "truss.svg"})
    EXPECT_TRUE(shown.count(sheet)) << sheet;
}

TEST(Readme, ShowsTheDrawingsThatTheProgramMakes) {
  const support::TemporaryFolder folder;
  ASSERT_EQ(make("school-garden", folder.path() / "pack"), 0);
  const auto sheets = files_of(folder.path() / "pack/sheets");
  for (const std::string shown : {"open-view.svg", "truss.svg"}) {
    const auto sheet = std::find_if(sheets.begin(), sheets.end(),
                                    [&](const auto& file) { return file.first.substr(3) == shown; });
    ASSERT_NE(sheet, sheets.end()) << shown;
    EXPECT_TRUE(read_bytes(fs::path(PROJECT_DIR) / "docs/images" / shown) == sheet->second)
        << "copy sheets/" << sheet->first << " of the school garden's pack to docs/images/" << shown;
  }
}

TEST(Program, StopsAtAWrongDesignAndLeavesNothingBehind) {
  const support::TemporaryFolder folder;
  std::ofstream(folder.path() / "bad.xml")
      << "<coop format=\"1\" name=\"x\" units=\"mm\"><flock birds=\"3\"/><hause/></coop>";
  EXPECT_EQ(run(quoted(PROGRAM) + " make " + quoted(folder.path() / "bad.xml") + " -o " +
                quoted(folder.path() / "out") + " 2>/dev/null"),
            2);
  EXPECT_FALSE(fs::exists(folder.path() / "out"));
}

TEST(Program, MakesTheFoldersOnTheWayToARelativePath) {
  const support::TemporaryFolder folder;
  const std::string there = "cd " + quoted(folder.path()) + " && ";
  EXPECT_EQ(make("school-garden", "not/there/yet", there), 0);
  EXPECT_TRUE(fs::exists(folder.path() / "not/there/yet/plan.json"));
  // Without -o the pack goes beside where one stands, under the design's name.
  EXPECT_EQ(run(there + quoted(PROGRAM) + " make " +
                quoted(fs::path(PROJECT_DIR) / "models/designs/school-garden.xml")),
            0);
  EXPECT_TRUE(fs::exists(folder.path() / "school-garden-pack/plan.json"));
}

TEST(Program, SaysWithItsExitStatusThatErrorsWereFound) {
  EXPECT_EQ(
      run(quoted(PROGRAM) + " check " + quoted(fs::path(PROJECT_DIR) / "tests/data/planted-faults.xml")), 1);
  EXPECT_EQ(
      run(quoted(PROGRAM) + " check " + quoted(fs::path(PROJECT_DIR) / "models/designs/school-garden.xml")),
      0);
}

}  // namespace
