// Twins that differ by a hair, and narrow places of outlines.
#include "geometry/likeness.h"

#include <gtest/gtest.h>

namespace geometry {
namespace {

using namespace literals;

TEST(Unlikeness, IsTheGreatestDifferenceHoweverTheyAreTurned) {
  const Body one = stick(400_mm, 63_mm, 38_mm);
  EXPECT_LE(unlikeness(one, one, 1_mm)->mm(), 1e-3);
  EXPECT_NEAR(unlikeness(one, stick(400.6_mm, 63_mm, 38_mm), 1_mm)->mm(), 0.6, 2e-3);
  EXPECT_FALSE(unlikeness(one, stick(401.2_mm, 63_mm, 38_mm), 1_mm));
  EXPECT_FALSE(unlikeness(one, stick(400_mm, 63_mm, 45_mm), 1_mm));
  // A notch 0.4 mm deeper, and the piece end for end: the notch at the other end.
  const Body notched{{{{0, 0}, {300, 0}, {300, 60}, {40, 60}, {40, 40}, {0, 40}}, {}}, 38_mm, {}, {}, {}};
  const Body turned{
      {{{0, 0}, {300, 0}, {300, 39.6}, {260, 39.6}, {260, 60}, {0, 60}}, {}}, 38_mm, {}, {}, {}};
  EXPECT_NEAR(unlikeness(notched, turned, 1_mm)->mm(), 0.4, 2e-3);
  EXPECT_FALSE(unlikeness(notched, stick(300_mm, 60_mm, 38_mm), 1_mm));  // two corners more
}

TEST(Narrowest, IsTheWidthOfAStickOfAFingerOrOfANeck) {
  EXPECT_NEAR(narrowest(rectangle(400_mm, 63_mm))->width.mm(), 63, 1e-9);
  // A finger 9 wide and 70 long beside a cut.
  const Outline finger{{{0, 0}, {100, 0}, {100, 200}, {50, 200}, {50, 130}, {9, 130}, {9, 200}, {0, 200}},
                       {}};
  EXPECT_NEAR(narrowest(finger)->width.mm(), 9, 1e-9);
  EXPECT_NEAR(narrowest(finger)->place.x, 4.5, 1e-9);
  // A hole 12 from the edge.
  const Outline frame{{{0, 0}, {300, 0}, {300, 200}, {0, 200}},
                      {{{12, 50}, {12, 150}, {250, 150}, {250, 50}}}};
  EXPECT_NEAR(narrowest(frame)->width.mm(), 12, 1e-9);
}

TEST(Narrowest, IsNoTipThatTapers) { EXPECT_FALSE(narrowest({{{0, 0}, {100, 0}, {0, 100}}, {}})); }

}  // namespace
}  // namespace geometry
