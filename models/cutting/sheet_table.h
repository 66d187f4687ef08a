// What the parts of a sheet can be worth at given prices of pieces: Gilmore and Gomory's table of the best guillotine
// cuts when there are as many of each piece as one likes.
#pragma once

#include <cstdint>
#include <vector>

#include "models/cutting/sheet_problem.h"

namespace models::cutting {

class SheetTable {
 public:
  explicit SheetTable(const SheetProblem& problem);

  // Whether the sizes that the table knows are all that matter, so that no sheet's pieces are worth more than it says.
  [[nodiscard]] bool exact() const { return exact_; }

  void fill(const std::vector<double>& worth);  // of each item
  [[nodiscard]] double worth(std::size_t kind) const;
  [[nodiscard]] Block block(std::size_t kind) const;  // of that worth; when it is more than nothing
  [[nodiscard]] std::int64_t steps() const { return steps_; }

 private:
  struct Axis {
    std::vector<Nanometres> points;  // sizes of parts, a kerf included, ascending
    // For each point, pairs of points (the first no larger) that lie within it together.
    std::vector<std::vector<std::pair<int, int>>> splits;
    [[nodiscard]] int at_least(Nanometres size) const;  // the first point
    [[nodiscard]] int at_most(Nanometres size) const;   // the last, or -1
  };
  enum class From : std::uint8_t { nothing, narrower, lower, piece, split_x, split_y };
  struct Cell {
    double worth = 0;
    From from = From::nothing;
    std::int32_t first = 0;  // of the split, or a way
    std::int32_t second = 0;
  };

  static bool add_sums(std::vector<Nanometres>& sums, const std::vector<std::pair<Nanometres, int>>& sizes,
                       Nanometres longest);
  Axis axis(const std::vector<std::pair<Nanometres, int>>& sizes, const std::vector<Nanometres>& rooms);
  [[nodiscard]] const Cell& cell(int i, int j) const {
    return cells_[static_cast<std::size_t>(i) * y_.points.size() + static_cast<std::size_t>(j)];
  }
  [[nodiscard]] Block block(int i, int j) const;

  const SheetProblem& problem_;
  bool exact_ = true;
  std::vector<Block> ways_;  // of all items
  Axis x_, y_;
  std::vector<std::pair<int, int>> rooms_;  // by kind: its point along each axis, or -1
  std::vector<Cell> cells_;
  std::int64_t steps_ = 0;
};

}  // namespace models::cutting
