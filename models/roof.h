// The roof: notched trusses and a ridge board, or the rafters of a single slope; the cover and its edges.
#pragma once

#include "models/assembler.h"
#include "models/roof_shape.h"

namespace models {

void add_roof(Assembler& assembler, const Design& design);

// Boards, sheets or profiled sheets over the rafters, each half an assembly of its own.
void add_cover(Assembler& assembler, const Design& design, const RoofShape& shape);
// Fascia along the tails, barge boards along the gable ends of the cover.
void add_roof_edges(Assembler& assembler, const Design& design, const RoofShape& shape);
// Mesh that closes the gaps left for air at eaves and ridge.
void add_air_gaps(Assembler& assembler, const Design& design, const RoofShape& shape);

// Slope coordinates to the house's: x along the ridge, y up the slope from the cover's lower edge, z away from the
// rafters' upper edges. The left half is the one at the lower u.
[[nodiscard]] Placement slope_plane(const RoofShape& shape, bool right);

// A piece of the cover in slope coordinates. One that reaches the ridge's centre is bevelled to meet its fellow.
[[nodiscard]] Body cover_piece(const RoofShape& shape, geometry::Vec2 low, geometry::Vec2 high,
                               Length thickness);

// An outline drawn in u and z, standing upright across the roof: from v on, as thick as `thickness` (mm).
[[nodiscard]] Placement across_roof(const RoofShape& shape, double v, double thickness);
// The outline turned so that its x runs up the slope (the grain of a rafter), and the placement that turns it back.
[[nodiscard]] geometry::Outline along_slope(geometry::Outline outline, const RoofShape& shape);
[[nodiscard]] Placement slope_turn(const RoofShape& shape);

}  // namespace models
