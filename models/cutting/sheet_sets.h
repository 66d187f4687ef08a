// Every set of pieces that fits one sheet by guillotine cuts, with the blocks that show it.
#pragma once

#include <cstdint>
#include <unordered_map>
#include <vector>

#include "models/cutting/sheet_problem.h"

namespace models::cutting {

// A set is known by its boxes: the blocks of exactly these pieces of which no other is as narrow and as low. The boxes
// of a set come out of those of any two sets that make it up, side by side or one above the other, so all sets are found
// one piece at a time: a set fits only if it still does when any piece is taken out.
class SheetSets {
 public:
  // Stops, incomplete, after so many pairs of boxes were looked at.
  SheetSets(const SheetProblem& problem, std::int64_t most_pairs);

  [[nodiscard]] bool complete() const { return complete_; }
  [[nodiscard]] std::int64_t pairs() const { return pairs_; }
  // When complete: for each kind of sheet, the sets that fit it and that no further piece can be added to.
  [[nodiscard]] std::vector<Pattern> full_patterns() const;
  // How a pattern's pieces lie; it must be one of full_patterns().
  [[nodiscard]] Block block(const Pattern& pattern) const;

 private:
  using Key = std::uint64_t;  // the counts as digits
  struct Box {
    Nanometres x = 0;
    Nanometres y = 0;
    bool single = false;  // a piece
    bool turned = false;
    bool side_by_side = false;
    std::int32_t set[2] = {0, 0};  // and which box of it
    std::int32_t box[2] = {0, 0};
  };
  struct Set {
    Key key = 0;
    std::int32_t last = 0;  // the largest item in it
    double area = 0;        // of its pieces, each with a kerf on two sides
    std::vector<Box> boxes;
  };

  [[nodiscard]] int count(Key key, std::size_t item) const {
    return static_cast<int>(key / digit_[item] % static_cast<Key>(problem_.cover.demand[item] + 1));
  }
  [[nodiscard]] double area(Nanometres x, Nanometres y) const {
    return static_cast<double>(x + problem_.kerf) * static_cast<double>(y + problem_.kerf);
  }
  [[nodiscard]] bool fits_some(Nanometres x, Nanometres y) const;
  [[nodiscard]] bool fits(const Set& set, const SheetKind& kind) const;
  void add_single(std::size_t item);
  void grow(std::size_t from, std::size_t to);
  [[nodiscard]] bool all_parts_fit(Key key) const;
  void combine(Set& set);
  static void keep(std::vector<Box>& boxes, const Box& box);
  [[nodiscard]] Block block(std::int32_t set, std::int32_t box) const;

  const SheetProblem& problem_;
  std::int64_t most_pairs_;
  std::int64_t pairs_ = 0;
  bool complete_ = false;
  double largest_ = 0;      // area of a sheet, likewise
  std::vector<Key> digit_;  // by item
  std::vector<Set> sets_;
  std::unordered_map<Key, std::int32_t> index_;  // looked up only, never walked
};

}  // namespace models::cutting
