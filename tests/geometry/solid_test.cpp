#include "geometry/solid.h"

#include <numbers>

#include <gtest/gtest.h>

#include "geometry/error.h"

namespace geometry {
namespace {

using namespace literals;
using std::numbers::pi;

double mm3(const Solid& solid) { return volume(solid).mm3; }

TEST(Extrude, VolumeIsAreaTimesThickness) {
  const Outline frame{{{0, 0}, {100, 0}, {100, 60}, {0, 60}}, {{{10, 10}, {10, 50}, {90, 50}, {90, 10}}}};
  const Solid solid = extrude(frame, 12_mm);
  EXPECT_TRUE(is_valid(solid));
  EXPECT_NEAR(mm3(solid), (100 * 60 - 80 * 40) * 12, 1e-6);
  const Vec3 centre = centre_of_mass(solid);
  EXPECT_NEAR(centre.x, 50, 1e-9);
  EXPECT_NEAR(centre.y, 30, 1e-9);
  EXPECT_NEAR(centre.z, 6, 1e-9);
}

TEST(Extrude, RefusesAnEmptyOutline) { EXPECT_THROW((void)extrude({}, 10_mm), KernelError); }

TEST(MakeSolid, BevelCutsAPrismOff) {
  Body body = stick(100_mm, 40_mm, 20_mm);
  // A blade tilted 45 degrees: takes a triangle of 20 x 20 off the end, across the whole width.
  body.bevels.push_back({{100, 0, 0}, normalized({1, 0, 1})});
  const Solid solid = make_solid(body);
  EXPECT_TRUE(is_valid(solid));
  EXPECT_NEAR(mm3(solid), 100 * 40 * 20 - 20 * 20 / 2.0 * 40, 1e-6);
}

TEST(MakeSolid, BoreTakesACylinder) {
  Body body = stick(100_mm, 40_mm, 20_mm);
  body.bores.push_back({{30, 20}, 8_mm});
  const Solid solid = make_solid(body);
  EXPECT_TRUE(is_valid(solid));
  EXPECT_NEAR(mm3(solid), 100 * 40 * 20 - pi * 16 * 20, 1e-4);
}

TEST(MakeSolid, RoundingTakesTheFourLongEdges) {
  Body body = stick(500_mm, 38_mm, 38_mm);
  body.rounding = 10_mm;
  const Solid solid = make_solid(body);
  EXPECT_TRUE(is_valid(solid));
  EXPECT_NEAR(mm3(solid), 500 * (38 * 38 - (4 - pi) * 100), 1e-3);
}

TEST(Cut, RefusesToLeaveNothing) {
  EXPECT_THROW((void)cut(make_solid(stick(10_mm, 10_mm, 10_mm)), {{-5, 0, 0}, {1, 0, 0}}), KernelError);
}

TEST(Placed, KeepsTheVolumeAndMovesTheBounds) {
  const Solid solid =
      placed(make_solid(stick(100_mm, 40_mm, 20_mm)), placement({10, 20, 30}, {0, 1, 0}, {0, 0, 1}));
  EXPECT_NEAR(mm3(solid), 80000, 1e-6);
  const Box box = bounds(solid);
  EXPECT_NEAR(box.low.x, 10, 1e-6);
  EXPECT_NEAR(box.high.x, 30, 1e-6);
  EXPECT_NEAR(box.high.y, 120, 1e-6);
  EXPECT_NEAR(box.high.z, 70, 1e-6);
}

TEST(Distance, IsExactBetweenParallelSkewAndContainedSolids) {
  const Solid a = make_solid(stick(100_mm, 40_mm, 20_mm));
  EXPECT_NEAR(distance(a, placed(a, shift({0, 0, 27.5}))).mm(), 7.5, 1e-9);
  EXPECT_NEAR(distance(a, placed(a, shift({103, 44, 0}))).mm(), 5, 1e-9);
  EXPECT_NEAR(distance(a, placed(a, shift({100, 0, 0}))).mm(), 0, 1e-9);
  EXPECT_NEAR(distance(a, placed(make_solid(stick(10_mm, 10_mm, 10_mm)), shift({40, 10, 5}))).mm(), 0, 1e-9);
}

TEST(OverlapOf, MeasuresWhatIsShared) {
  const Solid a = make_solid(stick(100_mm, 40_mm, 20_mm));
  const Overlap found = overlap(a, placed(a, shift({90, 30, 15})));
  EXPECT_NEAR(found.volume.mm3, 10 * 10 * 5, 1e-6);
  EXPECT_NEAR(found.centre.x, 95, 1e-6);
  EXPECT_NEAR(overlap(a, placed(a, shift({100, 0, 0}))).volume.mm3, 0, 1e-6);
}

TEST(Swept, SlideOfABoxIsALongerBox) {
  const Solid swept_box = swept(make_solid(stick(100_mm, 40_mm, 20_mm)), Vec3{250, 0, 0});
  EXPECT_TRUE(is_valid(swept_box));
  EXPECT_NEAR(mm3(swept_box), 350 * 40 * 20, 1e-3);
}

TEST(Swept, QuarterTurnOfALeafAboutItsEdge) {
  // A leaf 600 long, 40 thick, 900 high, turned by 90 degrees about the upright edge at its corner (0, 0),
  // leading with its thickness. Seen from above: the sector of its farthest corner (600, 40) over 90 degrees,
  // with a triangle of half the leaf's own section left at either end.
  const Solid swept_leaf =
      swept(make_solid(stick(600_mm, 40_mm, 900_mm)), Axis{{0, 0, 0}, {0, 0, 1}}, 90_deg);
  EXPECT_TRUE(is_valid(swept_leaf));
  const double expected = pi / 4 * (600.0 * 600 + 40.0 * 40) + 2 * (600 * 40 / 2.0);
  EXPECT_NEAR(mm3(swept_leaf) / 900, expected, expected * 1e-6);
}

TEST(MeshOf, IsClosedAndHasTheSolidsVolume) {
  const Mesh m = mesh(make_solid(stick(100_mm, 40_mm, 20_mm)), 0.1_mm);
  EXPECT_EQ(m.points.size(), 8U);
  EXPECT_EQ(m.triangles.size(), 12U);
  double six_volumes = 0;
  for (const auto& t : m.triangles) six_volumes += dot(m.points[t[0]], cross(m.points[t[1]], m.points[t[2]]));
  EXPECT_NEAR(six_volumes / 6, 80000, 1e-6);
}

}  // namespace
}  // namespace geometry
