// A body as it is drawn: the edges that a person sees on it, and convex pieces that hide what lies behind.
#pragma once

#include <vector>

#include "geometry/convex.h"

namespace geometry {

// A straight edge of a body, in the body's coordinates. An arc is several, within a tenth of a millimetre or
// so of the true curve (48 to the round, their ends on the curve).
struct DrawnEdge {
  // What of the surface lies beside the edge: a strip of face. An edge of a solid has two; a line that is only
  // drawn on something, like a wire, has none.
  struct Strip {
    Vec3 outward;  // unit, the face's normal
    Vec3 into;     // unit, along the face, square to the edge and away from it
  };
  Vec3 a, b;
  std::vector<Strip> strips;
  bool smooth = false;  // within a curved surface: a line is seen only where the surface turns away
};

struct DrawnBody {
  std::vector<DrawnEdge> edges;
  std::vector<ConvexPiece> pieces;  // bores are open and rounded edges round, as far as arcs are
};

// No edge stands where two faces lie in one plane, and none twice.
[[nodiscard]] DrawnBody drawn_body(const Body& body);

}  // namespace geometry
