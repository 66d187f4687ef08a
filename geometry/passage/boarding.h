// Boards side by side, with gaps between them that are too narrow for any ball of interest, seen as one: so that
// the search need not look at every gap of a wall of slats.
#pragma once

#include <span>
#include <vector>

#include "geometry/passage.h"

namespace geometry::passage {

// The hull of some boards that lie flush, in a row.
struct Boarding {
  ConvexPiece hull;
  // Where a ball of the least radius asked for, or a larger one, clears every board, it clears the hull as
  // well, but for this: it dips into the gaps between them no deeper.
  double dip = 0;
};
[[nodiscard]] std::vector<Boarding> boardings(std::span<const Obstacle> obstacles, double least_radius);

}  // namespace geometry::passage
