// What is cut from one clear stretch of one stick.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "models/cutting/nesting.h"

namespace models::cutting {

struct Load {
  int section = 0;
  std::size_t board = 0;
  std::size_t stick = 0;
  Stretch stretch;
  std::map<Shape, int> pieces;       // how many of each
  std::shared_ptr<Nesting> nesting;  // where ends may meet; else each piece takes its length
};

// Room that pieces take with a kerf after each, and room that there is: the last kerf may fall beyond the end.
[[nodiscard]] inline Nanometres room_of(const Load& load, Nanometres kerf) {
  return load.stretch.to - load.stretch.from + kerf;
}
[[nodiscard]] inline Nanometres taken_in(const Load& load, Nanometres kerf) {
  if (load.nesting) return load.nesting->taken(load.pieces);
  Nanometres taken = 0;
  for (const auto& [shape, count] : load.pieces) taken += count * (shape.length + kerf);
  return taken;
}

// Boards whose sticks are not yet cut, and what is to be cut from them.
struct Layout {
  std::vector<Board> boards;
  std::vector<Load> loads;
};

}  // namespace models::cutting
