// What a truss sheet says of its rafters, against what framing handbooks print.
#include "exporters/sheets/rafter_figures.h"

#include <cmath>

#include <gtest/gtest.h>

#include "support/random_frame.h"

namespace exporters {
namespace {

constexpr double inch = 25.4;

RafterFigures figures(double rise, double span, double overhang, double seat, std::size_t part = 0) {
  const models::Building building = support::truss(rise, span, overhang, seat);
  const auto found = rafter_figures(building, building.frames[0], part);
  EXPECT_TRUE(found.has_value());
  return found.value_or(RafterFigures{});
}

TEST(rafter_figures, of_handbook_roofs) {
  // Line length = run x length per foot of run, from the rail's outer face to the ridge's centre. Without an
  // overhang that is the upper edge, cut plumb at both ends.
  struct Example {
    double rise, span_in, length_in;
    const char* source;
  };
  const Example examples[] = {
      {7, 192, 111.14, "NAVEDTRA 14044, Navy Builder, fig. 2-17: rise 7, span 16 ft: 9 ft 3-1/8 in"},
      {6, 300, 167.75, "Griffith, Carpentry: span 25 ft, quarter pitch: 12.5 x 13.42 in"},
      {13, 248, 182.81, "US Army EN5156: run 10 ft 4 in at 13 in 12: 15 ft 3 in"},
  };
  for (const Example& e : examples) {
    const RafterFigures f = figures(e.rise, e.span_in * inch, 0, 38);
    EXPECT_NEAR(f.upper_edge.inches(), e.length_in, 0.06) << e.source;
    EXPECT_NEAR(f.run.inches(), e.span_in / 2, 1e-6);
    EXPECT_NEAR(f.rise.inches(), e.span_in / 24 * e.rise, 1e-6);
  }
}

TEST(rafter_figures, of_the_birdsmouth) {
  // 38 x 89, seat 63, 4 in 12: depth square to the edge 19.92, heel 21.00 (calculated).
  for (const std::size_t part : {0u, 1u}) {
    const RafterFigures f = figures(4, 1800, 150, 63, part);
    EXPECT_NEAR(f.seat.mm(), 63, 1e-6);
    EXPECT_NEAR(f.heel.mm(), 21.00, 5e-3);
    EXPECT_NEAR(f.depth.mm(), 19.92, 5e-3);
    EXPECT_NEAR(f.overhang.mm(), 150, 1e-6);
    EXPECT_NEAR(f.run.mm(), 900, 1e-6);
    EXPECT_NEAR(f.pitch.degrees(), 18.435, 5e-4);
    EXPECT_NEAR(f.plumb_cut.degrees(), 18.435, 5e-4);
    EXPECT_NEAR(f.upper_edge.mm(), 1050 * std::sqrt(10.0) / 3, 1e-6);
    EXPECT_NEAR(f.outer, part == 0 ? 150 : 1950, 1e-6);
    EXPECT_NEAR(f.ridge, 1050, 1e-6);
  }
}

TEST(rafter_figures, a_level_stick_has_none) {
  const models::Building building = support::door_frame();
  for (std::size_t part = 0; part < building.parts.size(); ++part)
    EXPECT_FALSE(rafter_figures(building, building.frames[0], part).has_value());
}

}  // namespace
}  // namespace exporters
