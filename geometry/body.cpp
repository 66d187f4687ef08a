#include "geometry/body.h"

#include <algorithm>
#include <cmath>

#include "geometry/likeness.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

// How two bodies are compared: corners, sizes and cuts that answer each other agree to `within` mm.
struct Comparison {
  double within = same_shape;

  [[nodiscard]] bool same(double a, double b) const { return std::abs(a - b) <= within; }
  [[nodiscard]] bool same(Vec2 a, Vec2 b) const { return same(a.x, b.x) && same(a.y, b.y); }
  // Whether two closed polygons are the same points in the same order, wherever each starts.
  [[nodiscard]] bool same(const Polygon& a, const Polygon& b) const {
    if (a.size() != b.size()) return false;
    for (std::size_t start = 0; start < a.size(); ++start) {
      bool all = true;
      for (std::size_t i = 0; all && i < a.size(); ++i) all = same(a[i], b[(start + i) % b.size()]);
      if (all) return true;
    }
    return false;
  }
  [[nodiscard]] bool same(const HalfSpace& a, const HalfSpace& b) const {
    return norm(a.outward - b.outward) <= 1e-6 && same(dot(a.outward, a.point), dot(a.outward, b.point));
  }
  [[nodiscard]] bool same(const Bore& a, const Bore& b) const {
    return same(a.centre, b.centre) && same(a.diameter.mm(), b.diameter.mm());
  }
  // Whether every element of `a` has a partner of its own in `b`.
  template <class T>
  [[nodiscard]] bool same_set(const std::vector<T>& a, std::vector<T> b) const {
    if (a.size() != b.size()) return false;
    for (const T& item : a) {
      const auto partner =
          std::find_if(b.begin(), b.end(), [&](const T& other) { return same(item, other); });
      if (partner == b.end()) return false;
      b.erase(partner);
    }
    return true;
  }
  [[nodiscard]] bool same(const Body& a, const Body& b) const {
    return same(a.thickness.mm(), b.thickness.mm()) && same(a.rounding.mm(), b.rounding.mm()) &&
           same(a.outline.outer, b.outline.outer) && same_set(a.outline.holes, b.outline.holes) &&
           same_set(a.bevels, b.bevels) && same_set(a.bores, b.bores);
  }
};

// The body as it lies after turning by one of the half turns that take its blank to itself.
Body turned(const Body& body, const Placement& by) {
  const bool flips = by.x.x * by.y.y < 0;  // a half turn about an axis in the plane mirrors the outline
  const auto map = [&](Vec2 p) {
    const Vec3 q = by.point({p.x, p.y, 0});
    return Vec2{q.x, q.y};
  };
  const auto map_polygon = [&](Polygon polygon) {
    for (Vec2& p : polygon) p = map(p);
    if (flips) std::reverse(polygon.begin(), polygon.end());
    return polygon;
  };
  Body result = body;
  result.outline.outer = map_polygon(body.outline.outer);
  for (Polygon& hole : result.outline.holes) hole = map_polygon(hole);
  for (HalfSpace& bevel : result.bevels) bevel = {by.point(bevel.point), by.direction(bevel.outward)};
  for (Bore& bore : result.bores) bore.centre = map(bore.centre);
  return result;
}

Congruence congruence_within(const Body& a, const Body& b, double within) {
  const Comparison compare{within};
  const Box box_a = blank(a), box_b = blank(b);
  const Vec3 size_a = box_a.size(), size_b = box_b.size();
  if (!compare.same(size_a.x, size_b.x) || !compare.same(size_a.y, size_b.y) ||
      !compare.same(size_a.z, size_b.z))
    return {};
  if (a.outline.outer.size() != b.outline.outer.size() || a.outline.holes.size() != b.outline.holes.size())
    return {};
  // The blank's own symmetries: nothing, and a half turn about each of its three axes.
  const Placement turns[] = {{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
                             {{0, 0, 0}, {1, 0, 0}, {0, -1, 0}, {0, 0, -1}},
                             {{0, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, 0, -1}},
                             {{0, 0, 0}, {-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}};
  for (Placement turn : turns) {
    turn.origin = box_b.centre() - turn.direction(box_a.centre());
    if (compare.same(turned(a, turn), b)) return {true, turn};
  }
  return {};
}

}  // namespace

Body stick(Length length, Length width, Length thickness) {
  return {rectangle(length, width), thickness, {}, {}, {}};
}

Box blank(const Body& body) {
  const Vec2 from = low(body.outline), to = high(body.outline);
  Box box;
  box.add(Vec3{from.x, from.y, 0});
  box.add(Vec3{to.x, to.y, body.thickness.mm()});
  return box;
}

Congruence congruence(const Body& a, const Body& b) { return congruence_within(a, b, same_shape); }

std::optional<Length> unlikeness(const Body& a, const Body& b, Length most) {
  double alike = most.mm(), unlike = 0;
  if (!congruence_within(a, b, alike).congruent) return std::nullopt;
  while (alike - unlike > same_shape / 10) {
    const double middle = (alike + unlike) / 2;
    (congruence_within(a, b, middle).congruent ? alike : unlike) = middle;
  }
  return mm(alike);
}

}  // namespace geometry
