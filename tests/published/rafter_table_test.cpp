// The built house's rafters against the framing square's table and worked examples in print.
#include <cmath>

#include <gtest/gtest.h>

#include "models/building.h"
#include "models/cuts.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

// Length of common rafter per foot of run, inches: the first line of the framing square's table. Source: the
// table as stamped on the blade, second-hand copy; 13.42 also in Griffith, "Carpentry"; 13.89 also in
// NAVEDTRA 14044 (Builder); 17.69 also in US Army EN5156. Plumb-cut angle, degrees from a square cut:
// calculated as atan(rise / 12).
struct Row {
  double rise, length_per_foot, plumb;
};
class FramingSquare : public testing::TestWithParam<Row> {};
INSTANTIATE_TEST_SUITE_P(Table, FramingSquare,
                         testing::Values(Row{3, 12.37, 14.036}, Row{4, 12.65, 18.435}, Row{5, 13.00, 22.620},
                                         Row{6, 13.42, 26.565}, Row{7, 13.89, 30.256}, Row{8, 14.42, 33.690},
                                         Row{9, 15.00, 36.870}, Row{10, 15.62, 39.806},
                                         Row{12, 16.97, 45.000}, Row{13, 17.69, 47.291},
                                         Row{16, 20.00, 53.130}, Row{18, 21.63, 56.310}));

const Part& rafter_of(const Building& building) {
  for (const Part& part : building.parts)
    if (part.name == "rafter") return part;
  throw std::out_of_range("rafter");
}

// From the outside of the plate to the centre of the ridge, along the lower edge: the notch opens at the heel
// on its tail side, and the lower edge ends where the rafters meet. The ridge is the end farther from the
// notch.
double line_length(const Body& body) {
  const Cuts c = cuts(body);
  const double y = c.notches.at(0).edge == LongEdge::near ? 0 : c.width.mm();
  double first = INFINITY, last = -INFINITY;
  for (const geometry::Vec2 p : body.outline.outer)
    if (std::abs(p.y - y) < 1e-6) first = std::min(first, p.x), last = std::max(last, p.x);
  return std::max(last - c.notches[0].left.mm(), c.notches[0].right.mm() - first);
}

TEST_P(FramingSquare, GivesTheBuiltRaftersLineLength) {
  const Building building = build(test_support::sample_design(GetParam().rise));
  const double line = line_length(building.marks[rafter_of(building).mark].body);  // over a run of 3 ft
  EXPECT_NEAR(line / 25.4 / 3, GetParam().length_per_foot, 0.0051);
}

TEST_P(FramingSquare, GivesTheBuiltRaftersPlumbCutAndSeat) {
  const Building building = build(test_support::sample_design(GetParam().rise));
  const Cuts c = cuts(building.marks[rafter_of(building).mark].body);
  int plumb = 0;
  for (const End* end : {&c.left, &c.right})
    for (const CutEdge& edge : end->edges)
      if (std::abs(edge.from_square().degrees() - GetParam().plumb) < 0.001) ++plumb;
  EXPECT_GE(plumb, 2);  // at the tail and at the ridge
  ASSERT_EQ(c.notches[0].edges.size(), 2U);
  bool seat = false, heel = false;
  for (const CutEdge& edge : c.notches[0].edges) {
    // The seat lies 90 - plumb from square, 1.5 in long: the dressed thickness of a nominal 2 (PS 20-20); the
    // heel is plumb, seat x rise / 12 long.
    if (std::abs(edge.length.inches() - 1.5) < 1e-6 &&
        std::abs(edge.from_square().degrees() - (90 - GetParam().plumb)) < 0.001)
      seat = true;
    if (std::abs(edge.length.inches() - 1.5 * GetParam().rise / 12) < 1e-6 &&
        std::abs(edge.from_square().degrees() - GetParam().plumb) < 0.001)
      heel = true;
  }
  EXPECT_TRUE(seat);
  EXPECT_TRUE(heel);
}

TEST(WorkedExample, NavyBuilderRiseSevenOverSixteenFeet) {
  // NAVEDTRA 14044, fig. 2-17 (second-hand copy): rise 7, span 16 ft, so run 8 ft: 111.12 in, set out as 9 ft
  // 3-1/8 in.
  Design design = test_support::sample_design(7);
  design.house.width = geometry::feet(16);
  const Building building = build(design);
  const double line = line_length(building.marks[rafter_of(building).mark].body);
  EXPECT_EQ(geometry::print_length(geometry::mm(line), {geometry::Units::in, 16}), "9'-3 1/8\"");
}

}  // namespace
}  // namespace models
