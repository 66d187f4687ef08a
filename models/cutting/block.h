// Pieces of a sheet put together by guillotine cuts: a block is one piece, or two blocks side by side or one above the
// other with a kerf between them.
#pragma once

#include <optional>
#include <vector>

#include "models/cutting/cover.h"
#include "models/cutting/sheets.h"

namespace models::cutting {

struct Block {
  Nanometres x = 0;  // the least box around it
  Nanometres y = 0;
  int item = -1;  // of a single piece
  bool turned = false;
  bool side_by_side = false;  // else the second part lies above the first
  std::vector<Block> parts;   // two, or none
};

[[nodiscard]] Block join(Block first, Block second, bool side_by_side, Nanometres kerf);

// The pieces of a block, by item.
[[nodiscard]] std::vector<ItemCount> pieces_of(const Block& block);

// The block with no more of each item than `left` has, and as little room as that asks for; takes them off `left`.
// Nothing when no piece remains.
[[nodiscard]] std::optional<Block> take(const Block& block, std::vector<int>& left, Nanometres kerf);

// The cuts and leftovers when the block is cut from a rectangle that holds it. Pieces are numbered by item.
void cut_from(const Rectangle& room, const Block& block, Nanometres kerf, Sheet& sheet);

}  // namespace models::cutting
