// A mark at true size, to be cut out or pricked through: outline, waste, hook lines, letters.
#pragma once

#include "exporters/drawing.h"
#include "exporters/templates/cut_rows.h"

namespace exporters {

// The long edge that more is left of: what the paper is laid against.
[[nodiscard]] models::LongEdge reference_edge(const models::Cuts& cuts);

// Places along the edge, from the left long point, where a hook line runs square across the stick: both ends of
// both long edges, mouths and corners of notches. Ascending.
[[nodiscard]] std::vector<double> hook_places(const models::Cuts& cuts);

// The blank's lower left corner lies at the origin; the far edge is the upper one.
[[nodiscard]] Drawing pattern(const models::Mark& mark, const models::Cuts& cuts,
                              const std::vector<LetteredCut>& letters, const geometry::LengthStyle& style);

}  // namespace exporters
