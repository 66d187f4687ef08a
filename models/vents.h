// Openings without a leaf: mesh or a pane on the inside of the frame, held by battens.
#pragma once

#include "models/assembler.h"

namespace models {

// All holes of the wall, by their left edges: the design's openings, and where outside nests open into the house.
[[nodiscard]] std::vector<Opening> wall_openings(const Design& design, const Wall& wall);

void add_vent(Assembler& assembler, const Design& design, const Wall& wall, const Opening& opening);

// The opening's outline in wall coordinates; a round one as a polygon that lies outside its circle by less than
// 0.3 mm on a vent of 250 mm (a jigsaw is not so exact).
[[nodiscard]] geometry::Outline opening_outline(const Opening& opening);

}  // namespace models
