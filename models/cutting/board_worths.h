// What boards are worth at most and all pieces together, known from relaxations that were priced to the end: where the
// boards of a plan are worth less than the pieces there is no such plan.
#pragma once

#include <cstdint>
#include <list>
#include <vector>

#include "models/cutting/board_uses.h"

namespace models::cutting {

// How many boards are used in each way at least and at most.
struct UseBounds {
  std::vector<std::int64_t> least, most;
};

class BoardWorths {
 public:
  explicit BoardWorths(const std::vector<BoardUse>& uses);

  // Worths are whole numbers, by use.
  void add(const std::vector<double>& of_boards, double of_pieces);
  // Whether boards used within the bounds, no more of each group than `counts`, are known to lack worth.
  [[nodiscard]] bool lack(const UseBounds& bounds, const std::vector<int>& counts);

 private:
  struct Worths {
    std::vector<std::int64_t> board;  // by use
    std::int64_t pieces = 0;
    std::vector<std::size_t> order;  // of uses: by group, the worthiest first
  };
  [[nodiscard]] bool lack(const Worths& worths, const UseBounds& bounds,
                          const std::vector<int>& counts) const;

  std::vector<std::size_t> group_;  // by use
  std::list<Worths> known_;         // those that told something last come first
};

}  // namespace models::cutting
