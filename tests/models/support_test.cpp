// What holds what, in houses that stand and in ones with a part left hanging.
#include "models/support.h"

#include <gtest/gtest.h>

#include "models/checks.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;
using test_support::sample_design;

std::vector<Finding> unsupported(const Design& design) {
  const Building building = build(design);
  const Scene standing = scene(building);
  return find_unsupported({design, building, standing});
}

const Lumber two_by_two{"2x2", inches(1.5), inches(1.5)};

// A stick lying level along y under the sample's roof: from the inside of the front rail to that of the back rail,
// its upper face `below` mm below the top of the rails.
ExtraStick beam(double length, double from_front, double below) {
  ExtraStick stick;
  stick.name = "beam";
  stick.lumber = two_by_two;
  stick.length = mm(length);
  stick.placement = geometry::placement({600, from_front, 60 * 25.4 - 38.1 - below}, {0, 1, 0}, {-1, 0, 0});
  return stick;
}

constexpr double clear = 57 * 25.4;  // between the rails of a house 60 in deep

TEST(Support, OfTheSampleIsWhole) { EXPECT_TRUE(unsupported(sample_design()).empty()); }

TEST(Support, OfABeamBetweenTwoRailsIsTheRails) {
  Design d = sample_design();
  d.extra_sticks = {beam(clear, 38.1, 0)};
  EXPECT_TRUE(unsupported(d).empty());
}

TEST(Support, OfABeamThatIsTooShortIsNothing) {
  Design d = sample_design();
  d.extra_sticks = {beam(clear - 8, 38.1 + 4, 0)};
  const std::vector<Finding> found = unsupported(d);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::error);
  EXPECT_EQ(found[0].message, "nothing holds beam E1");
  EXPECT_EQ(found[0].measured, "0.16 in short of top rail F1");  // 4 mm
  EXPECT_NE(found[0].advice.find("forward by 0.16 in"), std::string::npos) << found[0].advice;
}

TEST(Support, TellsOfAGroupOnce) {
  Design d = sample_design();
  d.units = Units::mm;
  ExtraStick under = beam(400, 300, 38.1);
  under.name = "hanger";
  d.extra_sticks = {beam(clear - 5, 38.1 + 2, 0), under};
  const std::vector<Finding> found = unsupported(d);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].parts.size(), 2U);
  EXPECT_EQ(found[0].measured, "2 mm short of top rail F1");
}

TEST(Support, OfAPostThatDoesNotReachTheGroundIsMeasuredToTheGround) {
  Design d = sample_design();
  d.units = Units::mm;
  ExtraStick post = beam(300, 0, 0);
  post.name = "stake";
  post.placement = geometry::placement({-800, -800, 7}, {0, 0, 1}, {1, 0, 0});
  d.extra_sticks = {post};
  const std::vector<Finding> found = unsupported(d);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].measured, "7 mm short of the ground");
  EXPECT_NE(found[0].advice.find("down by 7 mm"), std::string::npos) << found[0].advice;
}

TEST(Support, OfALeafIsItsHinges) {
  // The leaf touches nothing: it hangs by the line of its pins. Turned about a line in the middle of the opening, far
  // from any jamb, it would hang on nothing.
  const Design d = sample_design();
  Building building = build(d);
  const Scene standing = scene(building);
  const std::vector<Joint> all = joints(building, standing);
  EXPECT_TRUE(unheld(d, building, standing, all).empty());
  building.movers[0].axis.point.x += 300;
  const auto groups = unheld(d, building, standing, all);
  ASSERT_EQ(groups.size(), 1U);
  EXPECT_EQ(groups[0].size(), building.movers[0].parts.size());
}

TEST(Support, ALeafHoldsNothing) {
  // A shelf screwed to the inside of the leaf's slats only; its own weight would hang on the door.
  Design d = sample_design();
  ExtraStick bracket = beam(100, 0, 0);
  // The leaf's frame stands behind its slats, 3/4 in of slats outside the frame's plane: its inner face is at y = 3/4 in.
  bracket.placement = geometry::placement({24 * 25.4, 0.75 * 25.4 - 19.05, 20 * 25.4}, {0, 1, 0}, {1, 0, 0});
  const Building building = build(d);
  const Scene standing = scene(building);
  double inner = -1e9;
  for (const std::size_t part : building.movers[0].parts)
    inner = std::max(inner, standing.parts[part].box.high.y);
  std::size_t stile = building.movers[0].parts[0];
  bracket.placement.origin = {standing.parts[stile].box.low.x + 38.1 + 5, inner, 20 * 25.4};
  bracket.placement = geometry::placement(bracket.placement.origin, {0, 1, 0}, {-1, 0, 0});
  d.extra_sticks = {bracket};
  ASSERT_EQ(unsupported(d).size(), 1U);
}

TEST(Support, WithoutAHouseIsAWarning) {
  Design d;
  d.has_house = false;
  d.units = Units::mm;
  d.extra_sticks = {beam(500, 0, 0), beam(500, 0, 100)};
  const std::vector<Finding> found = unsupported(d);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::warning);
}

}  // namespace
}  // namespace models
