// Closing a way that was found, so that the next one shows.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/passage.h"
#include "geometry/passage/barrier.h"
#include "geometry/passage/hold.h"

namespace geometry::passage {

// Adds barriers to the scene that close the way held at `hold`, where balls of radius `level` and less get
// through, with its like: all gaps of that width or less, down to `least_gap`, between the same assemblies.
// `slack` is added all round. Told are the barriers that are new or have grown; none, and the scene unchanged,
// when one of them would leave less than `keep` room at the start.
[[nodiscard]] std::vector<std::uint32_t> close_way(Scene& scene, std::span<const Obstacle> obstacles,
                                                   const Hold& hold, double level, double least_gap,
                                                   double slack, Vec3 start, double keep);

}  // namespace geometry::passage
