// Rails that are longer than boards are joined over posts; panels that are longer than sheets over dividers.
#include "models/splices.h"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/building.h"
#include "models/checks.h"
#include "models/cut_plan.h"
#include "models/furniture.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

using testing::ElementsAre;
using testing::Pair;

TEST(PiecesBetween, AsFewAsCanBeAtTheGivenPlaces) {
  EXPECT_THAT(pieces_between(0, 900, 1000, {300, 600}), ElementsAre(Pair(0, 900)));
  EXPECT_THAT(pieces_between(0, 2000, 1000, {300, 600, 900, 1200, 1500, 1800}),
              ElementsAre(Pair(0, 900), Pair(900, 1800), Pair(1800, 2000)));
  // The other row's first joint is one place before.
  EXPECT_THAT(pieces_between(0, 1500, 1000, {300, 600, 900, 1200}, true),
              ElementsAre(Pair(0, 600), Pair(600, 1500)));
}

TEST(PiecesBetween, WhereNoPlaceIsWithinReachAPieceIsTooLong) {
  EXPECT_THAT(pieces_between(0, 3000, 1000, {1500}), ElementsAre(Pair(0, 1500), Pair(1500, 3000)));
}

Design design_of(const std::string& text) {
  const ReadResult read = read_design(text, "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  return read.design;
}

TEST(LongestBoard, IsTheLongestOnSaleWithItsEndsTrimmed) {
  const Lumber two_by_two{"2x2", geometry::inches(1.5), geometry::inches(1.5)};
  EXPECT_DOUBLE_EQ(longest_board(design_of(test::coop("")), two_by_two).inches(), 192 - 0.5);
  const std::string stock = "<sold lumber='2x2' length='8ft'/><sold lumber='2x4' length='10ft'/>";
  EXPECT_DOUBLE_EQ(longest_board(design_of(test::coop("<stock>" + stock + "</stock>")), two_by_two).inches(),
                   119.5);
  EXPECT_DOUBLE_EQ(
      longest_board(design_of(test::coop("<stock><saw rips='no'/>" + stock + "</stock>")), two_by_two)
          .inches(),
      95.5);
}

TEST(Splices, RailsAreJoinedInTheMiddleOfPostsAndStillHeld) {
  // 6.6 m long, of boards of 4.8 m: bottom and top rails of front and back in two, joined over different posts.
  const Design design = design_of(
      "<coop units='mm'><flock birds='1'/><house width='6600' depth='2000' wall-height='1800' "
      "framing='38x63'/><nests wall='back' count='12'/></coop>");
  const Building building = build(design);
  double bottom = 0, top = 0;
  for (const Part& part : building.parts) {
    const double length = geometry::blank(building.marks[part.mark].body).size().x;
    EXPECT_TRUE(part.group != Group::frame || length <= 4790 + 1e-6) << part.name;
    if (part.wall == Side::front && part.name == "bottom rail") bottom += length;
    if (part.wall == Side::front && part.name == "top rail") top += length;
    // The nests' row is 12 x 300 and 13 x 12 mm long, a sheet 2440.
    const bool panel = part.name == "nest floor" || part.name == "nest back" || part.name == "nest lid";
    EXPECT_TRUE(!panel || length <= 2440) << part.name << " " << length;
  }
  int legs = 0;
  for (const Part& part : building.parts) legs += part.name == "nest leg";
  EXPECT_EQ(legs, 2);  // the row of 3,756 mm needs no joint in its ledges
  EXPECT_NEAR(bottom, 6600, 1e-6);
  EXPECT_NEAR(top, 6600, 1e-6);
  for (const Finding& f : check(design, building))
    EXPECT_NE(f.severity, Severity::error) << f.rule << ": " << f.message;
}

TEST(Splices, LedgesOfALongRowAreJoinedOverPostsAndLegs) {
  // 16 boxes of 300 mm and 17 sides of 12 mm are 5,004 mm; boards give 4,790.
  const Design design = design_of(
      "<coop units='mm'><flock birds='1'/><house width='6000' depth='2000' wall-height='1800' "
      "framing='38x63'/>"
      "<nests wall='back' count='16'/></coop>");
  const Building building = build(design);
  double front = 0, lip = 0;
  int legs = 0;
  for (const Part& part : building.parts) {
    const double length = geometry::blank(building.marks[part.mark].body).size().x;
    if (part.group == Group::nest) {
      EXPECT_LE(length, 4790 + 1e-6) << part.name;
    }
    if (part.name == "front ledge") front += length;
    if (part.name == "litter lip") lip += length;
    legs += part.name == "nest leg";
  }
  EXPECT_NEAR(front, 16 * 300 + 17 * 12, 1e-6);
  EXPECT_NEAR(lip, 16 * 300 + 17 * 12, 1e-6);
  EXPECT_EQ(legs, 3);
  for (const Finding& f : check(design, building))
    EXPECT_NE(f.severity, Severity::error) << f.rule << ": " << f.message;
}

TEST(Splices, LevelBoardsMeetOverPosts) {
  // A wall of 6.6 m, clad with level boards of at most 4.8 m, flat and lapped.
  for (const std::string kind : {"kind='slats' slats='19x100'", "kind='lapped' slats='19x150' lap='30'"}) {
    const Design design = design_of(
        "<coop format='1' units='mm'><flock birds='5'/><house width='6600' depth='2000' wall-height='1600'/>"
        "<roof ridge='left-to-right'/>"
        "<cladding run='level' gap='3' " +
        kind + "/></coop>");
    const Building building = build(design);
    const std::vector<double> posts = post_middles(design, Side::front);
    std::vector<double> joints;
    for (std::size_t i = 0; i < building.parts.size(); ++i) {
      const Part& part = building.parts[i];
      if (part.group != Group::cladding || part.wall != Side::front) continue;
      const geometry::Outline& outline = building.mark_of(i).body.outline;
      const double length = geometry::high(outline).x - geometry::low(outline).x;
      EXPECT_LE(length, 4800 - 10 + 1e-6);
      const geometry::Vec3 at = part.placement.point({geometry::low(outline).x, geometry::low(outline).y, 0});
      if (at.x > 1 && at.x < 6599 && length > 2000) joints.push_back(at.x);
    }
    ASSERT_GT(joints.size(), 4U) << kind;
    for (const double x : joints)
      EXPECT_TRUE(std::any_of(posts.begin(), posts.end(), [&](double post) {
        return std::abs(post - x) < 1e-6;
      })) << x;
    std::sort(joints.begin(), joints.end());
    EXPECT_GT(joints.back() - joints.front(), 100) << "not all in one line";
    const CutPlan plan = cut_plan(design, building, scene(building));
    EXPECT_TRUE(plan.problems.empty()) << testing::PrintToString(plan.problems);
    for (const Finding& f : check(design, building)) EXPECT_NE(f.severity, Severity::error) << f.message;
  }
}

}  // namespace
}  // namespace models
