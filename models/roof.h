// The roof: notched trusses and a ridge board, or the rafters of a single slope, and the cover.
#pragma once

#include "models/assembler.h"
#include "models/roof_shape.h"

namespace models {

void add_roof(Assembler& assembler, const Design& design);

// The cover of one half in slope coordinates: x along the ridge, y up the slope from the tails' upper edge.
[[nodiscard]] Body cover_piece(const RoofShape& shape, geometry::Vec2 low, geometry::Vec2 high,
                               Length thickness);

}  // namespace models
