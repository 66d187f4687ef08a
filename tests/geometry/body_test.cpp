#include "geometry/body.h"

#include <gtest/gtest.h>

namespace geometry {
namespace {

using namespace literals;

Body hooked(bool mirrored) {
  const double s = mirrored ? -1 : 1;
  Outline outline{{{0, 0}, {s * 100, 0}, {s * 100, 20}, {s * 30, 20}, {s * 30, 40}, {0, 40}}, {}};
  return {cleaned(outline), 18_mm, {}, {}, {}};
}

TEST(Congruence, AMirroredOutlineIsTheSamePieceTurnedOver) {
  const Congruence found = congruence(hooked(false), hooked(true));
  ASSERT_TRUE(found.congruent);
  // The turned piece's points are the other's: the tip of the hook goes where the other's is.
  const Vec3 tip = found.turned.point({100, 20, 0});
  EXPECT_NEAR(tip.x, -100, 1e-9);
  EXPECT_NEAR(tip.y, 20, 1e-9);
  EXPECT_NEAR(tip.z, 18, 1e-9);
}

TEST(Congruence, AnEndForEndTurnIsFound) {
  Body a = stick(100_mm, 40_mm, 20_mm), b = a;
  a.bevels.push_back({{100, 0, 0}, normalized({1, 0, 1})});
  b.bevels.push_back({{0, 0, 0}, normalized({-1, 0, 1})});
  EXPECT_TRUE(congruence(a, b).congruent);
}

TEST(Congruence, MirrorImagesOfATwistedPieceAreTwoPieces) {
  // A notch on one edge and a blade tilted at the end: left-handed and right-handed.
  Body a = hooked(false), b = hooked(false);
  a.bevels.push_back({{100, 0, 0}, normalized({1, 0, 1})});
  b.bevels.push_back({{100, 0, 18}, normalized({1, 0, -1})});
  EXPECT_FALSE(congruence(a, b).congruent);
}

TEST(Congruence, AHairsBreadthIsNoDifferenceAndAMillimetreIs) {
  EXPECT_TRUE(congruence(stick(100_mm, 40_mm, 20_mm), stick(100.0005_mm, 40_mm, 20_mm)).congruent);
  EXPECT_FALSE(congruence(stick(100_mm, 40_mm, 20_mm), stick(101_mm, 40_mm, 20_mm)).congruent);
}

TEST(Regions, ASlatIsSplitByAnOpening) {
  const Region left = difference({rectangle({0, 0}, {100, 2000})}, {rectangle({-10, 500}, {110, 900})});
  ASSERT_EQ(left.size(), 2U);
  EXPECT_NEAR(area(left[0]).mm2, 100 * 500, 1e-6);
  EXPECT_NEAR(area(left[1]).mm2, 100 * 1100, 1e-6);
}

TEST(Regions, AHoleIsKept) {
  const Region ring = difference({rectangle({0, 0}, {100, 100})}, {rectangle({40, 40}, {60, 60})});
  ASSERT_EQ(ring.size(), 1U);
  ASSERT_EQ(ring[0].holes.size(), 1U);
  EXPECT_LT(signed_area(ring[0].holes[0]), 0);
  EXPECT_NEAR(area(ring).mm2, 9600, 1e-6);
}

TEST(Turn, TakesAPointAroundAnAxis) {
  const Placement p = turn({{10, 0, 0}, {0, 0, 1}}, 90_deg);
  const Vec3 moved = p.point({30, 0, 5});
  EXPECT_NEAR(moved.x, 10, 1e-12);
  EXPECT_NEAR(moved.y, 20, 1e-12);
  EXPECT_NEAR(moved.z, 5, 1e-12);
}

TEST(PlacementInverse, UndoesThePlacement) {
  const Placement p = compose(turn({{1, 2, 3}, normalized({1, 1, 1})}, 33_deg), shift({4, 5, 6}));
  const Vec3 there = compose(p, inverse(p)).point({7, 8, 9});
  EXPECT_NEAR(there.x, 7, 1e-12);
  EXPECT_NEAR(there.y, 8, 1e-12);
  EXPECT_NEAR(there.z, 9, 1e-12);
}

}  // namespace
}  // namespace geometry
