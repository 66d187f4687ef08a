#include "exporters/sheets/free_space.h"

#include <random>

#include <gtest/gtest.h>

namespace exporters {
namespace {

TEST(free_space, sets_blocks_high_up_and_then_left) {
  FreeSpace free({{0, 0}, {100, 50}});
  EXPECT_EQ(*free.place(60, 20), (Vec2{0, 0}));
  EXPECT_EQ(*free.place(40, 50), (Vec2{60, 0}));
  EXPECT_EQ(*free.place(60, 30), (Vec2{0, 20}));
  EXPECT_FALSE(free.place(1, 1));
}

TEST(free_space, keeps_clear_of_what_is_taken) {
  FreeSpace free({{0, 0}, {100, 50}});
  free.take({{0, 0}, {100, 20}});
  EXPECT_EQ(*free.place(10, 10), (Vec2{0, 20}));
  EXPECT_FALSE(free.place(10, 40));
}

TEST(free_space, never_sets_one_block_on_another) {
  std::mt19937 random(1);
  for (int round = 0; round < 200; ++round) {
    const Space sheet{{20, 10}, {410, 287}};
    FreeSpace free(sheet);
    std::vector<Space> set;
    for (int i = 0; i < 20; ++i) {
      const Vec2 size{20.0 + random() % 150, 20.0 + random() % 120};
      const std::optional<Vec2> at = free.place(size.x, size.y);
      if (!at) continue;
      const Space block{*at, *at + size};
      EXPECT_TRUE(block.low.x >= 20 && block.low.y >= 10 && block.high.x <= 410 && block.high.y <= 287);
      for (const Space& other : set)
        EXPECT_TRUE(block.high.x <= other.low.x || other.high.x <= block.low.x ||
                    block.high.y <= other.low.y || other.high.y <= block.low.y);
      set.push_back(block);
    }
    EXPECT_GT(set.size(), 3U);
  }
}

}  // namespace
}  // namespace exporters
