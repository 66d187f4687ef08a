// Plain triangles, free of any library's types.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "geometry/vector.h"

namespace geometry {

// A closed surface. Triangles index `points`, counter-clockwise as seen from outside; neighbours share
// points.
struct Mesh {
  std::vector<Vec3> points;
  std::vector<std::array<std::uint32_t, 3>> triangles;
};

}  // namespace geometry
