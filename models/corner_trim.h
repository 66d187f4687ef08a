// Boards that cover the cladding's edges at the corners.
#pragma once

#include "models/assembler.h"

namespace models {

// How far the boards reach along a wall's face from the house's corners, at its left and right; less than nothing where
// they end before the corner.
struct TrimReach {
  Length left, right;
};
[[nodiscard]] TrimReach trim_reach(const Design& design, Side side);

// Along a wall of lapped boards: how far from the corners the strips reach that the boards butt against. Half a post; where
// the trim reaches hardly farther, as far as that, which then lies flat on them.
[[nodiscard]] TrimReach corner_strips(const Design& design, Side side);

// Two at each corner: the one under the gable laps over the edge of the other.
void add_corner_trim(Assembler& assembler, const Design& design);

}  // namespace models
