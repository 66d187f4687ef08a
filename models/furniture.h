// What stands inside the house: nests on ledges, roosts.
#pragma once

#include "models/assembler.h"

namespace models {

void add_nests(Assembler& assembler, const Design& design);
// Called by add_nests() for nests that hang outside.
void add_outside_nests(Assembler& assembler, const Design& design);
void add_roosts(Assembler& assembler, const Design& design);

// From a side of one box to the same side of the next, along the wall.
[[nodiscard]] Length box_pitch(const Nests& nests);
// Overall length of the row of nests, along its wall.
[[nodiscard]] Length row_length(const Nests& nests);
// From the inside of the wall's frame to the front of the lip.
[[nodiscard]] Length row_depth(const Nests& nests);

// Along a wall, from the post that stands at or before `from` to the one at or after `to`, within the house:
// what a ledge has to reach to be screwed to posts at both ends. Wall coordinates, mm.
struct Reach {
  double from, to;
};
[[nodiscard]] Reach reach_of_posts(const Design& design, Side side, double from, double to);
// Of the wall's full-height posts, ascending; wall coordinates, mm.
[[nodiscard]] std::vector<double> post_middles(const Design& design, Side side);

}  // namespace models
