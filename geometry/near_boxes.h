// Which of many boxes come near each other, without looking at every pair.
#pragma once

#include <utility>
#include <vector>

#include "geometry/vector.h"

namespace geometry {

// Pairs of indices (first < second, ascending) of boxes that come within `margin` mm of each other along every
// axis. An empty box is near nothing. The work grows as the number of boxes and of pairs found.
[[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const std::vector<Box>& boxes,
                                                                          double margin);

}  // namespace geometry
