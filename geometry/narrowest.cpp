#include <algorithm>
#include <cmath>

#include "geometry/likeness.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

struct Edge {
  Vec2 from, to;
};

void add_edges(const Polygon& polygon, std::vector<Edge>& edges) {
  for (std::size_t i = 0; i < polygon.size(); ++i)
    edges.push_back({polygon[i], polygon[(i + 1) % polygon.size()]});
}

}  // namespace

std::optional<Narrow> narrowest(const Outline& outline) {
  constexpr double parallel = 0.966;  // the cosine of 15 degrees
  std::vector<Edge> edges;
  add_edges(outline.outer, edges);
  for (const Polygon& hole : outline.holes) add_edges(hole, edges);
  std::optional<Narrow> least;
  for (const Edge& a : edges) {
    const double length = norm(a.to - a.from);
    if (length <= same_place) continue;
    const Vec2 along = (a.to - a.from) * (1 / length), inwards{-along.y, along.x};  // wood is to the left
    for (const Edge& b : edges) {
      const double other = norm(b.to - b.from);
      if (other <= same_place || dot(along, b.to - b.from) > -parallel * other) continue;
      // b runs the other way; the stretch of a that it lies over, and how high it stands there.
      const double b_start = dot(along, b.to - a.from), b_end = dot(along, b.from - a.from);
      const double start = std::max(0.0, b_start), end = std::min(length, b_end);
      if (end - start <= same_place) continue;
      const auto height = [&](double at) {
        const double t = (at - b_start) / (b_end - b_start);
        return dot(inwards, b.to + (b.from - b.to) * t - a.from);
      };
      const double low = std::min(height(start), height(end));
      if (low <= same_place || end - start < low || (least && low >= least->width.mm())) continue;
      const double at = height(start) <= height(end) ? start : end;
      least = Narrow{mm(low), a.from + along * at + inwards * (low / 2)};
    }
  }
  return least;
}

}  // namespace geometry
