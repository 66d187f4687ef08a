// Where along its way the ball is held, and by which barriers.
#pragma once

#include <vector>

#include "geometry/passage/barrier.h"

namespace geometry::passage {

struct Hold {
  Vec3 place;
  // The barriers that hold it, with weights that sum to 1: pushed apart by those weights they balance, so the
  // ball can't do better by moving a little.
  std::vector<Barrier::Term> weights;  // hull: the barrier's index
};
// `level`: the radius that gets through. The path has at least one point of no more than level + slack room.
[[nodiscard]] Hold find_hold(const Scene& scene, const std::vector<Vec3>& path, double level, double slack);

}  // namespace geometry::passage
