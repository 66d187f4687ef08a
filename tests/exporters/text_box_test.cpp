// Boxes of texts against each other and against lines, in cases that one can draw.
#include "exporters/text_box.h"

#include <cmath>

#include <gtest/gtest.h>

namespace exporters {
namespace {

TEST(text_box, level_boxes_overlap_as_rectangles_do) {
  const TextBox a{{0, 0}, {10, 2}};
  EXPECT_TRUE(overlap(a, {{19, 0}, {10, 2}}));
  EXPECT_FALSE(overlap(a, {{20, 0}, {10, 2}}));
  EXPECT_TRUE(overlap(a, {{20.5, 0}, {10, 2}}, 1));
  EXPECT_FALSE(overlap(a, {{0, 4}, {10, 2}}));
}

TEST(text_box, a_turned_box_passes_the_corner_of_a_level_one) {
  // A diamond whose nearest corner stops short of the square's side, and one that reaches in.
  const TextBox square{{0, 0}, {5, 5}};
  const double half_diagonal = 5 * std::sqrt(2.0);
  EXPECT_FALSE(overlap(square, {{5 + half_diagonal + 0.01, 0}, {5, 5}, 45}));
  EXPECT_TRUE(overlap(square, {{5 + half_diagonal - 0.01, 0}, {5, 5}, 45}));
  // Their bounding boxes overlap here, they don't.
  EXPECT_FALSE(overlap(square, {{9, 9}, {5, 5}, 45}));
}

TEST(text_box, turning_is_counter_clockwise_as_one_looks_at_the_page) {
  const TextBox box{{0, 0}, {10, 1}, 90};
  const auto corners = box.corners();
  EXPECT_NEAR(corners[1].y, -10, 1e-9);  // the end of the text points up the page, where y is less
  EXPECT_TRUE(crosses(box, {-5, 8}, {5, 8}));
  EXPECT_FALSE(crosses(box, {-5, 11}, {5, 11}));
}

TEST(text_box, says_which_part_of_a_line_it_covers) {
  const TextBox box{{5, 0}, {1, 1}};
  const Stretch covered = inside(box, {0, 0}, {10, 0});
  EXPECT_NEAR(covered.from, 0.4, 1e-12);
  EXPECT_NEAR(covered.to, 0.6, 1e-12);
  const Stretch wider = inside(box, {0, 0}, {10, 0}, 1);
  EXPECT_NEAR(wider.from, 0.3, 1e-12);
  const Stretch none = inside(box, {0, 1}, {10, 1});  // along its edge
  EXPECT_GE(none.from, none.to);
}

}  // namespace
}  // namespace exporters
