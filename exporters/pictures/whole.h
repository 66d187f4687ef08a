// Which parts stand in a picture of the whole.
#pragma once

#include "exporters/pictures/picture.h"

namespace exporters {

// From the front right above: the direction that most pictures are seen from.
inline constexpr geometry::Vec3 front_right_above{0.62, -1, 0.45};

// All that stands above the ground.
[[nodiscard]] std::vector<Shown> outside_parts(const models::Building& building, const DrawnMarks& marks);
// The same without what closes roof and walls, and without the run: cover, cladding, what clads the leaves.
[[nodiscard]] std::vector<Shown> open_parts(const models::Building& building, const DrawnMarks& marks);

}  // namespace exporters
