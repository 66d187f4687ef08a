// Parts placed by hand, read from a design file, alone or beside a house.
#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/outline_text.h"
#include "tests/models/read_and_build.h"

namespace {

using test::coop;
using test::problems_of;
using test::read_and_build;
using testing::ElementsAre;
using testing::HasSubstr;

std::string extra(const std::string& parts) {
  return "<coop units='mm'>\n<extra>" + parts + "</extra></coop>";
}

TEST(ReadExtra, ADesignMayBeOfExtraPartsAlone) {
  const auto [design, building] = read_and_build(
      extra("<stick name='brace' lumber='38x63' length='600' left-mitre='45deg' right-mitre='-45' z='100'/>"
            "<panel name='gusset' sheet='12mm plywood' outline='0,0 300,0 0,200' x='1m' turn-x='90deg'/>"));
  EXPECT_FALSE(design.has_house);
  ASSERT_EQ(building.parts.size(), 2U);
  for (const models::Part& part : building.parts) {
    const models::Mark& mark = building.marks[part.mark];
    if (part.name == "brace")
      // Two mitres at 45 degrees take a triangle of 63 by 63 off either end.
      EXPECT_NEAR(geometry::volume(mark.solid).mm3, (600.0 - 63) * 63 * 38, 1e-3);
    else
      EXPECT_NEAR(geometry::volume(mark.solid).mm3, 300.0 * 200 / 2 * 12, 1e-3);
  }
  // Stood up about x, the gusset's 200 mm reach upwards and its thickness to the front.
  const geometry::Box gusset = test::box_of(building, "gusset");
  EXPECT_NEAR(gusset.low.x, 1000, 1e-6);
  EXPECT_NEAR(gusset.high.z, 200, 1e-6);
  EXPECT_NEAR(gusset.low.y, -12, 1e-6);
}

TEST(ReadExtra, TurnsFollowOneAnother) {
  const auto [design, building] = read_and_build(
      extra("<stick name='post' lumber='38x63' length='500' turn-y='-90' turn-z='90' y='2m'/>"));
  // About y by -90 degrees the stick's length points up; its width then turns from y to -x.
  const geometry::Box post = test::box_of(building, "post");
  EXPECT_NEAR(post.high.z - post.low.z, 500, 1e-6);
  EXPECT_NEAR(post.high.x - post.low.x, 63, 1e-6);
  EXPECT_NEAR(post.high.y - post.low.y, 38, 1e-6);
  EXPECT_NEAR(post.low.x, -63, 1e-6);
}

TEST(ReadExtra, BesideAHouse) {
  const auto [design, building] =
      read_and_build(coop("<extra><stick name='perch' lumber='2x2' length='4ft' y='-6ft'/></extra>"));
  EXPECT_TRUE(design.has_house);
  EXPECT_EQ(test::count(building, "perch"), 1);
  EXPECT_GT(test::count(building, "top rail"), 0);
}

TEST(ReadExtra, OtherPartsStillNeedAHouse) {
  EXPECT_THAT(problems_of("<coop units='mm'>\n<extra/><roof/></coop>"),
              ElementsAre("f.xml:1: coop/flock: is missing: every design has one",
                          "f.xml:1: coop/house: is missing: every design has one"));
}

TEST(ReadExtra, WhatIsNoOutline) {
  const auto outline = [](const std::string& points) {
    return problems_of(extra("<panel name='p' outline='" + points + "'/>"));
  };
  const std::string path = "f.xml:2: coop/extra/panel/@outline: ";
  const std::string expected =
      ": expected 3 to 100 points, each x,y, going once round a panel, as in 0,0 300,0 300,200";
  EXPECT_THAT(outline("0,0 300,0"), ElementsAre(path + "there are 2 points" + expected));
  EXPECT_THAT(outline("0,0 300,0 300;200"), ElementsAre(path + "\"300;200\" is no point" + expected));
  EXPECT_THAT(outline("0,0 100,0 200,0"), ElementsAre(path + "the points enclose no area" + expected));
  EXPECT_THAT(outline("0,0 300,300 300,0 0,200"), ElementsAre(path + "its sides cross or touch" + expected));
  EXPECT_THAT(outline("0,0 11m,0 0,200"),
              ElementsAre(path + "\"11m,0\" lies more than 10 m from the origin" + expected));
  std::string many;
  for (int i = 0; i < 200'000; ++i) many += "0,0 ";
  EXPECT_THAT(outline(many), ElementsAre(path + "there are more than 100 points" + expected));
}

TEST(ReadExtra, AStickMustOutlastItsEnds) {
  const auto read = models::read_design(
      extra("<stick name='wedge' lumber='38x63' length='100' left-mitre='45' right-mitre='45'/>"), "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  // Each mitre takes 63 mm off the same edge.
  EXPECT_THAT(test::printed(models::unbuildable(read.design)),
              ElementsAre(HasSubstr(
                  "extra/stick/@length: the length of wedge with such ends is 100 mm; it must be at "
                  "least 127 mm")));
}

TEST(ReadExtra, Minus) {
  EXPECT_THAT(
      problems_of(extra("<stick name='a' lumber='38x63' length='500' left-mitre='-80'/>")),
      ElementsAre("f.xml:2: coop/extra/stick/@left-mitre: \"-80\" is out of range: expected -75deg to 75deg; "
                  "nearest: -75deg"));
  EXPECT_THAT(problems_of(extra("<stick name='a' lumber='38x63' length='500' turn-x='--5'/>")),
              ElementsAre(HasSubstr("coop/extra/stick/@turn-x: \"--5\" is no angle")));
}

}  // namespace
