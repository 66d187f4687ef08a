#include "geometry/placement.h"

namespace geometry {

Placement turn(const Axis& axis, Angle angle) {
  // Rodrigues' rotation formula, applied to the three unit vectors.
  const double c = cos(angle), s = sin(angle);
  const Vec3 k = axis.direction;
  const auto rotated = [&](Vec3 v) { return v * c + cross(k, v) * s + k * (dot(k, v) * (1 - c)); };
  Placement p{{}, rotated({1, 0, 0}), rotated({0, 1, 0}), rotated({0, 0, 1})};
  p.origin = axis.point - p.direction(axis.point);
  return p;
}

}  // namespace geometry
