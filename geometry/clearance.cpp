// How two convex pieces stand to each other. Whether they are apart is decided by separating axes; how far,
// by going through the pairs of features (corner and face, edge and edge) that can be nearest to each other.
#include <algorithm>
#include <array>
#include <limits>

#include "geometry/convex.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

struct Edges {
  std::vector<std::array<int, 2>> ends;  // of every edge, once
  std::vector<Vec3> directions;          // unit, parallel ones once
};

Edges edges_of(const ConvexPiece& piece) {
  Edges edges;
  for (const ConvexPiece::Face& face : piece.faces)
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
      const int a = face.loop[i], b = face.loop[i + 1 == face.loop.size() ? 0 : i + 1];
      if (a > b) continue;  // the neighbouring face walks it the other way
      edges.ends.push_back({a, b});
      const Vec3 along = piece.points[b] - piece.points[a];
      const double length = norm(along);
      if (length < rounding) continue;
      const Vec3 direction = along / length;
      const bool is_new = std::none_of(edges.directions.begin(), edges.directions.end(), [&](Vec3 known) {
        const Vec3 c = cross(known, direction);
        return dot(c, c) < 1e-26;  // parallel as far as a double can tell
      });
      if (is_new) edges.directions.push_back(direction);
    }
  return edges;
}

struct Span {
  double low, high;
};
Span span(const ConvexPiece& piece, Vec3 axis) {
  Span result{INFINITY, -INFINITY};
  for (const Vec3 p : piece.points) {
    const double h = dot(axis, p);
    result = {std::min(result.low, h), std::max(result.high, h)};
  }
  return result;
}

// The unit direction, from a to b, along which the gap between the two is widest (or the overlap least).
struct Separation {
  Vec3 axis;
  double gap = -INFINITY;
  double high_of_a = 0, low_of_b = 0;  // along the axis
};

void widen(Separation& best, const ConvexPiece& a, const ConvexPiece& b, Vec3 axis) {
  const Span of_a = span(a, axis), of_b = span(b, axis);
  if (of_b.low - of_a.high > best.gap) best = {axis, of_b.low - of_a.high, of_a.high, of_b.low};
  if (of_a.low - of_b.high > best.gap) best = {-axis, of_a.low - of_b.high, -of_a.low, -of_b.high};
}

Separation separation(const ConvexPiece& a, const Edges& edges_a, const ConvexPiece& b,
                      const Edges& edges_b) {
  Separation best;
  for (const ConvexPiece::Face& face : a.faces) widen(best, a, b, face.outward);
  for (const ConvexPiece::Face& face : b.faces) widen(best, a, b, face.outward);
  for (const Vec3 u : edges_a.directions)
    for (const Vec3 v : edges_b.directions) {
      const Vec3 axis = cross(u, v);
      const double length = norm(axis);
      if (length > 1e-13) widen(best, a, b, axis / length);  // parallel edges give no axis of their own
    }
  return best;
}

// Nearest points so far.
struct Nearest {
  double squared = INFINITY;
  Vec3 on_a, on_b;
  void offer(Vec3 p, Vec3 q) {
    const Vec3 d = q - p;
    if (dot(d, d) < squared) *this = {dot(d, d), p, q};
  }
};

Vec3 nearest_on_segment(Vec3 p, Vec3 from, Vec3 to) {
  const Vec3 along = to - from;
  const double squared = dot(along, along);
  if (squared == 0) return from;
  return from + along * std::clamp(dot(p - from, along) / squared, 0.0, 1.0);
}

void offer_segments(Nearest& nearest, Vec3 p0, Vec3 p1, Vec3 q0, Vec3 q1) {
  nearest.offer(p0, nearest_on_segment(p0, q0, q1));
  nearest.offer(p1, nearest_on_segment(p1, q0, q1));
  nearest.offer(nearest_on_segment(q0, p0, p1), q0);
  nearest.offer(nearest_on_segment(q1, p0, p1), q1);
  const Vec3 u = p1 - p0, v = q1 - q0, w = p0 - q0;
  const double uu = dot(u, u), uv = dot(u, v), vv = dot(v, v), uw = dot(u, w), vw = dot(v, w);
  const double determinant = uu * vv - uv * uv;
  if (determinant <= 0) return;
  const double s = (uv * vw - vv * uw) / determinant;
  if (s <= 0 || s >= 1) return;
  // Nearly parallel edges make s uncertain, not the distance: the best partner of that very point is taken.
  const Vec3 p = p0 + u * s;
  const Vec3 q = nearest_on_segment(p, q0, q1);
  nearest.offer(nearest_on_segment(q, p0, p1), q);
}

// The foot of p on the face's plane, if it falls inside the face.
bool foot_on_face(const ConvexPiece& piece, const ConvexPiece::Face& face, Vec3 p, Vec3& foot) {
  const double height = dot(face.outward, p) - face.offset;
  if (height <= 0) return false;
  for (std::size_t i = 0; i < face.loop.size(); ++i) {
    const Vec3 a = piece.points[face.loop[i]];
    const Vec3 b = piece.points[face.loop[i + 1 == face.loop.size() ? 0 : i + 1]];
    if (dot(cross(face.outward, b - a), p - a) < 0) return false;
  }
  foot = p - face.outward * height;
  return true;
}

Nearest nearest_points(const ConvexPiece& a, const Edges& edges_a, const ConvexPiece& b, const Edges& edges_b,
                       const Separation& apart) {
  std::vector<double> depth_a, depth_b;  // how far each point lies behind the foremost one
  for (const Vec3 p : a.points) depth_a.push_back(apart.high_of_a - dot(apart.axis, p));
  for (const Vec3 p : b.points) depth_b.push_back(dot(apart.axis, p) - apart.low_of_b);

  // Points at distance d lie no deeper, both together, than d - gap. So a first guess from the foremost
  // points rules out most features, and every better one rules out more.
  Nearest nearest;
  const auto foremost = [](const std::vector<double>& depth) {
    return std::min_element(depth.begin(), depth.end()) - depth.begin();
  };
  nearest.offer(a.points[foremost(depth_a)], b.points[foremost(depth_b)]);
  const auto too_deep = [&](double depth) {
    return depth > rounding && apart.gap + depth - rounding > std::sqrt(nearest.squared);
  };

  Vec3 foot;
  const auto corners_and_faces = [&](const ConvexPiece& corners, const std::vector<double>& depth,
                                     const ConvexPiece& faces, auto offer) {
    for (std::size_t i = 0; i < corners.points.size(); ++i) {
      if (too_deep(depth[i])) continue;
      for (const ConvexPiece::Face& face : faces.faces)
        if (foot_on_face(faces, face, corners.points[i], foot)) offer(corners.points[i], foot);
    }
  };
  corners_and_faces(a, depth_a, b, [&](Vec3 corner, Vec3 on_face) { nearest.offer(corner, on_face); });
  corners_and_faces(b, depth_b, a, [&](Vec3 corner, Vec3 on_face) { nearest.offer(on_face, corner); });
  for (const auto [a0, a1] : edges_a.ends) {
    const double depth = std::min(depth_a[a0], depth_a[a1]);
    if (too_deep(depth)) continue;
    for (const auto [b0, b1] : edges_b.ends)
      if (!too_deep(depth + std::min(depth_b[b0], depth_b[b1])))
        offer_segments(nearest, a.points[a0], a.points[a1], b.points[b0], b.points[b1]);
  }
  return nearest;
}

// The ends of what of each edge lies inside the other piece: the corners of what the two have in common.
void add_common(const ConvexPiece& piece, const Edges& edges, const ConvexPiece& other,
                std::vector<Vec3>& corners) {
  const double margin = 2 * rounding;
  const auto add = [&](Vec3 corner) {
    for (const Vec3 known : corners)
      if (norm(known - corner) <= same_place) return;
    corners.push_back(corner);
  };
  for (const auto [i, j] : edges.ends) {
    const Vec3 p = piece.points[i], q = piece.points[j];
    double from = 0, to = 1;
    for (const ConvexPiece::Face& face : other.faces) {
      const double hp = dot(face.outward, p) - face.offset - margin;
      const double hq = dot(face.outward, q) - face.offset - margin;
      if (hp > 0 && hq > 0)
        from = 2;
      else if (hp > 0)
        from = std::max(from, hp / (hp - hq));
      else if (hq > 0)
        to = std::min(to, hp / (hp - hq));
    }
    if (from > to) continue;
    add(p + (q - p) * from);
    add(p + (q - p) * to);
  }
}

}  // namespace

Clearance clearance(const ConvexPiece& a, const ConvexPiece& b) {
  const Edges edges_a = edges_of(a), edges_b = edges_of(b);
  const Separation apart = separation(a, edges_a, b, edges_b);
  if (apart.gap > rounding) {
    const Nearest nearest = nearest_points(a, edges_a, b, edges_b, apart);
    const double distance = std::sqrt(nearest.squared);
    return {distance, nearest.on_a, nearest.on_b, (nearest.on_b - nearest.on_a) / distance};
  }
  std::vector<Vec3> corners;
  add_common(a, edges_a, b, corners);
  add_common(b, edges_b, a, corners);
  if (corners.empty()) corners = {a.box.centre(), b.box.centre()};
  Vec3 sum;
  for (const Vec3 corner : corners) sum = sum + corner;
  const Vec3 place = sum / static_cast<double>(corners.size());
  return {apart.gap, place, place, apart.axis};
}

}  // namespace geometry
