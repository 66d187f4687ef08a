// Convex plane-faced pieces with exact distances: what the checks run on, since the kernel's own distance
// takes milliseconds a pair where these take microseconds. The kernel judges them in the tests.
#pragma once

#include <vector>

#include "geometry/body.h"

namespace geometry {

struct ConvexPiece {
  struct Face {
    Vec3 outward;           // unit
    double offset = 0;      // dot(outward, p) == offset for every p on the face
    std::vector<int> loop;  // indices into points, counter-clockwise seen from outside
  };
  std::vector<Vec3> points;
  std::vector<Face> faces;
  Box box;
};

// The body in pieces that cover it without overlap, in its local coordinates. Bevels are cut exactly; bores
// and rounding are left out, so the pieces hold the whole body and, there, a little more.
[[nodiscard]] std::vector<ConvexPiece> convex_pieces(const Body& body);
[[nodiscard]] ConvexPiece placed(const ConvexPiece& piece, const Placement& placement);
[[nodiscard]] Volume volume(const ConvexPiece& piece);

// How two pieces stand to each other.
struct Clearance {
  // > 0: the exact least distance (mm). <= 0: they touch, or overlap by this depth: the least shift that
  // parts them.
  double distance = 0;
  // The points nearest to each other when apart; when not, a point of each at the place of contact.
  Vec3 on_a, on_b;
  // Unit, from a to b: along it the two are apart by just `distance` (overlap by just its negative).
  Vec3 direction;
};
[[nodiscard]] Clearance clearance(const ConvexPiece& a, const ConvexPiece& b);

}  // namespace geometry
