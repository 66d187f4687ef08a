// Outside nests, floor, base, apron, run, litter and site, read from a design file and built.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/grounds.h"
#include "tests/models/read_and_build.h"

namespace {

using models::Design;
using test::coop;
using test::problems_of;
using test::read_and_build;
using testing::ElementsAre;
using testing::HasSubstr;

std::vector<std::string> unbuildable(const std::string& inside) {
  const auto read = models::read_design(coop(inside), "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  return test::printed(models::unbuildable(read.design));
}

TEST(ReadNests, OutsideTheyHaveALidThatFalls) {
  const auto [design, building] = read_and_build(
      coop("<nests place='outside' wall='left' count='2' bottom='16in' depth='12in' height='15in' lip='4in' "
           "lid-pitch='20deg' lid-overhang='2in'/><roof eave-overhang='8in'/>"));
  EXPECT_EQ(test::count(building, "nest end"), 2);
  EXPECT_EQ(test::count(building, "nest divider"), 1);
  ASSERT_EQ(test::count(building, "nest front"), 1);
  // 15 in at the wall, less 12-1/2 in out at 20 degrees.
  for (const models::Mark& mark : building.marks)
    if (mark.name == "nest front") {
      EXPECT_NEAR(geometry::high(mark.body.outline).y / 25.4,
                  15 - 12.5 * std::tan(20 * std::numbers::pi / 180), 1e-6);
    }
}

TEST(ReadNests, AnOutsideLidMustLeaveAFront) {
  EXPECT_THAT(
      unbuildable(
          "<nests place='outside' wall='left' count='1' height='10in' depth='14in' lid-pitch='40deg'/>"),
      testing::Contains(HasSubstr("nests/@height: the height of the nests' front, under the lid, is")));
}

TEST(ReadNests, TheirMouthKeepsClearOfDoors) {
  EXPECT_THAT(unbuildable("<wall side='left'><door left='4in' width='20in' height='3ft'/></wall>"
                          "<nests place='outside' wall='left' count='2'/>"),
              testing::Contains(HasSubstr("the opening of nest mouth, towards left door,")));
}

TEST(ReadFloor, StandsAsHighAsItsPartsSay) {
  const auto [design, building] =
      read_and_build(coop("<floor clear='18in' bearers='2x6' joists='2x4' joist-spacing='16in'/><litter/>"));
  // 18 in clear, bearers of 5-1/2, joists of 3-1/2 and a deck of 1/2 in.
  EXPECT_NEAR(building.ground / 25.4, -27.5, 1e-9);
  EXPECT_NEAR(test::highest(building, "leg").inches(), -27.5 + 18, 1e-6);
  // 72 in at no more than 16: five bays, six joists.
  EXPECT_EQ(test::count(building, "joist"), 6);
  EXPECT_NEAR(design.litter.inches(), 4, 1e-9);
}

TEST(ReadFloor, BoardsInsteadOfSheets) {
  const auto [design, building] = read_and_build(coop("<floor boards='5/4x6'/>"));
  EXPECT_GT(test::count(building, "deck board"), 10);
  EXPECT_EQ(test::count(building, "deck sheet"), 0);
  EXPECT_THAT(
      problems_of(coop("<floor boards='5/4x6' sheet='3/4 plywood'/>")),
      ElementsAre("f.xml:3: coop/floor/@sheet: a deck is of boards or of sheets: expected one of them, not "
                  "both"));
}

TEST(ReadBase, SkidsBlocksAndStone) {
  EXPECT_NEAR(read_and_build(coop("<base kind='skids' skids='4x6'/>")).second.ground / 25.4, -5.5, 1e-9);
  // Under 72 in there are three blocks on either side: at the ends and between them.
  const auto [design, building] = read_and_build(coop("<base kind='blocks'/>"));
  EXPECT_EQ(test::count(building, "block"), 6);
  EXPECT_NEAR(building.ground / 25.4, -7.625, 1e-9);
  // A ring 9-1/2 in wide lies 4 in either side of rails of 1-1/2 in: (80 x 56 - 61 x 37) square inches.
  const auto ring = read_and_build(coop("<base ring-width='9-1/2in'/>")).first;
  EXPECT_NEAR(models::stone_ring(ring).area.mm2 / 645.16, 80 * 56 - 61 * 37, 1e-6);
  EXPECT_THAT(
      problems_of(coop("<floor/>\n<base/>")),
      ElementsAre(
          "f.xml:4: coop/base: a raised floor stands on its own legs: expected <floor> or <base>, not "
          "both; <floor> is in line 3"));
}

TEST(ReadRun, APenWithADoorAndAnApronRoundAll) {
  const auto [design, building] = read_and_build(coop(
      "<run length='8ft' width='44in' height='42in' joins-m2='12.5'/><apron/><roof eave-overhang='4in'/>"));
  EXPECT_NEAR(design.run->existing_area, 12.5, 1e-12);
  EXPECT_TRUE(std::any_of(building.movers.begin(), building.movers.end(),
                          [](const models::Mover& m) { return m.name == "run door"; }));
  // The house's 72 in, slats of 3/4, the run's 96 and 12 in of apron at both ends.
  EXPECT_NEAR(test::box_of(building, "apron mesh").size().x / 25.4, 72 + 0.75 + 96 + 24, 1e-6);
  EXPECT_NEAR(test::box_of(building, "apron mesh").high.z / 25.4, -2, 1e-6);
  EXPECT_THAT(unbuildable("<run length='8ft' width='30in' door-width='28in'/>"),
              ElementsAre(HasSubstr("run/@door-width: the run's door is")));
}

TEST(ReadSite, LoadsAndClimate) {
  const auto read =
      models::read_design(coop("<site snow-kpa='2.4' wind-m-s='45' exposure='D' climate='cold'/>"), "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  ASSERT_TRUE(read.design.site);
  EXPECT_NEAR(read.design.site->snow_kpa, 2.4, 1e-12);
  EXPECT_NEAR(read.design.site->wind_m_s, 45, 1e-12);
  EXPECT_EQ(read.design.site->exposure, 'D');
  EXPECT_EQ(read.design.site->climate, models::Climate::cold);
  EXPECT_THAT(problems_of(coop("<site snow-kpa='50psf'/>")),
              ElementsAre("f.xml:3: coop/site/@snow-kpa: \"50psf\" is no number: expected 0 to 20"));
  EXPECT_THAT(problems_of(coop("<site wind-m-s='140'/>")),
              ElementsAre("f.xml:3: coop/site/@wind-m-s: \"140\" is out of range: expected 0 to 100"));
}

}  // namespace
