#include "geometry/convex.h"

#include <map>
#include <utility>

#include "geometry/tolerance.h"

namespace geometry {
namespace {

ConvexPiece prism(const Polygon& base, double height) {
  ConvexPiece piece;
  const int n = static_cast<int>(base.size());
  for (const Vec2 p : base) piece.points.push_back({p.x, p.y, 0});
  for (const Vec2 p : base) piece.points.push_back({p.x, p.y, height});
  ConvexPiece::Face bottom{{0, 0, -1}, 0, {}}, top{{0, 0, 1}, height, {}};
  for (int i = 0; i < n; ++i) {
    bottom.loop.push_back(n - 1 - i);
    top.loop.push_back(n + i);
  }
  piece.faces = {bottom, top};
  for (int i = 0; i < n; ++i) {
    const int j = (i + 1) % n;
    const Vec2 along = base[j] - base[i];
    const Vec2 outward = Vec2{along.y, -along.x} * (1 / norm(along));
    const double offset = 0.5 * (dot(outward, base[i]) + dot(outward, base[j]));
    piece.faces.push_back({{outward.x, outward.y, 0}, offset, {i, j, n + j, n + i}});
  }
  return piece;
}

// Leaves out the points that no face uses any more.
void drop_unused(ConvexPiece& piece) {
  std::vector<int> renumbered(piece.points.size(), -1);
  std::vector<Vec3> kept;
  for (ConvexPiece::Face& face : piece.faces)
    for (int& index : face.loop) {
      if (renumbered[index] < 0) {
        renumbered[index] = static_cast<int>(kept.size());
        kept.push_back(piece.points[index]);
      }
      index = renumbered[index];
    }
  piece.points = std::move(kept);
}

// The part of the piece on the inner side of the plane; a piece without faces when nothing is left.
ConvexPiece clipped(ConvexPiece piece, const HalfSpace& plane) {
  std::vector<double> height;
  bool above = false, below = false;
  for (const Vec3 p : piece.points) {
    const double h = dot(plane.outward, p - plane.point);
    height.push_back(std::fabs(h) <= rounding ? 0 : h);
    above |= height.back() > 0;
    below |= height.back() < 0;
  }
  if (!above && below) return piece;
  if (!below) return {};

  std::map<std::pair<int, int>, int> cuts;  // the new point on an edge, by its ends
  const auto cut = [&](int a, int b) {
    if (a > b) std::swap(a, b);
    const auto [at, is_new] = cuts.try_emplace({a, b}, static_cast<int>(piece.points.size()));
    if (is_new) {
      const double t = height[a] / (height[a] - height[b]);
      piece.points.push_back(piece.points[a] + (piece.points[b] - piece.points[a]) * t);
      height.push_back(0);
    }
    return at->second;
  };
  ConvexPiece result;
  std::map<int, int> cap_next;  // the rim of the new face, each point's follower
  for (const ConvexPiece::Face& face : piece.faces) {
    ConvexPiece::Face left{face.outward, face.offset, {}};
    bool below_plane = false;
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
      const int a = face.loop[i], b = face.loop[(i + 1) % face.loop.size()];
      if (height[a] <= 0) left.loop.push_back(a);
      if (height[a] * height[b] < 0) left.loop.push_back(cut(a, b));
      below_plane |= height[a] < 0;
    }
    if (!below_plane) continue;
    for (std::size_t i = 0; i < left.loop.size(); ++i) {
      const int a = left.loop[i], b = left.loop[(i + 1) % left.loop.size()];
      if (height[a] == 0 && height[b] == 0) cap_next[b] = a;
    }
    result.faces.push_back(std::move(left));
  }
  ConvexPiece::Face cap{plane.outward, dot(plane.outward, plane.point), {}};
  if (!cap_next.empty()) {
    const int start = cap_next.begin()->first;
    int at = start;
    do {
      cap.loop.push_back(at);
      const auto next = cap_next.find(at);
      at = next == cap_next.end() ? start : next->second;
    } while (at != start && cap.loop.size() <= cap_next.size());
  }
  if (cap.loop.size() >= 3) result.faces.push_back(std::move(cap));
  result.points = std::move(piece.points);
  drop_unused(result);
  return result;
}

}  // namespace

std::vector<ConvexPiece> convex_pieces(const Body& body) {
  std::vector<ConvexPiece> pieces;
  for (const Polygon& base : convex_parts(body.outline)) {
    ConvexPiece piece = prism(base, body.thickness.mm());
    for (const HalfSpace& bevel : body.bevels) piece = clipped(std::move(piece), bevel);
    if (piece.faces.empty()) continue;
    for (const Vec3 p : piece.points) piece.box.add(p);
    pieces.push_back(std::move(piece));
  }
  return pieces;
}

ConvexPiece placed(const ConvexPiece& piece, const Placement& placement) {
  ConvexPiece result;
  result.points.reserve(piece.points.size());
  for (const Vec3 p : piece.points) {
    result.points.push_back(placement.point(p));
    result.box.add(result.points.back());
  }
  result.faces.reserve(piece.faces.size());
  for (const ConvexPiece::Face& face : piece.faces) {
    const Vec3 outward = placement.direction(face.outward);
    result.faces.push_back({outward, face.offset + dot(outward, placement.origin), face.loop});
  }
  return result;
}

Volume volume(const ConvexPiece& piece) {
  double six_times = 0;
  for (const ConvexPiece::Face& face : piece.faces) {
    const Vec3 a = piece.points[face.loop[0]] - piece.points[0];
    for (std::size_t i = 1; i + 1 < face.loop.size(); ++i)
      six_times += dot(a, cross(piece.points[face.loop[i]] - piece.points[0],
                                piece.points[face.loop[i + 1]] - piece.points[0]));
  }
  return {six_times / 6};
}

}  // namespace geometry
