// Roofs, cladding and trim as a design file asks for them, read and built, and held against what a person would measure.
#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/roof_shape.h"
#include "tests/models/design_text.h"
#include "tests/models/read_and_build.h"

namespace {

using models::Building;
using models::Design;
using models::Side;
using test::coop;
using test::problems_of;
using test::read_and_build;
using testing::ElementsAre;
using testing::HasSubstr;

// 72 by 48 in, 48 in high, framed in 2x2 of 1-1/2 in.
TEST(ReadRoof, AGableWithItsEdgesAndGaps) {
  const auto [design, building] = read_and_build(
      coop("<roof pitch='8:12' tails='square' eave-overhang='8in' gable-overhang='6in' eave-gap='1in' "
           "ridge-gap='1in' mesh='1/4 hardware cloth'><fascia size='1x4'/><barge size='1x6'/>"
           "<corrugated name='ribbed steel' width='28in' cover-width='2ft' length='8ft'/></roof>"));
  EXPECT_EQ(design.roof.tails, models::TailCut::square);
  EXPECT_EQ(design.roof.mesh->name, "1/4 hardware cloth");
  EXPECT_EQ(test::count(building, "fascia"), 2);
  EXPECT_EQ(test::count(building, "barge board"), 4);
  // 48 in and two overhangs of 6 in make 60: three sheets of 24 in on either half.
  EXPECT_EQ(test::count(building, "roof panel"), 6);
  // From past the fascia to an inch short of the centre: 36 + 8 + 3/4 - 1 in, up a slope of 8 in 12.
  EXPECT_NEAR(roof_shape(design.house, design.roof).slope_length() / 25.4, 43.75 * std::sqrt(1 + 4.0 / 9),
              1e-9);
  EXPECT_GE(test::count(building, "vent mesh"), 4);
}

TEST(ReadRoof, ASingleSlopeRaisesOneWall) {
  const std::string roof = "<roof slopes='single' rises-to='back' pitch='4:12'/>";
  const auto [design, building] = read_and_build(coop(roof));
  // Over 48 in less the seat's 1-1/2 in, at 4 in 12: 15-1/2 in more than the front wall's 48.
  EXPECT_NEAR(wall_top(design.house, design.roof, Side::back).inches(), 63.5, 1e-9);
  EXPECT_NEAR(test::highest(building, "top rail").mm() / 25.4, 63.5, 1e-6);
  EXPECT_EQ(test::count(building, "ridge board"), 0);
  // So a door of 55 in fits into the back wall, and not into the front one.
  const auto door = [&](const std::string& side) {
    return problems_of(coop(roof + "<wall side='" + side + "'><door width='2ft' height='55in'/></wall>"));
  };
  EXPECT_THAT(door("back"), testing::IsEmpty());
  EXPECT_THAT(door("front"),
              ElementsAre(HasSubstr("coop/wall/door/@height: the opening is higher than the wall")));
}

TEST(ReadRoof, WhatDoesNotGoTogether) {
  EXPECT_THAT(
      problems_of(coop("<roof eave-gap='1in'/>")),
      ElementsAre("f.xml:3: coop/roof/@mesh: is missing: a gap under the cover is closed with mesh; expected "
                  "a mesh of the stock"));
  EXPECT_THAT(
      problems_of(coop("<roof ridge-gap='1in' mesh='1/2 hardware clth'/>")),
      ElementsAre("f.xml:3: coop/roof/@mesh: \"1/2 hardware clth\" is no mesh of the stock: expected a "
                  "standard size or a <mesh> of <stock>; nearest: \"1/2 hardware cloth\""));
  EXPECT_THAT(problems_of(coop("<roof rises-to='left'/>")),
              ElementsAre("f.xml:3: coop/roof/@rises-to: a gable roof rises to its ridge: expected it with "
                          "slopes=\"single\" only"));
  EXPECT_THAT(
      problems_of(coop("<roof slopes='single' ridge='left-to-right'><tie/></roof>")),
      testing::UnorderedElementsAre(
          HasSubstr("coop/roof/@ridge: a single slope has no ridge: expected it with slopes=\"gable\""),
          HasSubstr("coop/roof/tie: a single slope has single rafters: expected it with slopes=\"gable\"")));
  EXPECT_THAT(
      problems_of(coop("<roof>\n<sheets/>\n<corrugated/></roof>")),
      ElementsAre("f.xml:5: coop/roof/corrugated: a roof has one cover: expected <sheets> or <corrugated>, "
                  "not both; <sheets> is in line 4"));
  EXPECT_THAT(problems_of(coop("<roof><corrugated width='2ft' cover-width='25in'/></roof>")),
              ElementsAre(HasSubstr("coop/roof/corrugated/@cover-width: a sheet covers more than it is wide: "
                                    "expected at most 2'")));
}

TEST(ReadCladding, LappedBoardsOnOneWallSheetsOnTheOthers) {
  const auto [design, building] = read_and_build(
      coop("<cladding kind='sheets' sheet='3/8 plywood' lap='1in'/><roof gable-overhang='3in'/>"
           "<wall side='front'><cladding kind='lapped' slats='1x6'/></wall>"));
  EXPECT_EQ(design.walls[0].cladding.kind, models::CladdingKind::lapped);
  EXPECT_EQ(design.walls[1].cladding.kind, models::CladdingKind::sheets);
  EXPECT_NEAR(design.walls[2].cladding.thickness().inches(), 0.375, 1e-12);
  // 3/4 in boards of 5-1/2 in that show 4-1/2 in lean by a tangent of 1 in 6.
  bool found = false;
  for (const models::Part& part : building.parts)
    if (part.name == "lapped board") {
      EXPECT_NEAR(std::abs(part.placement.z.z), std::sin(std::atan(1.0 / 6)), 1e-9);
      found = true;
    }
  EXPECT_TRUE(found);
}

TEST(ReadCladding, BoardsTooNarrowToLapCannotBeBuilt) {
  const auto unbuildable = [](const std::string& cladding) {
    const auto read = models::read_design(coop(cladding + "<roof gable-overhang='6in'/>"), "f.xml");
    EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
    return test::printed(models::unbuildable(read.design));
  };
  EXPECT_THAT(unbuildable("<cladding kind='lapped' slats='2x2'/>"),
              testing::Each(HasSubstr("are too narrow to lap: they must be at least 4 1/2\" wide")));
  EXPECT_THAT(
      unbuildable("<cladding kind='lapped' slats='1x4' lap='3in'/>"),
      testing::Contains(HasSubstr("the lap of the boards of the front wall is 3\"; it must be at most 2\"")));
}

TEST(ReadHouse, CornerTrimAndADroppingsBoard) {
  const auto [design, building] = read_and_build(
      "<coop units='in'><flock birds='2'/><house width='6ft' depth='5ft' wall-height='5ft' "
      "corner-trim='1x3'/>"
      "<roof gable-overhang='6in' eave-overhang='8in'/>"
      "<roosts count='2' height='3ft' droppings-board='1/2 plywood' first='12in'/></coop>");
  EXPECT_EQ(test::count(building, "corner trim"), 8);  // two at each corner
  EXPECT_EQ(test::count(building, "droppings board"), 1);
}

TEST(ReadStock, AMeshOfTheDesignsOwn) {
  const auto read = models::read_design(coop("<stock><mesh name='fox mesh' opening='22mm' wire='2mm' "
                                             "roll-width='1.2m' roll-length='25m'/></stock>"
                                             "<roof eave-gap='1in' mesh='Fox Mesh'/>"),
                                        "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  ASSERT_TRUE(read.design.roof.mesh);
  EXPECT_NEAR(read.design.roof.mesh->opening.mm(), 22, 1e-9);
  EXPECT_NEAR(read.design.roof.mesh->roll_length.mm(), 25'000, 1e-9);
}

}  // namespace
