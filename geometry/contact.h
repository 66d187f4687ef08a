// The flat faces of bodies, and where those of two bodies lie against each other: over what area they touch, or how
// narrow the gap between them is.
#pragma once

#include <vector>

#include "geometry/body.h"

namespace geometry {

// A flat face. The plane's z points out of the wood, its x along the body's own x where the face holds it.
struct FlatFace {
  Placement plane;
  Region region;  // in the plane's x and y
  Box box;
};

// All flat faces of the body, in its coordinates: coplanar ones as one, bores left out, and of rounded edges what
// stays flat. A bore's and a rounding's own surfaces are not flat and not among them.
[[nodiscard]] std::vector<FlatFace> flat_faces(const Body& body);
[[nodiscard]] FlatFace placed(const FlatFace& face, const Placement& placement);

// Two faces that look at each other, parallel to a millionth.
struct Facing {
  double gap = 0;   // mm from the one to the other; negative when they reach into each other
  Placement plane;  // of a's face; z from a to b
  Region region;    // where both are, seen along z; at least `least_area`
  Area area;
};
// Less than this (mm2) is no face to rest on or to be fastened through.
inline constexpr double least_area = 1;

// All facing pairs of the two bodies' faces with a gap from -`contact` (tolerance.h) to `most_gap` mm.
[[nodiscard]] std::vector<Facing> facing(const std::vector<FlatFace>& a, const std::vector<FlatFace>& b,
                                         double most_gap);

// The length (mm) over which edges of `a` lie in the midst of faces of `b`: how a leaning board touches.
[[nodiscard]] double leaning_length(const std::vector<FlatFace>& a, const std::vector<FlatFace>& b);

}  // namespace geometry
