// Door leaves: frame and slats, hinged within an opening or sliding outside over it.
#pragma once

#include "models/assembler.h"

namespace models {

// The leaf's outline in wall coordinates, closed.
struct LeafSize {
  geometry::Vec2 low, high;
};
[[nodiscard]] LeafSize leaf_size(const Opening& opening);

// How far a sliding leaf has to move to clear its opening.
[[nodiscard]] Length slide_travel(const Opening& opening);
// What a slider takes up along the wall, leaf and guides, from its closed end to its open end; wall
// coordinates.
struct SliderReach {
  Length from, to;
};
[[nodiscard]] SliderReach slider_reach(const Opening& opening);

// Adds the leaf that closes the opening, its guides if it slides, its mover and its view.
void add_leaf(Assembler& assembler, const Design& design, const Wall& wall, const Opening& opening);

}  // namespace models
