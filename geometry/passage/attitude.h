// How a scene is best turned for the search, whose cells are square to the axes.
#pragma once

#include <span>

#include "geometry/passage.h"

namespace geometry::passage {

// The rotation that brings as much of the obstacles' faces as it can square to an axis: a wall that stands
// askew has to be filled with cells as small as it is thick. None at all when that
// is not much more than what stands so already. What reaches out of `within`, as the ground does, does not count.
[[nodiscard]] Placement squared_up(std::span<const Obstacle> obstacles, const Box& within);

}  // namespace geometry::passage
