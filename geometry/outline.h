// A flat shape: one closed polygon with any number of polygonal holes.
#pragma once

#include <vector>

#include "geometry/units.h"
#include "geometry/vector.h"

namespace geometry {

using Polygon = std::vector<Vec2>;  // closed: the last point joins the first; no point repeated

struct Outline {
  Polygon outer;               // counter-clockwise
  std::vector<Polygon> holes;  // each clockwise, inside outer, apart from each other

  bool operator==(const Outline&) const = default;
};

// The rectangle from (0, 0) to (width, height).
[[nodiscard]] Outline rectangle(Length width, Length height);
// The rectangle between two opposite corners, low.x < high.x and low.y < high.y.
[[nodiscard]] Outline rectangle(Vec2 low, Vec2 high);
// Signed area of a polygon: positive when counter-clockwise.
[[nodiscard]] double signed_area(const Polygon& polygon);
[[nodiscard]] Area area(const Outline& outline);
[[nodiscard]] Vec2 low(const Outline& outline);
[[nodiscard]] Vec2 high(const Outline& outline);
// Shifts every point.
[[nodiscard]] Outline moved(Outline outline, Vec2 by);
// Drops repeated points and points in the middle of a straight run, and orients the polygons as Outline asks.
[[nodiscard]] Outline cleaned(Outline outline);

// A flat area that may fall into several pieces.
using Region = std::vector<Outline>;

// Set operations on regions. Coordinates are snapped to one nanometre, so results are exact to 1e-6 mm; they
// come back cleaned and in a fixed order (by lowest point, left to right).
[[nodiscard]] Region intersection(const Region& a, const Region& b);
[[nodiscard]] Region difference(const Region& a, const Region& b);
[[nodiscard]] Region united(const Region& a, const Region& b);
[[nodiscard]] Area area(const Region& region);

// Cuts an outline into convex polygons (counter-clockwise) that cover it exactly, without overlap.
[[nodiscard]] std::vector<Polygon> convex_parts(const Outline& outline);

}  // namespace geometry
