// What a saw does to a blank, against numbers worked out by hand and the ones in print.
#include "models/cuts.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace models {
namespace {

using namespace geometry::literals;
using geometry::HalfSpace;
using geometry::Vec3;

constexpr double loose = 5e-4;  // of tables printed to three decimals

// A rafter of depth d lying along x, its top edge far: plumb cuts at both ends and a notch for a rail in the
// near edge, which opens at `at`. The roof climbs to the right by `t`, so that level is the direction
// (cos t, -sin t) and plumb is (sin t, cos t).
Body rafter(double length, double d, double t, double seat, double at) {
  const double climb = d * std::tan(t), heel = seat * std::tan(t);
  const Vec2 open{at, 0};
  const Vec2 corner = open + Vec2{std::sin(t), std::cos(t)} * heel;
  const Vec2 end = corner + Vec2{std::cos(t), -std::sin(t)} * seat;
  return {{{{0, 0}, open, corner, {end.x, 0}, {length - climb, 0}, {length, d}, {climb, d}}, {}},
          38_mm,
          {},
          {},
          {}};
}

double degrees_of_slope(double rise) { return std::atan(rise / 12) * 180 / std::numbers::pi; }

TEST(cuts, of_a_square_stick_are_two_square_ends) {
  const Cuts c = cuts(geometry::stick(600_mm, 89_mm, 38_mm));
  EXPECT_TRUE(c.plain());
  EXPECT_DOUBLE_EQ(c.length.mm(), 600);
  EXPECT_DOUBLE_EQ(c.width.mm(), 89);
  EXPECT_DOUBLE_EQ(c.thickness.mm(), 38);
  EXPECT_DOUBLE_EQ(c.short_point.mm(), 600);
  EXPECT_TRUE(c.left.square());
  EXPECT_TRUE(c.right.square());
}

// Birdsmouth: depth square to the edge n = b sin t, heel h = b tan t, height above plate (d - n) / cos t.
// The formulas are elementary trigonometry (calculated, no publication); the inputs are dressed sizes of
// PS 20-20.
struct Birdsmouth {
  double depth, seat, rise;     // in, in, rise in 12
  double n, heel, above, left;  // in
};
class CutsOfBirdsmouth : public testing::TestWithParam<Birdsmouth> {};

TEST_P(CutsOfBirdsmouth, match_the_table) {
  const Birdsmouth b = GetParam();
  const double t = std::atan(b.rise / 12), inch = 25.4;
  const Cuts c = cuts(rafter(60 * inch, b.depth * inch, t, b.seat * inch, 8 * inch));
  ASSERT_EQ(c.notches.size(), 1u);
  const Notch& notch = c.notches[0];
  EXPECT_EQ(notch.edge, LongEdge::near);
  EXPECT_NEAR(notch.depth.inches(), b.n, loose);
  EXPECT_NEAR(c.width.inches() - notch.depth.inches(), b.left, loose);
  EXPECT_NEAR((c.width - notch.depth).inches() / std::cos(t), b.above, loose);
  ASSERT_EQ(notch.edges.size(), 2u);
  EXPECT_NEAR(notch.edges[0].length.inches(), b.heel, loose);
  EXPECT_NEAR(notch.edges[1].length.inches(), b.seat, loose);
  EXPECT_NEAR(notch.edges[1].to_edge.degrees(), degrees_of_slope(b.rise), 1e-9);
  EXPECT_NEAR(notch.edges[0].from_square().degrees(), degrees_of_slope(b.rise), 1e-9);
  EXPECT_NEAR(notch.left.inches(), 8, 1e-9);
  // The notch takes b / cos t of the edge.
  EXPECT_NEAR((notch.right - notch.left).inches(), b.seat / std::cos(t), 1e-9);
  ASSERT_EQ(notch.corners(c.width).size(), 1u);
  EXPECT_NEAR(notch.corners(c.width)[0].x / inch, 8 + b.heel * std::sin(t), loose);
  EXPECT_NEAR(notch.corners(c.width)[0].y / inch, b.n, loose);
}
INSTANTIATE_TEST_SUITE_P(table, CutsOfBirdsmouth,
                         testing::Values(Birdsmouth{3.5, 3.5, 4, 1.107, 1.167, 2.523, 2.393},
                                         Birdsmouth{3.5, 2.5, 4, 0.791, 0.833, 2.856, 2.709},
                                         Birdsmouth{3.5, 1.5, 4, 0.474, 0.500, 3.189, 3.026},
                                         Birdsmouth{5.5, 3.5, 6, 1.565, 1.750, 4.399, 3.935}));

TEST(cuts, of_a_metric_birdsmouth) {
  // 38 x 89 (UK National Annex to EN 336, from memory), seat 63, 4 in 12; calculated.
  const Cuts c = cuts(rafter(1500, 89, std::atan(4.0 / 12), 63, 200));
  ASSERT_EQ(c.notches.size(), 1u);
  EXPECT_NEAR(c.notches[0].depth.mm(), 19.92, 5e-3);
  EXPECT_NEAR(c.notches[0].edges[0].length.mm(), 21.00, 5e-3);
  EXPECT_NEAR((c.width - c.notches[0].depth).mm() / std::cos(std::atan(4.0 / 12)), 72.81, 5e-3);
}

// Angle of a plumb cut from square, by rise in 12: the arctangent, as framing-square tables print it.
TEST(cuts, plumb_cut_angles_match_the_framing_square) {
  const std::pair<double, double> table[] = {
      {2, 9.462},  {3, 14.036},  {4, 18.435},  {5, 22.620},  {6, 26.565},  {7, 30.256},  {8, 33.690},
      {9, 36.870}, {10, 39.806}, {11, 42.510}, {12, 45.000}, {14, 49.399}, {16, 53.130}, {18, 56.310}};
  for (const auto& [rise, angle] : table) {
    const Cuts c = cuts(rafter(2000, 89, std::atan(rise / 12), 30, 400));
    ASSERT_EQ(c.right.saw_cuts.size(), 1u);
    EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), angle, loose);  // far edge left longer at the ridge
    ASSERT_EQ(c.left.saw_cuts.size(), 1u);
    EXPECT_NEAR(c.left.saw_cuts[0].mitre.degrees(), -angle, loose);  // and shorter at the tail
    EXPECT_DOUBLE_EQ(c.right.saw_cuts[0].bevel.degrees(), 0);
    EXPECT_FALSE(c.right.square());
    EXPECT_FALSE(c.plain());
    ASSERT_EQ(c.right.edges.size(), 1u);
    EXPECT_NEAR(c.right.edges[0].from_square().degrees(), angle, loose);
  }
}

TEST(cuts, a_picture_frame_stile_is_shorter_along_its_inner_edge) {
  const Body stile{{{{0, 0}, {500, 0}, {462, 38}, {38, 38}}, {}}, 19_mm, {}, {}, {}};
  const Cuts c = cuts(stile);
  EXPECT_DOUBLE_EQ(c.length.mm(), 500);
  EXPECT_DOUBLE_EQ(c.near_edge.mm(), 500);
  EXPECT_DOUBLE_EQ(c.far_edge.mm(), 424);
  EXPECT_DOUBLE_EQ(c.short_point.mm(), 424);
  ASSERT_EQ(c.left.saw_cuts.size(), 1u);
  ASSERT_EQ(c.right.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.left.saw_cuts[0].mitre.degrees(), -45, 1e-9);
  EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), -45, 1e-9);
}

TEST(cuts, a_ridge_notch_leaves_one_plumb_cut_and_a_notched_end) {
  // 45 degrees: level is (1, -1), plumb is (1, 1). The plumb cut stops under a ridge board 19 deep that takes
  // 9.5 level from each rafter.
  const double r = std::sqrt(0.5);
  const Vec2 low{1000, 0};
  const Vec2 under = low + Vec2{r, r} * 90, back = under + Vec2{-r, r} * 9.5;
  const Vec2 top = back + Vec2{r, r} * ((89 - back.y) / r);
  const Body body{{{{0, 0}, low, under, back, top, {0, 89}}, {}}, 38_mm, {}, {}, {}};
  const Cuts c = cuts(body);
  EXPECT_TRUE(c.left.square());
  EXPECT_TRUE(c.right.notched);
  ASSERT_EQ(c.right.edges.size(), 3u);
  ASSERT_EQ(c.right.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), 45, 1e-9);
  EXPECT_NEAR(c.right.edges[1].length.mm(), 9.5, 1e-9);
  EXPECT_NEAR(c.right.edges[1].to_edge.degrees(), 45, 1e-9);
  EXPECT_TRUE(c.notches.empty());
}

TEST(cuts, a_tail_cut_plumb_and_level_takes_two_saw_cuts) {
  // The near corner of a square end is cut off level at 30 degrees to the edge.
  const Body body{{{{100, 0}, {900, 0}, {900, 89}, {0, 89}, {0, 57.735026918962575}}, {}}, 38_mm, {}, {}, {}};
  const Cuts c = cuts(body);
  ASSERT_EQ(c.left.saw_cuts.size(), 2u);
  EXPECT_FALSE(c.left.notched);
  EXPECT_NEAR(c.left.saw_cuts[0].mitre.degrees(), 0, 1e-9);
  EXPECT_NEAR(c.left.saw_cuts[1].mitre.degrees(), 60, 1e-9);  // far edge left longer
  EXPECT_NEAR(c.left.edges[1].to_edge.degrees(), 30, 1e-9);
}

TEST(cuts, a_bevel_is_read_off_the_blade) {
  // The right end is cut by a plane that leans by 20 degrees and leaves the lower face longer.
  Body body = geometry::stick(500_mm, 60_mm, 40_mm);
  body.bevels.push_back(
      {{500, 0, 0}, {std::cos(20 * std::numbers::pi / 180), 0, std::sin(20 * std::numbers::pi / 180)}});
  const Cuts c = cuts(body);
  ASSERT_EQ(c.right.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.right.saw_cuts[0].bevel.degrees(), -20, 1e-9);
  EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), 0, 1e-9);
  EXPECT_FALSE(c.right.square());
  EXPECT_FALSE(c.right.notched);
  EXPECT_TRUE(c.left.square());
  EXPECT_NEAR(c.short_point.mm(), 500 - 40 * std::tan(20 * std::numbers::pi / 180), 1e-9);
}

TEST(cuts, of_a_hip_rafter_are_compound) {
  // A plane square to the level direction (1, 1) over a stick that climbs by t: in the stick's axes its
  // normal is (cos t cos 45, -sin t cos 45, sin 45). On the face the cut is off square by t (the plumb cut),
  // the blade leans by 45 degrees: the jack rafter's cheek cut of every framing text.
  const double t = std::atan(5.0 / 12), r = std::sqrt(0.5);
  Body body = geometry::stick(800_mm, 89_mm, 38_mm);
  body.bevels.push_back({{700, 0, 0}, {std::cos(t) * r, -std::sin(t) * r, r}});
  const Cuts c = cuts(body);
  ASSERT_EQ(c.right.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), 22.620, loose);
  EXPECT_NEAR(c.right.saw_cuts[0].bevel.degrees(), -45, 1e-9);
}

TEST(cuts, a_ripped_edge_is_no_end) {
  Body body = geometry::stick(500_mm, 60_mm, 20_mm);
  const double s = std::sin(15 * std::numbers::pi / 180), k = std::cos(15 * std::numbers::pi / 180);
  body.bevels.push_back({{0, 60, 0}, {0, k, s}});
  const Cuts c = cuts(body);
  ASSERT_EQ(c.rips.size(), 1u);
  EXPECT_EQ(c.rips[0].edge, LongEdge::far);
  EXPECT_NEAR(c.rips[0].bevel.degrees(), -15, 1e-9);
  EXPECT_TRUE(c.left.square());
  EXPECT_TRUE(c.right.square());
  EXPECT_FALSE(c.plain());
}

TEST(cuts, notches_are_listed_from_left_to_right) {
  // Two square housings in the far edge, one in the near edge.
  const Body body{{{{0, 0},
                    {100, 0},
                    {100, 20},
                    {140, 20},
                    {140, 0},
                    {600, 0},
                    {600, 90},
                    {500, 90},
                    {500, 75},
                    {460, 75},
                    {460, 90},
                    {80, 90},
                    {80, 60},
                    {42, 60},
                    {42, 90},
                    {0, 90}},
                   {}},
                  38_mm,
                  {},
                  {},
                  {}};
  const Cuts c = cuts(body);
  ASSERT_EQ(c.notches.size(), 3u);
  EXPECT_EQ(c.notches[0].edge, LongEdge::near);
  EXPECT_DOUBLE_EQ(c.notches[0].left.mm(), 100);
  EXPECT_DOUBLE_EQ(c.notches[0].right.mm(), 140);
  EXPECT_DOUBLE_EQ(c.notches[0].depth.mm(), 20);
  EXPECT_EQ(c.notches[1].edge, LongEdge::far);
  EXPECT_DOUBLE_EQ(c.notches[1].left.mm(), 42);
  EXPECT_DOUBLE_EQ(c.notches[1].depth.mm(), 30);
  EXPECT_DOUBLE_EQ(c.notches[2].left.mm(), 460);
  EXPECT_DOUBLE_EQ(c.notches[2].right.mm(), 500);
  EXPECT_DOUBLE_EQ(c.notches[2].depth.mm(), 15);
  for (const Notch& notch : c.notches) {
    ASSERT_EQ(notch.edges.size(), 3u);
    EXPECT_DOUBLE_EQ(notch.edges[0].to_edge.degrees(), 90);
    EXPECT_DOUBLE_EQ(notch.edges[1].to_edge.degrees(), 0);
  }
  EXPECT_TRUE(c.left.square());
  EXPECT_TRUE(c.right.square());
  EXPECT_DOUBLE_EQ(c.near_edge.mm(), 600);
}

TEST(cuts, of_a_triangular_gusset_meet_in_a_point) {
  const Body body{{{{0, 0}, {400, 0}, {200, 200}}, {}}, 12_mm, {}, {}, {}};
  const Cuts c = cuts(body);
  EXPECT_DOUBLE_EQ(c.near_edge.mm(), 400);
  EXPECT_DOUBLE_EQ(c.far_edge.mm(), 0);
  ASSERT_EQ(c.right.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.right.saw_cuts[0].mitre.degrees(), -45, 1e-9);
  ASSERT_EQ(c.left.saw_cuts.size(), 1u);
  EXPECT_NEAR(c.left.saw_cuts[0].mitre.degrees(), -45, 1e-9);
}

TEST(cuts, do_not_depend_on_where_the_outline_starts_or_stands) {
  Body body = rafter(1500, 89, 0.5, 50, 300);
  const Cuts first = cuts(body);
  for (std::size_t turn = 0; turn < body.outline.outer.size(); ++turn) {
    std::rotate(body.outline.outer.begin(), body.outline.outer.begin() + 1, body.outline.outer.end());
    for (Vec2& p : body.outline.outer) p = p + Vec2{64, -32};
    const Cuts again = cuts(body);
    ASSERT_EQ(again.notches.size(), 1u);
    EXPECT_NEAR(again.notches[0].left.mm(), first.notches[0].left.mm(), 1e-9);
    EXPECT_NEAR(again.notches[0].depth.mm(), first.notches[0].depth.mm(), 1e-9);
    EXPECT_NEAR(again.length.mm(), 1500, 1e-9);
  }
}

TEST(cuts, a_hole_keeps_a_panel_from_being_plain) {
  Body body = geometry::stick(600_mm, 400_mm, 12_mm);
  body.outline.holes.push_back({{100, 100}, {100, 200}, {250, 200}, {250, 100}});
  body.bores.push_back({{500, 300}, 20_mm});
  const Cuts c = cuts(body);
  EXPECT_FALSE(c.plain());
  ASSERT_EQ(c.cutouts.size(), 1u);
  ASSERT_EQ(c.bores.size(), 1u);
  EXPECT_TRUE(c.left.square());
}

}  // namespace
}  // namespace models
