// Matrix games: the least that a mixture of rows can hold the worst column to. With barriers as rows and the
// corners of a region as columns this bounds the room anywhere in the region; see docs/passage.md.
#pragma once

#include <array>

namespace geometry::passage {

inline constexpr int most_rows = 12, most_columns = 8;

struct Game {
  int rows = 0, columns = 0;
  std::array<std::array<double, most_columns>, most_rows> entry;  // [row][column]
};

struct Mixture {
  // No mixture of columns gets more than this out of the row mixture: it is computed from the row weights as
  // they are, so it holds whatever rounding did to them.
  double value = 0;
  std::array<double, most_rows> rows{};        // weights, summing to 1: keep the value down
  std::array<double, most_columns> columns{};  // weights, summing to 1: keep it up
};
// rows >= 1.
[[nodiscard]] Mixture solve(const Game& game);

}  // namespace geometry::passage
