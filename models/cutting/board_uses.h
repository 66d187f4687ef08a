// The boards of a problem, of which a part may be ripped, with each way of using one as a source of its own: as it is,
// ripped over its whole length, or ripped in part with a rest that holds a piece at least.
#pragma once

#include <map>
#include <vector>

#include "models/cutting/stick_problem.h"

namespace models::cutting {

struct BoardUses {
  // Its items are those of the whole problem; its measures are how many of each of the whole's sources are used.
  StickProblem problem;
  struct Use {
    int source = 0;     // of the whole problem
    int rip = -1;       // layout; -1: not ripped
    bool part = false;  // else over its whole length
  };
  std::vector<Use> uses;  // by source
};

// The shortest piece of each section that is asked for, as it lies, with a kerf behind it.
[[nodiscard]] std::map<int, Nanometres> shortest_pieces(const StickProblem& problem, Nanometres kerf);

// Where the crosscut of a board may be, with its kerf: neither side of it is too short for a piece, nor the ripped part
// to be ripped. Empty where `from` is behind `to`.
struct CrosscutRange {
  Nanometres from = 0, to = 0;
};
[[nodiscard]] CrosscutRange crosscut_range(const StickProblem& problem, const StickKind& kind, int rip,
                                           const std::map<int, Nanometres>& shortest, const Saw& saw);

[[nodiscard]] BoardUses board_uses(const StickProblem& whole, const Saw& saw);

}  // namespace models::cutting
