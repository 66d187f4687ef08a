// Vents, windows, birds' doors and the ways that leaves open, read from a design file and built.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "tests/models/read_and_build.h"

namespace {

using models::Building;
using models::DoorKind;
using models::Mover;
using test::coop;
using test::problems_of;
using test::read_and_build;
using testing::ElementsAre;
using testing::HasSubstr;

const Mover* mover(const Building& building, const std::string& name) {
  const auto found = std::find_if(building.movers.begin(), building.movers.end(),
                                  [&](const Mover& m) { return m.name == name; });
  return found == building.movers.end() ? nullptr : &*found;
}

TEST(ReadOpenings, VentsAndWindowsAreClosedOnTheInside) {
  const auto [design, building] = read_and_build(
      coop("<wall side='back'><vent left='10in' bottom='36in' width='12in' height='6in'/>"
           "<round-vent left='40in' diameter='6in' bottom='38in' mesh='1/4 hardware cloth'/></wall>"
           "<wall side='right'><window name='east window' bottom='20in' width='14in' height='12in' pane='1/4 "
           "plywood'/>"
           "</wall>"));
  EXPECT_EQ(design.walls[2].openings[0].name, "back vent");
  EXPECT_EQ(design.walls[2].openings[1].name, "back round vent");
  EXPECT_EQ(design.walls[2].openings[0].mesh->name, "1/2 hardware cloth");
  EXPECT_EQ(test::count(building, "mesh"), 2);
  EXPECT_EQ(test::count(building, "pane"), 1);
  EXPECT_EQ(test::count(building, "batten"), 12);
  // The pane laps the window by a batten of 1-1/2 in all round: 17 by 15 in.
  for (const models::Part& part : building.parts)
    if (part.name == "pane") {
      EXPECT_NEAR(geometry::area(building.marks[part.mark].body.outline).mm2 / 645.16, 17 * 15, 1e-6);
    }
}

TEST(ReadOpenings, AVentStandsUnderTheTopRailUnlessItSaysElse) {
  const auto read =
      models::read_design(coop("<wall side='left'><vent width='8in' height='4in'/></wall>"), "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  // 48 in less the rail's 1-1/2 and the vent's 4.
  EXPECT_NEAR(read.design.walls[3].openings[0].bottom.inches(), 42.5, 1e-9);
  EXPECT_NEAR(read.design.walls[3].openings[0].left.inches(), 20, 1e-9);
}

TEST(ReadOpenings, ABirdDoorSlidesUpAndHasARamp) {
  const auto [design, building] = read_and_build(
      coop("<wall side='back'><bird-door name='birds' left='20in' bottom='8in' width='12in' height='14in' "
           "sheet='1/2 plywood' ramp='3/4 plywood' ramp-length='30in'/></wall>"));
  const Mover* birds = mover(building, "birds");
  ASSERT_NE(birds, nullptr);
  EXPECT_EQ(birds->kind, DoorKind::sliding);
  EXPECT_NEAR(birds->travel.z / 25.4, 15, 1e-9);  // its height and the lap of 1 in
  EXPECT_EQ(birds->parts.size(), 1U);             // one sheet
  ASSERT_EQ(test::count(building, "ramp"), 1);
  // Its head lies under the leaf's stop: 8 in less the lap and the stop's 1-1/2 in.
  EXPECT_NEAR(test::highest(building, "ramp").inches(), 5.5, 1e-6);
}

TEST(ReadOpenings, LeavesSlideAnyWayOrLiftOff) {
  const auto [design, building] =
      read_and_build(coop("<wall side='front'><door name='hatch' left='8in' bottom='6in' width='14in' "
                          "height='16in'><slides to='up'/>"
                          "</door><door name='panel' left='44in' width='16in' height='20in' sheet='1/2 "
                          "plywood'><lifts-off/></door>"
                          "</wall>"));
  const Mover *hatch = mover(building, "hatch"), *panel = mover(building, "panel");
  ASSERT_TRUE(hatch != nullptr && panel != nullptr);
  EXPECT_NEAR(hatch->travel.z / 25.4, 17, 1e-9);
  EXPECT_EQ(panel->kind, DoorKind::lift_off);
  EXPECT_LT(panel->travel.y, 0);  // out of the front wall
  EXPECT_NEAR(panel->travel.z, 0, 1e-9);
}

TEST(ReadOpenings, WhatDoesNotGoTogether) {
  EXPECT_THAT(
      problems_of(
          coop("<wall side='left'><door width='1ft' height='1ft'><slides/>\n<lifts-off/></door></wall>")),
      ElementsAre(
          "f.xml:4: coop/wall/door/lifts-off: a leaf opens one way: expected <slides> or <lifts-off>, "
          "not both; <slides> is in line 3"));
  EXPECT_THAT(
      problems_of(coop("<wall side='left'><window width='1ft' height='1ft' pane='1/4 plywood' "
                       "mesh='1/2 hardware cloth'/></wall>")),
      ElementsAre("f.xml:3: coop/wall/window/@mesh: a window has mesh or a pane: expected one of them, not "
                  "both"));
  EXPECT_THAT(problems_of(coop("<wall side='left'><round-vent left='1in' diameter='6in'/></wall>")),
              ElementsAre(testing::AllOf(HasSubstr("coop/wall/round-vent"), HasSubstr("reaches"))));
  EXPECT_THAT(
      problems_of(coop("<wall side='left'><round-vent width='6in' diameter='6in'/></wall>")),
      ElementsAre(HasSubstr("coop/wall/round-vent/@width: is not known here: expected name, left, bottom, "
                            "diameter, mesh or battens")));
}

TEST(ReadOpenings, TooLittleRoomForBattensOrRampCannotBeBuilt) {
  const auto unbuildable = [](const std::string& inside) {
    const auto read = models::read_design(coop(inside), "f.xml");
    EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
    return test::printed(models::unbuildable(read.design));
  };
  // Battens of 1-1/2 in beside the neighbouring wall's frame of 1-1/2 in.
  EXPECT_THAT(
      unbuildable("<wall side='front'><vent left='1.5in' bottom='20in' width='6in' height='4in'/></wall>"),
      ElementsAre(
          HasSubstr("wall/vent/@left: the opening of front vent, with its battens, is 1 1/2\"; it must "
                    "be at least 3\"")));
  EXPECT_THAT(
      unbuildable("<wall side='front'><bird-door bottom='20in' width='12in' height='14in' ramp='1/2 plywood' "
                  "ramp-length='12in'/></wall>"),
      ElementsAre(HasSubstr("wall/bird-door/@ramp-length: the ramp of front bird door is ")));
}

TEST(ReadWall, FurtherPostsAndRailsStandWhereTheyAreAsked) {
  const auto [design, building] =
      read_and_build(coop("<wall side='back'><extra-post left='10in'/><extra-rail bottom='20in'/></wall>"));
  EXPECT_EQ(test::count(building, "rail"),
            4);  // in pieces between five posts: four of the frame and the one more
  EXPECT_THAT(problems_of(coop("<wall side='back'><extra-post left='71in'/></wall>")),
              testing::ElementsAre(testing::HasSubstr("that is where the wall's end post stands")));
  EXPECT_THAT(problems_of(coop("<wall side='back'><extra-rail bottom='1in'/></wall>")),
              testing::ElementsAre(testing::HasSubstr("the bottom rail lies there")));
}

}  // namespace
