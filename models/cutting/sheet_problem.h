// From an order of sheets to cover problems, one for each material.
#pragma once

#include <vector>

#include "models/cutting/block.h"
#include "models/cutting/cover.h"
#include "models/cutting/sheets.h"

namespace models::cutting {

struct SheetItem {
  Nanometres x = 0;
  Nanometres y = 0;
  bool may_turn = false;  // and turning makes a difference
};

struct SheetKind {  // what is left of a sheet within its trimmed edges
  Nanometres x = 0;
  Nanometres y = 0;
};

struct SheetProblem {
  CoverProblem cover;
  Nanometres kerf = 0;
  std::vector<SheetItem> items;
  std::vector<std::vector<int>> pieces;  // of the order, by item
  std::vector<SheetKind> kinds;
  std::vector<int> stock;  // of the order, by source
};

// A block of one piece for each way that the item may lie.
[[nodiscard]] std::vector<Block> ways_to_lie(const SheetItem& item, int index);

[[nodiscard]] inline bool holds(const SheetKind& kind, Nanometres x, Nanometres y) {
  return x <= kind.x && y <= kind.y;
}

[[nodiscard]] std::vector<SheetProblem> sheet_problems(const SheetOrder& order, bool by_area);

// A plan to begin with, and the blocks of its patterns: pieces are put one by one where they fit best, in many orders.
struct SheetStart {
  CoverPlan plan;
  std::vector<std::pair<Pattern, Block>> blocks;
};
[[nodiscard]] std::optional<SheetStart> start_sheets(const SheetProblem& problem);

}  // namespace models::cutting
