// What a part is, before it is a solid: the flat outline it is cut to, its thickness, and what else a saw or
// drill does to it. Everything that is drawn, listed, weighed, checked or exported is derived from this one
// description.
#pragma once

#include <vector>

#include "geometry/outline.h"
#include "geometry/placement.h"

namespace geometry {

// All of space on the side of a plane that `outward` points away from. `outward` is a unit vector.
struct HalfSpace {
  Vec3 point;
  Vec3 outward;
};

// A round hole straight through the thickness (along z).
struct Bore {
  Vec2 centre;
  Length diameter;
};

// Local axes: x along the grain, y across it, z through the thickness. The blank stands in z from 0 to
// thickness.
struct Body {
  Outline outline;
  Length thickness;
  std::vector<HalfSpace> bevels;  // what is outside any of these is cut away (a saw tilted out of square)
  std::vector<Bore> bores;
  Length rounding;  // radius on the four edges along x; only for a square-ended stick (rectangular outline)
};

// A rectangular stick: length along x, width along y, thickness along z.
[[nodiscard]] Body stick(Length length, Length width, Length thickness);
// The box of the blank before bevels and bores.
[[nodiscard]] Box blank(const Body& body);

// Whether the two are the same piece of wood, turned over or end for end; then `turned` takes a's coordinates
// to b's. Mirror images that no turning brings together are different pieces.
struct Congruence {
  bool congruent = false;
  Placement turned;  // b == turned(a)
};
[[nodiscard]] Congruence congruence(const Body& a, const Body& b);

}  // namespace geometry
