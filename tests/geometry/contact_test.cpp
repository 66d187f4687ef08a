// Flat faces and where they meet, by hand and by the kernel.
#include "geometry/contact.h"

#include <numbers>
#include <random>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <gtest/gtest.h>

#include "geometry/kernel/shape.h"
#include "geometry/near_boxes.h"
#include "geometry/solid.h"

namespace geometry {
namespace {

using namespace literals;
using std::numbers::pi;

double surface(const std::vector<FlatFace>& faces) {
  double sum = 0;
  for (const FlatFace& face : faces) sum += area(face.region).mm2;
  return sum;
}

std::vector<FlatFace> standing(const Body& body, const Placement& place) {
  std::vector<FlatFace> faces;
  for (const FlatFace& face : flat_faces(body)) faces.push_back(placed(face, place));
  return faces;
}

// An L of 100 x 60 with legs 20 wide.
Body angle_piece() {
  return {{{{0, 0}, {100, 0}, {100, 20}, {20, 20}, {20, 60}, {0, 60}}, {}}, 12_mm, {}, {}, {}};
}

TEST(FlatFaces, OfAStickAreSix) {
  const std::vector<FlatFace> faces = flat_faces(stick(500_mm, 63_mm, 38_mm));
  EXPECT_EQ(faces.size(), 6U);
  EXPECT_NEAR(surface(faces), 2 * (500 * 63 + 500 * 38 + 63 * 38), 1e-3);
}

TEST(FlatFaces, WhereTwoPiecesOfOneBodyMeetAreNone) {
  const std::vector<FlatFace> faces = flat_faces(angle_piece());
  EXPECT_EQ(faces.size(), 8U);  // two L-shaped faces and six edges
  EXPECT_NEAR(surface(faces), 2 * (100 * 20 + 20 * 40) + 320 * 12, 1e-3);
}

TEST(FlatFaces, HaveTheSurfaceThatTheKernelMeasures) {
  Body bevelled = stick(400_mm, 89_mm, 38_mm);
  bevelled.bevels.push_back({{400, 0, 0}, normalized({1, 0.4, 0.7})});
  bevelled.bevels.push_back({{0, 89, 38}, normalized({-1, 0.3, 0.2})});
  Body framed{{{{0, 0}, {300, 0}, {300, 200}, {0, 200}}, {{{50, 50}, {50, 150}, {250, 150}, {250, 50}}}},
              9_mm,
              {},
              {},
              {}};
  const Body notched{
      {{{0, 0}, {300, 0}, {320, 60}, {200, 60}, {180, 40}, {160, 60}, {0, 60}}, {}}, 38_mm, {}, {}, {}};
  for (const Body& body : {angle_piece(), bevelled, framed, notched}) {
    GProp_GProps properties;
    BRepGProp::SurfaceProperties(kernel::shape_of(make_solid(body)), properties);
    EXPECT_NEAR(surface(flat_faces(body)), properties.Mass(), 1e-3);
  }
}

TEST(FlatFaces, LoseTheirRoundedEdgesAndTheirBores) {
  Body bar = stick(1000_mm, 63_mm, 38_mm);
  bar.rounding = 10_mm;
  const double ends = 2 * (63 * 38 - (4 - pi) * 100);
  EXPECT_NEAR(surface(flat_faces(bar)), 2 * 1000 * (43 + 18) + ends, 0.1);
  Body bored = stick(100_mm, 40_mm, 20_mm);
  bored.bores.push_back({{30, 20}, 8_mm});
  EXPECT_NEAR(surface(flat_faces(bored)), 2 * (100 * 40 + 100 * 20 + 40 * 20) - 2 * pi * 16, 0.01);
}

TEST(Facing, OfAPostOnARailIsItsSection) {
  const auto rail = standing(stick(1000_mm, 38_mm, 63_mm), {});
  const auto post = standing(stick(500_mm, 38_mm, 63_mm), placement({300, 38, 0}, {0, 1, 0}, {-1, 0, 0}));
  const std::vector<Facing> found = facing(rail, post, 0.001);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NEAR(found[0].area.mm2, 38 * 63, 1e-3);
  EXPECT_NEAR(found[0].plane.z.y, 1, 1e-12);  // out of the rail, into the post
  EXPECT_NEAR(found[0].gap, 0, 1e-9);
}

TEST(Facing, TellsTheGapAndStopsAtTheMostAsked) {
  const auto rail = standing(stick(1000_mm, 38_mm, 63_mm), {});
  const auto post = standing(stick(500_mm, 38_mm, 63_mm), placement({300, 40.5, 0}, {0, 1, 0}, {-1, 0, 0}));
  ASSERT_EQ(facing(rail, post, 3).size(), 1U);
  EXPECT_NEAR(facing(rail, post, 3)[0].gap, 2.5, 1e-9);
  EXPECT_TRUE(facing(rail, post, 2.49).empty());
}

TEST(Facing, SharesOnlyWhatBothFacesHaveInCommon) {
  // Two boards crossing at 30 degrees: a parallelogram of their widths over the sine.
  const auto lower = standing(stick(1000_mm, 100_mm, 20_mm), shift({-500, -50, 0}));
  const double c = std::cos(pi / 6), s = std::sin(pi / 6);
  const auto upper = standing(stick(1000_mm, 80_mm, 20_mm),
                              compose(placement({0, 0, 20}, {c, s, 0}, {-s, c, 0}), shift({-500, -40, 0})));
  const std::vector<Facing> found = facing(lower, upper, 0.001);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NEAR(found[0].area.mm2, 100 * 80 / s, 1e-3);
}

TEST(Facing, IsTheSameHoweverTheTwoAreTurnedTogether) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> any(-pi, pi);
  for (int i = 0; i < 200; ++i) {
    const Axis axis{{any(random), any(random), any(random)},
                    normalized({any(random), any(random), any(random) + 4})};
    const Placement turned = turn(axis, radians(any(random)));
    const auto rail = standing(stick(1000_mm, 38_mm, 63_mm), turned);
    const auto post = standing(stick(500_mm, 38_mm, 63_mm),
                               compose(turned, placement({300, 38, 0}, {0, 1, 0}, {-1, 0, 0})));
    const std::vector<Facing> found = facing(rail, post, 0.001);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_NEAR(found[0].area.mm2, 38 * 63, 1e-3);
  }
}

TEST(Leaning, IsTheLengthOfAnEdgeInTheMidstOfAFace) {
  // A plank whose upper end's arris, 200 long, leans on a wall; and beside the wall's end, only 150 of it.
  const auto wall = standing(stick(1000_mm, 1000_mm, 20_mm), placement({0, 0, 0}, {1, 0, 0}, {0, 0, 1}));
  const double c = std::cos(0.5), s = std::sin(0.5);
  const auto plank_at = [&](double x) {
    return standing(stick(600_mm, 200_mm, 18_mm), placement({x, 0, 400}, {0, c, -s}, {1, 0, 0}));
  };
  EXPECT_NEAR(leaning_length(plank_at(300), wall), 200, 1e-3);
  EXPECT_NEAR(leaning_length(plank_at(-50), wall), 150, 1e-3);
  EXPECT_EQ(leaning_length(plank_at(1200), wall), 0);
}

TEST(Leaning, IsNothingWhereTwoEdgesMeet) {
  const auto a = standing(stick(500_mm, 38_mm, 38_mm), {});
  const auto b = standing(stick(500_mm, 38_mm, 38_mm), shift({0, 38, 38}));
  EXPECT_EQ(leaning_length(a, b), 0);
}

TEST(NearBoxes, AreThoseThatEveryPairTriedFinds) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> place(0, 2000), size(0, 150);
  for (const std::size_t count : {0, 1, 2, 5, 300}) {
    std::vector<Box> boxes(count);
    for (Box& box : boxes) {
      const Vec3 low{place(random), place(random), place(random)};
      box.add(low);
      box.add(low + Vec3{size(random), size(random), 10 * size(random)});
    }
    if (count > 2) boxes[1] = {};  // an empty one
    for (const double margin : {0.0, 20.0}) {
      std::vector<std::pair<std::size_t, std::size_t>> expected;
      for (std::size_t i = 0; i < count; ++i)
        for (std::size_t k = i + 1; k < count; ++k)
          if (near(boxes[i], boxes[k], margin)) expected.emplace_back(i, k);
      EXPECT_EQ(near_pairs(boxes, margin), expected);
    }
  }
}

}  // namespace
}  // namespace geometry
