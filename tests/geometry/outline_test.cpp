// Flat areas taken from each other, where edges all but touch.
#include "geometry/outline.h"

#include <gtest/gtest.h>

namespace geometry {
namespace {

TEST(Difference, LosesNoHoleThatAllButTouchesItsEdge) {
  // A gable less its level boards leaves the gaps between them, and along the slopes what rounding to a nanometre leaves:
  // rings, some of them, whose holes lie against their outsides.
  for (int rise = 200; rise < 1200; rise += 7) {
    const double length = 953.7 + rise * 0.013, peak = 400.0 + rise;
    const Region gable{{{{-22, 0}, {length, 0}, {length, 400}, {length / 2 - 11, peak}, {-22, 400}}, {}}};
    Region boards;
    double covered = 0;
    for (double y = 0; y < peak; y += 156.35)
      for (const Outline& board : intersection(gable, {rectangle({-22, y}, {length, y + 150})})) {
        covered += area(board).mm2;
        boards.push_back(board);
      }
    EXPECT_NEAR(area(difference(gable, boards)).mm2, area(gable).mm2 - covered, 0.01) << rise;
  }
}

TEST(Difference, KeepsAnIslandInAHole) {
  // 100 x 100 less 60 x 60, with 20 x 20 in the middle of that.
  const Region ring = difference({rectangle({0, 0}, {100, 100})}, {rectangle({20, 20}, {80, 80})});
  const Region both = united(ring, {rectangle({40, 40}, {60, 60})});
  ASSERT_EQ(both.size(), 2U);
  EXPECT_NEAR(area(both).mm2, 100 * 100 - 60 * 60 + 20 * 20, 1e-6);
}

}  // namespace
}  // namespace geometry
