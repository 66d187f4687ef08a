// Every example design, built and written, and each file held against the building by a judge of its own.
#include <algorithm>
#include <filesystem>
#include <set>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <tinyxml2.h>

#include "exporters/glb.h"
#include "exporters/plan_json.h"
#include "exporters/step.h"
#include "exporters/stl.h"
#include "models/checks.h"
#include "models/design_format.h"
#include "models/read_design.h"
#include "support/admesh.h"
#include "support/glb.h"
#include "support/json_schema.h"
#include "support/part21.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;
namespace part21 = support::part21;

namespace {

std::vector<std::string> example_designs() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(PROJECT_DIR "/models/designs"))
    if (entry.path().extension() == ".xml") names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

exporters::Plan plan_of(const std::string& name) {
  const std::string file = PROJECT_DIR "/models/designs/" + name + ".xml";
  models::ReadResult read = models::read_design(support::read_bytes(file), file);
  for (const models::Problem& problem : read.problems) throw std::runtime_error(print(problem));
  exporters::Plan plan{name, std::move(read.design), {}, {}, {}};
  plan.building = models::build(plan.design);
  plan.findings = models::check(plan.design, plan.building);
  return plan;
}

std::size_t assemblies_in(const models::Assembly& assembly) {
  std::size_t count = 1;
  for (const models::Assembly& child : assembly.assemblies) count += assemblies_in(child);
  return count;
}

class ExampleDesign : public testing::TestWithParam<std::string> {
 protected:
  [[nodiscard]] fs::path solid(const std::string& file) const { return folder.path() / "solid" / file; }

  support::TemporaryFolder folder;
  exporters::Plan plan = plan_of(GetParam());
  const models::Building& building = plan.building;
};

void expect_sound(const support::MeshJudgement& judgement, std::size_t parts, double volume) {
  EXPECT_EQ(judgement.disconnected, 0);
  EXPECT_EQ(judgement.degenerate, 0);
  EXPECT_EQ(judgement.mended, 0);
  EXPECT_EQ(judgement.parts, static_cast<long>(parts));
  EXPECT_NEAR(judgement.volume, volume, 1e-4 * volume);
}

}  // namespace

TEST_P(ExampleDesign, HasClosedSurfacesOfEachMarksVolume) {
  exporters::write_part_stl(plan, folder.path());
  for (const models::Mark& mark : building.marks) {
    SCOPED_TRACE(mark.label);
    expect_sound(support::judge_stl(solid("parts/" + mark.label + ".stl")), 1,
                 geometry::volume(mark.solid).mm3);
  }
}

TEST_P(ExampleDesign, HasEveryPartInTheWholesSurface) {
  exporters::write_stl(plan, folder.path());
  double volume = 0;
  for (const models::Mark& mark : building.marks) volume += mark.count * geometry::volume(mark.solid).mm3;
  expect_sound(support::judge_stl(solid(plan.name + ".stl")), building.parts.size(), volume);
}

TEST_P(ExampleDesign, HasAProductAMarkAndAUseAPart) {
  exporters::write_step(plan, folder.path());
  const part21::Exchange file = part21::read(support::read_bytes(solid(plan.name + ".step")));
  const std::size_t assemblies = assemblies_in(building.tree);
  EXPECT_EQ(records(file, "PRODUCT").size(), building.marks.size() + assemblies);
  EXPECT_EQ(records(file, "NEXT_ASSEMBLY_USAGE_OCCURRENCE").size(), building.parts.size() + assemblies - 1);
  EXPECT_EQ(records(file, "MANIFOLD_SOLID_BREP").size(), building.marks.size());
}

TEST_P(ExampleDesign, StandsWholeInTheScene) {
  exporters::write_glb(plan, folder.path());
  const support::Glb glb = support::read_glb(support::read_bytes(solid(plan.name + ".glb")));
  std::set<std::string> names;
  for (const auto& node : glb.json["nodes"]) EXPECT_TRUE(names.insert(node["name"]).second) << node["name"];
  const auto meshes = support::placed_meshes(glb);
  EXPECT_EQ(meshes.size(), building.parts.size());

  geometry::Box house;
  for (const models::Part& part : building.parts)
    house.add(geometry::bounds(geometry::placed(building.marks[part.mark].solid, part.placement)));
  const geometry::Box scene = support::box_of(meshes);
  EXPECT_LT(norm(scene.low * 1000 - geometry::Vec3{house.low.x, house.low.z, -house.high.y}), 0.01);
  EXPECT_LT(norm(scene.high * 1000 - geometry::Vec3{house.high.x, house.high.z, -house.low.y}), 0.01);
}

TEST_P(ExampleDesign, IsDescribedAsTheSchemaSays) {
  const std::string text = exporters::plan_json(plan, {"plan.json"});
  EXPECT_TRUE(support::obeys_schema({text}, PROJECT_DIR "/docs/plan.schema.json").front());
}

TEST_P(ExampleDesign, IsSound) {
  for (const models::Finding& finding : plan.findings)
    EXPECT_EQ(finding.severity, models::Severity::note) << finding.message;
}

TEST(ExampleDesigns, UseEveryElementBetweenThem) {
  std::set<std::string> used;
  const auto gather = [&](const auto& self, const tinyxml2::XMLElement& element) -> void {
    used.insert(element.Name());
    for (const auto* child = element.FirstChildElement(); child; child = child->NextSiblingElement())
      self(self, *child);
  };
  for (const std::string& name : example_designs()) {
    tinyxml2::XMLDocument document;
    const std::string file = PROJECT_DIR "/models/designs/" + name + ".xml";
    ASSERT_EQ(document.LoadFile(file.c_str()), tinyxml2::XML_SUCCESS) << name;
    gather(gather, *document.RootElement());
  }
  for (const models::ElementFormat& element : models::design_format())
    EXPECT_TRUE(used.contains(std::string(element.name))) << element.name;
}

INSTANTIATE_TEST_SUITE_P(All, ExampleDesign, testing::ValuesIn(example_designs()), [](const auto& design) {
  std::string name = design.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});
