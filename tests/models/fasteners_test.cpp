// Screws counted and measured by hand for a few joints. Six diameters of hold: NDS 2018, 12.1.5.6. Twice the thickness,
// two to a crossing: common practice.
#include "models/fasteners.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

FasteningPlan plan_of(const std::string& parts, const std::string& units = "in") {
  const ReadResult read =
      read_design("<coop units='" + units + "'><extra>" + parts + "</extra></coop>", "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  const Building building = build(read.design);
  return fasteners(read.design, building, scene(building));
}

TEST(Fasteners, ABoardAcrossAStickTakesTwoScrewsOfTwiceItsThickness) {
  // A 1x4 (3/4 in) lies flat across a 2x4 on edge: 3/4 + 6 x 0.164 = 1.73 in, the next on sale is 2 in. The crossing is
  // 3-1/2 by 1-1/2 in: two.
  const FasteningPlan plan = plan_of(
      "<stick name='rail' lumber='2x4' length='40in' turn-x='90' y='10in'/>"
      "<stick name='board' lumber='1x4' length='30in' turn-z='90' x='20in' z='3-1/2in'/>");
  ASSERT_EQ(plan.joints.size(), 1U);
  const Fastening& f = plan.joints[0];
  EXPECT_EQ(f.kind, FastenerKind::screw);
  EXPECT_EQ(f.count, 2);
  EXPECT_DOUBLE_EQ(f.length.inches(), 2);
  EXPECT_DOUBLE_EQ(f.penetration.inches(), 1.25);
  EXPECT_FALSE(f.shallow);
  EXPECT_EQ(f.through, 1U);
}

TEST(Fasteners, BoardsSideBySideTakeNone) {
  EXPECT_THAT(plan_of("<stick name='a' lumber='1x4' length='30in'/><stick name='b' lumber='1x4' "
                      "length='30in' y='3-1/2in'/>")
                  .joints,
              testing::IsEmpty());
}

TEST(Fasteners, AStickEndOnAStickIsScrewedThroughTheStick) {
  // 38 x 63 laid flat, end against the 38 mm face of another: 38 + 6 x 4.17 = 63 mm, and twice 38 is 76: 80 mm, two.
  const FasteningPlan plan = plan_of(
      "<stick name='rail' lumber='38x63' length='1000'/><stick name='post' lumber='38x63' length='800' "
      "turn-y='-90' x='500' z='38'/>",
      "mm");
  ASSERT_EQ(plan.joints.size(), 1U);
  EXPECT_EQ(plan.joints[0].count, 2);
  EXPECT_DOUBLE_EQ(plan.joints[0].length.mm(), 80);
  EXPECT_EQ(plan.joints[0].through, 0U);
}

TEST(Fasteners, ThinOnThinIsShortOfHoldAndSaysSo) {
  // 19 on 19 mm: no screw over 35 mm keeps its tip in; 16 mm of hold is less than six diameters, 25 mm.
  const FasteningPlan plan = plan_of(
      "<stick name='a' lumber='19x100' length='1000'/><stick name='b' lumber='19x75' length='400' "
      "turn-z='90' x='500' z='19'/>",
      "mm");
  ASSERT_EQ(plan.joints.size(), 1U);
  EXPECT_DOUBLE_EQ(plan.joints[0].length.mm(), 35);
  EXPECT_TRUE(plan.joints[0].shallow);
}

TEST(Fasteners, MeshIsStapledAlongTheWood) {
  // 600 mm of contact at 60 mm: eleven staples.
  const FasteningPlan plan = plan_of(
      "<stick name='rail' lumber='38x63' length='600'/><panel name='net' mesh='13mm mesh' outline='0,0 600,0 "
      "600,500 0,500' z='38'/>",
      "mm");
  ASSERT_EQ(plan.joints.size(), 1U);
  EXPECT_EQ(plan.joints[0].kind, FastenerKind::staple);
  EXPECT_EQ(plan.joints[0].count, 11);
  ASSERT_EQ(plan.totals.size(), 1U);
  EXPECT_EQ(plan.totals[0].count, 11);
}

TEST(Fasteners, DiametersAreThoseOfTheGauge) {
  // ASME B18.6.1: D = 0.060 + 0.013 x gauge in; number 8 is 0.164 in.
  EXPECT_NEAR(screw_diameter.inches(), 0.060 + 0.013 * 8, 1e-12);
}

}  // namespace
}  // namespace models
