// One search: a flood from the inside point that always goes on where the most room may be, until it gets
// outside or is dammed up.
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/passage/barrier.h"

namespace geometry::passage {

// All of these are radii of balls (mm).
struct FloodQuestion {
  Vec3 start;
  Box within;
  double cap = 0;        // proven already: no larger ball gets out; at most the room at the start
  double threshold = 0;  // smaller balls are of no interest
  double slack = 0;  // how much smaller than the bound the ball may be that is led outside: at least this,
  double relative_slack = 0;  // or this part of the bound if that is more
  std::int64_t work_limit = 0;
};

struct FloodResult {
  enum class End { outside, dammed, out_of_work } end = End::out_of_work;
  // Outside, or out of work: no ball of a larger radius gets out. Dammed: nor does one of just this.
  double level = 0;
  std::vector<Vec3> path;  // outside: from the start to the region's surface, with room >= level - slack
  std::int64_t work = 0;   // cells made and sides halved
};

[[nodiscard]] FloodResult flood(const Scene& scene, const FloodQuestion& question);

}  // namespace geometry::passage
