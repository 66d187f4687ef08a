// Lines that follow on each other, as one stroke.
#pragma once

#include <utility>
#include <vector>

#include "geometry/vector.h"

namespace exporters {

using geometry::Vec2;

// Lines that start where others end, as polylines: fewer strokes, smaller files. Ends within a hundredth of a
// millimetre are the same.
[[nodiscard]] std::vector<std::vector<Vec2>> polylines(const std::vector<std::pair<Vec2, Vec2>>& lines);

}  // namespace exporters
