// Diagonals and what racking a leaf bears.
#include "models/squareness.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::feet;
using geometry::inches;
using geometry::mm;

TEST(Squareness, DiagonalsOfTheSamplesFrames) {
  const std::vector<Squared> all = squared(build(test_support::sample_design()));
  // Front frame 72 x 60 in, its door 24 x 44; side frames 57 x 60.
  ASSERT_GE(all.size(), 5U);
  EXPECT_EQ(all[0].name, "front wall frame");
  EXPECT_NEAR(all[0].diagonal.inches(), std::sqrt(72.0 * 72 + 60 * 60), 1e-9);
  EXPECT_EQ(all[1].name, "door");
  EXPECT_NEAR(all[1].diagonal.inches(), std::sqrt(24.0 * 24 + 44 * 44), 1e-9);
  for (const Squared& s : all) EXPECT_NE(s.name, "truss");
}

TEST(Squareness, RackingAgreesWithALeafTurnedInALeaningOpening) {
  // An opening of 600 x 1000 with a reveal of 4: the leaf follows its hinged jamb, which leans by an angle e, until its
  // top far corner has risen by the reveal; then the diagonals of the opening's parallelogram are measured.
  const double w = 600, h = 1000, reveal = 4, e = reveal / w;
  const double lean = h * std::sin(e), upright = h * std::cos(e);
  const double difference = std::hypot(w + lean, upright) - std::hypot(w - lean, upright);
  EXPECT_NEAR(allowed_racking(mm(h), mm(w), mm(reveal)).mm(), difference, 0.01);
  EXPECT_NEAR(reveal_for_racking(mm(h), mm(w), mm(difference)).mm(), reveal, 0.01);
}

TEST(Squareness, DiagonalOfASheetIsTheHandbooks) {
  // 8 ft by 4 ft: 107.331 in; from memory, as carpentry handbooks print it.
  Building building;
  building.frames.push_back({"sheet", "wall", {}, feet(8), feet(4), {}, {}});
  EXPECT_NEAR(squared(building)[0].diagonal.inches(), 107.331, 5e-4);
}

}  // namespace
}  // namespace models
