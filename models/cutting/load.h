// What is cut from one clear stretch of one stick.
#pragma once

#include <map>
#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

struct Load {
  int section = 0;
  std::size_t board = 0;
  std::size_t stick = 0;
  Stretch stretch;
  std::map<Nanometres, int> pieces;  // how many of each length
};

// Room that pieces take with a kerf after each, and room that there is: the last kerf may fall beyond the end.
[[nodiscard]] inline Nanometres room_of(const Load& load, Nanometres kerf) {
  return load.stretch.to - load.stretch.from + kerf;
}
[[nodiscard]] inline Nanometres taken_in(const Load& load, Nanometres kerf) {
  Nanometres taken = 0;
  for (const auto& [length, count] : load.pieces) taken += count * (length + kerf);
  return taken;
}

// Boards whose sticks are not yet cut, and what is to be cut from them.
struct Layout {
  std::vector<Board> boards;
  std::vector<Load> loads;
};

}  // namespace models::cutting
