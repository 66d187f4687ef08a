// The boards of a problem, of which a part may be ripped, with each way of using one as a source of its own: as it is,
// ripped over its whole length, or ripped in part with a rest that holds a piece at least.
#pragma once

#include <map>
#include <vector>

#include "models/cutting/stick_problem.h"

namespace models::cutting {

struct BoardUse {
  int source = 0;     // of the whole problem
  int rip = -1;       // layout; -1: not ripped
  bool part = false;  // else over its whole length
  Stretch crosscut;   // of a part: where it may end, with the crosscut's kerf
  int group = 0;      // of uses among which boards are shared out
};

struct BoardUses {
  // Its items are those of the whole problem; its measures are how many boards of each group are used.
  StickProblem problem;
  std::vector<BoardUse> uses;
};

// The shortest piece of each section that is asked for, as it lies, with a kerf behind it.
[[nodiscard]] std::map<int, Nanometres> shortest_pieces(const StickProblem& problem, Nanometres kerf);

// Where the crosscut of a board may be, with its kerf: neither side of it is too short for a piece, nor the ripped part
// to be ripped. Empty where `from` is behind `to`.
[[nodiscard]] Stretch crosscut_range(const StickProblem& problem, const StickKind& kind, int rip,
                                     const std::map<int, Nanometres>& shortest, const Saw& saw);

// All there are, by source; those of a source are a group.
[[nodiscard]] std::vector<BoardUse> ways_to_use(const StickProblem& whole, const Saw& saw);

// Groups are numbered from 0.
[[nodiscard]] BoardUses board_uses(const StickProblem& whole, std::vector<BoardUse> uses, const Saw& saw);

}  // namespace models::cutting
