// Where a body stands: a rotation and a shift (never a mirror image, never a scale).
#pragma once

#include "geometry/units.h"
#include "geometry/vector.h"

namespace geometry {

// Maps local coordinates to the parent's. x, y and z are the images of the local axes: unit vectors, square
// to each other, right-handed.
struct Placement {
  Vec3 origin{0, 0, 0};
  Vec3 x{1, 0, 0};
  Vec3 y{0, 1, 0};
  Vec3 z{0, 0, 1};

  bool operator==(const Placement&) const = default;
  [[nodiscard]] constexpr Vec3 direction(Vec3 d) const { return x * d.x + y * d.y + z * d.z; }
  [[nodiscard]] constexpr Vec3 point(Vec3 p) const { return origin + direction(p); }
  [[nodiscard]] constexpr Vec3 inverse_direction(Vec3 d) const { return {dot(x, d), dot(y, d), dot(z, d)}; }
  [[nodiscard]] constexpr Vec3 inverse_point(Vec3 p) const { return inverse_direction(p - origin); }
};

// First `inner`, then `outer`.
[[nodiscard]] constexpr Placement compose(const Placement& outer, const Placement& inner) {
  return {outer.point(inner.origin), outer.direction(inner.x), outer.direction(inner.y),
          outer.direction(inner.z)};
}
[[nodiscard]] constexpr Placement inverse(const Placement& p) {
  return {
      p.inverse_direction(-p.origin), {p.x.x, p.y.x, p.z.x}, {p.x.y, p.y.y, p.z.y}, {p.x.z, p.y.z, p.z.z}};
}
// The placement with the given origin, x axis and y axis (both unit, square to each other).
[[nodiscard]] constexpr Placement placement(Vec3 origin, Vec3 x, Vec3 y) {
  return {origin, x, y, cross(x, y)};
}
// Shifts only.
[[nodiscard]] constexpr Placement shift(Vec3 by) { return {by, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}; }

// A line in space that things turn about: `direction` is a unit vector, positive angles are right-handed.
struct Axis {
  Vec3 point;
  Vec3 direction;
};
// The placement that turns everything about `axis` by `angle`.
[[nodiscard]] Placement turn(const Axis& axis, Angle angle);

}  // namespace geometry
