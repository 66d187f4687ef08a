// Where each wall stands.
#pragma once

#include "geometry/placement.h"
#include "models/design.h"

namespace models {

// Takes a wall's own coordinates to the house's: x to the right as one faces the wall from outside, y up, z
// towards the viewer. The origin is the house's corner at the wall's left, on the ground, at the frame's
// outer face; the frame lies behind it, from z = -thickness to 0.
[[nodiscard]] geometry::Placement wall_plane(const House& house, Side side);
// From corner to corner of the house, along the wall.
[[nodiscard]] Length wall_length(const House& house, Side side);
// Whether the wall's frame reaches the corners; else it stands between its neighbours.
[[nodiscard]] bool runs_through(const House& house, Side side);
// Where the wall's frame starts and ends along the wall.
struct Extent {
  Length from, to;
};
[[nodiscard]] Extent frame_extent(const House& house, Side side);

}  // namespace models
