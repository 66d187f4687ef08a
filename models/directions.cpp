#include "models/directions.h"

#include <cmath>

namespace models {

std::string_view direction_word(geometry::Vec3 d) {
  const double x = std::abs(d.x), y = std::abs(d.y), z = std::abs(d.z);
  if (z >= x && z >= y) return d.z > 0 ? "up" : "down";
  if (x >= y) return d.x > 0 ? "right" : "left";
  return d.y > 0 ? "back" : "forward";
}

}  // namespace models
