#include "geometry/body.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"

namespace geometry {
namespace {

bool same(double a, double b) { return std::abs(a - b) <= same_shape; }
bool same(Vec2 a, Vec2 b) { return same(a.x, b.x) && same(a.y, b.y); }

// Whether two closed polygons are the same points in the same order, wherever each starts.
bool same(const Polygon& a, const Polygon& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t start = 0; start < a.size(); ++start) {
    bool all = true;
    for (std::size_t i = 0; all && i < a.size(); ++i) all = same(a[i], b[(start + i) % b.size()]);
    if (all) return true;
  }
  return false;
}

// Whether every element of `a` has a partner of its own in `b`.
template <class T, class Same>
bool same_set(const std::vector<T>& a, std::vector<T> b, Same same_item) {
  if (a.size() != b.size()) return false;
  for (const T& item : a) {
    const auto partner =
        std::find_if(b.begin(), b.end(), [&](const T& other) { return same_item(item, other); });
    if (partner == b.end()) return false;
    b.erase(partner);
  }
  return true;
}

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

bool same_plane(const HalfSpace& a, const HalfSpace& b) {
  return norm(a.outward - b.outward) <= 1e-6 && same(dot(a.outward, a.point), dot(a.outward, b.point));
}

bool same_body(const Body& a, const Body& b) {
  return same(a.thickness.mm(), b.thickness.mm()) && same(a.rounding.mm(), b.rounding.mm()) &&
         same(a.outline.outer, b.outline.outer) &&
         same_set(a.outline.holes, b.outline.holes,
                  [](const Polygon& p, const Polygon& q) { return same(p, q); }) &&
         same_set(a.bevels, b.bevels, same_plane) &&
         same_set(a.bores, b.bores, [](const Bore& p, const Bore& q) {
           return same(p.centre, q.centre) && same(p.diameter.mm(), q.diameter.mm());
         });
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

Congruence congruence(const Body& a, const Body& b) {
  const Box box_a = blank(a), box_b = blank(b);
  const Vec3 size_a = box_a.size(), size_b = box_b.size();
  if (!same(size_a.x, size_b.x) || !same(size_a.y, size_b.y) || !same(size_a.z, size_b.z)) return {};
  if (a.outline.outer.size() != b.outline.outer.size() || a.outline.holes.size() != b.outline.holes.size())
    return {};
  // The blank's own symmetries: nothing, and a half turn about each of its three axes.
  const Placement turns[] = {{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
                             {{0, 0, 0}, {1, 0, 0}, {0, -1, 0}, {0, 0, -1}},
                             {{0, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, 0, -1}},
                             {{0, 0, 0}, {-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}};
  for (Placement turn : turns) {
    turn.origin = box_b.centre() - turn.direction(box_a.centre());
    if (same_body(turned(a, turn), b)) return {true, turn};
  }
  return {};
}

}  // namespace geometry
