// The planted faults are all found, and none is invented; the example designs have none.
#include "models/checks.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "geometry/motion.h"
#include "models/buildable.h"
#include "models/door_places.h"
#include "models/read_design.h"

namespace models {
namespace {

Design read(const std::filesystem::path& path) {
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  ReadResult result = read_design(text.str(), path.filename().string());
  for (const Problem& problem : result.problems) ADD_FAILURE() << print(problem);
  for (const Problem& problem : unbuildable(result.design)) ADD_FAILURE() << print(problem);
  return result.design;
}

struct Checked {
  Design design;
  Building building;
  std::vector<Finding> findings;
};

class PlantedFaults : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    Design design = read(std::filesystem::path(PROJECT_DIR) / "tests/data/planted-faults.xml");
    Building building = build(design);
    std::vector<Finding> findings = check(design, building);
    checked_ = new Checked{std::move(design), std::move(building), std::move(findings)};
  }
  static void TearDownTestSuite() { delete checked_; }

  // The findings of a rule that speak of something.
  static std::vector<Finding> about(const std::string& rule, const std::string& words) {
    std::vector<Finding> found;
    for (const Finding& f : checked_->findings)
      if (f.rule == rule && f.message.find(words) != std::string::npos) found.push_back(f);
    return found;
  }
  static Checked* checked_;
};
Checked* PlantedFaults::checked_ = nullptr;

TEST_F(PlantedFaults, TheSliderRunsOffItsWall) {
  const auto found = about("slider.on-wall", "front door");
  ASSERT_EQ(found.size(), 1U);
  // Closed from 1075 to 1725; opening takes another 625: 2350 on a wall of 2000.
  EXPECT_EQ(found[0].measured, "350 mm past the corner");
  // Left edge at most 2000 - 600 - 25 - 625; at least the lap of 25. The other way at least 25 + 625.
  EXPECT_NE(found[0].advice.find("from 25 mm to 750 mm"), std::string::npos) << found[0].advice;
  EXPECT_NE(found[0].advice.find("from 650 mm to 1375 mm"), std::string::npos) << found[0].advice;
}

TEST_F(PlantedFaults, TheSideDoorSwingsIntoTheRoosts) {
  const auto found = about("motion.swing", "side door");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].message.find("roost ledge"), std::string::npos);
  EXPECT_EQ(found[0].asked, "85\u00b0");
}

TEST_F(PlantedFaults, TheHatchUnderTheEaveMeetsTheRafters) {
  const auto found = about("motion.swing", "high hatch");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].message.find("rafter"), std::string::npos);
  // Worked out in the section through the eave. The pin stands at x = 19 + 5 beyond the wall's face, z = 1310 - 2 of
  // the opening's head. The tail's lowest corner: x = 250, z = 1400 - (250 + 38) tan 30 = 1233.7. The leaf's free
  // edge is 310 - 6 mm from the pin: farther than the tail's corner, which lies sqrt(226^2 + 74.3^2) = 237.9 mm from
  // the pin, 18.2 degrees below level, that is 71.8 degrees from the hanging leaf. Its outer face runs 5 mm inside the
  // pin's line, atan(5 / 237.9) = 1.2 degrees: the face is there after 71.8 + 1.2 = 73 degrees.
  EXPECT_EQ(found[0].measured, "73\u00b0");
}

TEST_F(PlantedFaults, TheThickHatchBindsInItsReveal) {
  const auto found = about("motion.swing", "thick hatch");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].message.find("head rail"), std::string::npos);
  EXPECT_NE(found[0].advice.find("a reveal of at least"), std::string::npos);
}

TEST_F(PlantedFaults, TheRoostLedgeRunsAcrossTheThickHatch) {
  const auto found = about("fit.reveal", "thick hatch");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].measured, "they touch");
  EXPECT_EQ(found[0].asked, "2 mm");
}

TEST_F(PlantedFaults, TheLastRoostRunsThroughTheNestDividers) {
  const auto found = about("fit.overlap", "roost bar");
  ASSERT_EQ(found.size(), 3U);  // two nests: three dividers
  for (const Finding& f : found) {
    EXPECT_NE(f.message.find("nest divider"), std::string::npos);
    // Divider to y = 38 + 12 + 300 = 350; the bar's centre at 1600 - 38 - 190 - 3 x 340 = 352, half of it 31.5:
    // 29.5 deep, 12 wide, 38 high less a rounded edge.
    EXPECT_NE(f.advice.find("back by 29.5 mm"), std::string::npos) << f.advice;
    EXPECT_NEAR(std::stod(f.measured), 29.5 * 12 * 38 / 1000, 0.5);
  }
}

TEST_F(PlantedFaults, NestsAndRoostsStandInTheWayThroughBothDoors) {
  EXPECT_EQ(about("opening.free", "front door").size(), 1U);
  EXPECT_EQ(about("opening.free", "side door").size(), 1U);
}

TEST_F(PlantedFaults, NothingElseIsFound) {
  std::vector<std::string> of_flock;
  for (const Finding& f : checked_->findings)
    if (f.rule.rfind("flock.", 0) == 0) of_flock.push_back(f.rule + " " + std::string(name(f.severity)));
  // And a note: that no animal gets in while the leaves are closed. The bar that runs through the dividers also runs
  // over the nests.
  EXPECT_EQ(about("use.roost-order", "runs over the nests").size(), 1U);
  EXPECT_EQ(checked_->findings.size() - of_flock.size(), 12U);
  // No run, nests of 250 by 300 by 300 mm, a roost 190 mm from the wall, gaps of 0.26 m2 over 2.7 m2 of floor, no litter.
  EXPECT_EQ(of_flock,
            (std::vector<std::string>{"flock.run note", "flock.nests warning", "flock.nests note",
                                      "flock.roost warning", "flock.air note", "flock.litter note"}));
}

TEST_F(PlantedFaults, TheKernelsSweptSolidAgreesWithTheMotionCheck) {
  // Outside judge: the solid that the leaf's stile sweeps, made by the kernel, and its distance to the rafters.
  const Building& b = checked_->building;
  const auto mover =
      std::find_if(b.movers.begin(), b.movers.end(), [](const Mover& m) { return m.name == "high hatch"; });
  ASSERT_NE(mover, b.movers.end());
  const Scene standing = scene(b);
  const geometry::Angle almost = geometry::degrees(60);
  const std::size_t leaf = mover->parts.front();
  const geometry::Solid swept =
      geometry::swept(geometry::placed(b.mark_of(leaf).solid, b.parts[leaf].placement), mover->axis, almost);
  for (std::size_t part = 0; part < b.parts.size(); ++part) {
    if (b.parts[part].name != "rafter" || !near(standing.parts[part].box, geometry::bounds(swept), 50))
      continue;
    const double kernel =
        geometry::distance(swept, geometry::placed(b.mark_of(part).solid, b.parts[part].placement)).mm();
    const auto own = geometry::least_clearance(standing.parts[leaf].pieces, standing.parts[part].pieces,
                                               geometry::Turn{mover->axis, almost});
    EXPECT_NEAR(own.nearest.clearance.distance, kernel, 0.011) << called(b, part);
  }
}

TEST(ChecksPage, DescribesEveryRuleOfTheTable) {
  std::ifstream in(std::filesystem::path(PROJECT_DIR) / "docs/checks.md");
  std::stringstream page;
  page << in.rdbuf();
  for (const Check& row : checks()) {
    const std::string cell = "| `" + std::string(row.rule) + "` |";
    EXPECT_NE(page.str().find(cell), std::string::npos) << row.rule;
    EXPECT_FALSE(row.source.empty()) << row.rule;
  }
}

TEST(Examples, HaveNoErrorsOrWarnings) {
  int designs = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::filesystem::path(PROJECT_DIR) / "models/designs")) {
    const Design design = read(entry.path());
    const Building building = build(design);
    for (const Finding& f : check(design, building))
      EXPECT_EQ(f.severity, Severity::note) << entry.path().filename() << ": " << f.message;
    ++designs;
  }
  EXPECT_GE(designs, 2);
}

TEST(DoorPlaces, AgreeWithBruteForceAtEveryFiveMillimetres) {
  // The high hatch, moved along its wall with the rest of the house built anew each time, checked from scratch.
  Design design = read(std::filesystem::path(PROJECT_DIR) / "tests/data/planted-faults.xml");
  design.walls[1].openings.erase(design.walls[1].openings.begin());  // the side door
  design.roosts.reset();
  Opening& hatch = design.walls[1].openings.front();
  hatch.bottom = geometry::mm(790);
  hatch.door.swing = Swing::inward;
  design.nests->left = geometry::mm(1300);
  hatch.bottom = geometry::mm(420);
  const Building building = build(design);
  const Scene standing = scene(building);
  const auto mover = std::find_if(building.movers.begin(), building.movers.end(),
                                  [](const Mover& m) { return m.name == "high hatch"; });
  ASSERT_NE(mover, building.movers.end());
  const double limit = mover->reveal.mm() / 2;
  const std::vector<Interval> places = clear_places({design, building, standing}, *mover, hatch, limit);
  ASSERT_FALSE(places.empty());
  for (double x = 40; x <= 1600; x += 5) {
    const bool inside = std::any_of(places.begin(), places.end(),
                                    [&](const Interval& i) { return i.from.mm() <= x && x <= i.to.mm(); });
    Design moved = design;
    moved.walls[1].openings.front().left = geometry::mm(x);
    bool clear = unbuildable(moved).empty();
    if (!clear) continue;  // the wall's posts have no room there: has_room() is stricter only about that
    const Building there = build(moved);
    const Scene scene_there = scene(there);
    std::vector<Finding> found = find_blocked_swings({moved, there, scene_there});
    for (const Finding& f : find_narrow_reveals({moved, there, scene_there})) found.push_back(f);
    for (const Finding& f : found) {
      if (f.message.find("high hatch") == std::string::npos) continue;
      if (f.message.find("rail") != std::string::npos || f.message.find("post") != std::string::npos)
        continue;
      clear = false;
    }
    EXPECT_EQ(inside, clear) << "left edge at " << x;
  }
}

}  // namespace
}  // namespace models
