// Directions in words, as one faces the front of the house.
#pragma once

#include <string_view>

#include "geometry/vector.h"

namespace models {

// "left", "right", "forward", "back", "up" or "down", whichever the direction is nearest to.
[[nodiscard]] std::string_view direction_word(geometry::Vec3 direction);

}  // namespace models
