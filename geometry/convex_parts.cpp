// Level cuts through every corner give trapezoids; those stacked on one another whose union is convex are
// joined again. It is done along both axes and the lesser number of parts wins: for what is sawn from sticks
// and sheets that is the least number, or one or two more.
#include <algorithm>
#include <cmath>

#include "geometry/outline.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

// An edge that is not level, from its lower to its upper end, and the levels those are on.
struct Flank {
  Vec2 low, high;
  std::size_t from = 0, to = 0;
};

// A convex part that grows upwards: its left and right sides, bottom to top.
struct Stack {
  std::vector<Vec2> left, right;
  bool grown = false;  // by a trapezoid of the present strip
};

bool same(Vec2 a, Vec2 b) { return std::fabs(a.x - b.x) <= same_place && std::fabs(a.y - b.y) <= same_place; }

void add_flanks(const Polygon& polygon, const std::vector<double>& levels, std::vector<Flank>& flanks) {
  const auto level = [&](double y) {
    return static_cast<std::size_t>(std::upper_bound(levels.begin(), levels.end(), y) - levels.begin()) - 1;
  };
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    if (a.y > b.y) std::swap(a, b);
    if (level(a.y) != level(b.y)) flanks.push_back({a, b, level(a.y), level(b.y)});
  }
}

Vec2 on_level(const Flank& flank, const std::vector<double>& levels, std::size_t level) {
  if (level == flank.from) return flank.low;
  if (level == flank.to) return flank.high;
  const double t = (levels[level] - flank.low.y) / (flank.high.y - flank.low.y);
  return {flank.low.x + t * (flank.high.x - flank.low.x), levels[level]};
}

// How far the last point of a side stands out (to the right of the way up) from the line between its
// neighbours when the side goes on to `next`.
double bulge(const std::vector<Vec2>& side, Vec2 next) {
  const Vec2 last = side.back(), before = side[side.size() - 2];
  return cross(last - before, next - last) / norm(next - before);
}

void grow(std::vector<Vec2>& side, Vec2 next) {
  if (std::fabs(bulge(side, next)) <= rounding) side.pop_back();  // the middle of a straight run
  side.push_back(next);
}

Polygon closed(const Stack& stack) {
  Polygon polygon = stack.right;
  polygon.insert(polygon.end(), stack.left.rbegin(), stack.left.rend());
  const auto repeated = [](Vec2 a, Vec2 b) { return a == b; };
  polygon.erase(std::unique(polygon.begin(), polygon.end(), repeated), polygon.end());
  if (polygon.size() > 1 && polygon.front() == polygon.back()) polygon.pop_back();
  return polygon;
}

std::vector<Polygon> stacked(const std::vector<Polygon>& polygons) {
  std::vector<double> heights;
  for (const Polygon& polygon : polygons)
    for (const Vec2 p : polygon) heights.push_back(p.y);
  std::sort(heights.begin(), heights.end());
  std::vector<double> levels;
  for (const double y : heights)
    if (levels.empty() || y - levels.back() > same_place) levels.push_back(y);
  std::vector<Flank> flanks;
  for (const Polygon& polygon : polygons) add_flanks(polygon, levels, flanks);

  std::vector<Polygon> parts;
  std::vector<Stack> open;
  for (std::size_t level = 0; level + 1 < levels.size(); ++level) {
    const double middle = 0.5 * (levels[level] + levels[level + 1]);
    std::vector<std::pair<double, const Flank*>> across;
    for (const Flank& flank : flanks)
      if (flank.from <= level && level < flank.to) {
        const double t = (middle - flank.low.y) / (flank.high.y - flank.low.y);
        across.emplace_back(flank.low.x + t * (flank.high.x - flank.low.x), &flank);
      }
    std::stable_sort(across.begin(), across.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Stack> now;
    for (std::size_t i = 0; i + 1 < across.size(); i += 2) {
      const Flank &l = *across[i].second, &r = *across[i + 1].second;
      const Vec2 l0 = on_level(l, levels, level), l1 = on_level(l, levels, level + 1);
      const Vec2 r0 = on_level(r, levels, level), r1 = on_level(r, levels, level + 1);
      const auto below = std::find_if(open.begin(), open.end(), [&](const Stack& s) {
        return !s.grown && same(s.left.back(), l0) && same(s.right.back(), r0) && !same(l0, r0) &&
               bulge(s.left, l1) <= rounding && bulge(s.right, r1) >= -rounding;
      });
      if (below == open.end()) {
        now.push_back({{l0, l1}, {r0, r1}, false});
      } else {
        below->grown = true;
        now.push_back({std::move(below->left), std::move(below->right), false});
        grow(now.back().left, l1);
        grow(now.back().right, r1);
      }
    }
    for (const Stack& s : open)
      if (!s.grown) parts.push_back(closed(s));
    open = std::move(now);
  }
  for (const Stack& s : open) parts.push_back(closed(s));
  return parts;
}

// Mirrored at the diagonal and walked the other way, so that the orientation stays.
Polygon transposed(const Polygon& polygon) {
  Polygon result;
  for (auto p = polygon.rbegin(); p != polygon.rend(); ++p) result.push_back({p->y, p->x});
  return result;
}

}  // namespace

std::vector<Polygon> convex_parts(const Outline& outline) {
  std::vector<Polygon> polygons{outline.outer};
  polygons.insert(polygons.end(), outline.holes.begin(), outline.holes.end());
  std::vector<Polygon> level = stacked(polygons);
  for (Polygon& polygon : polygons) polygon = transposed(polygon);
  std::vector<Polygon> upright = stacked(polygons);
  if (level.size() <= upright.size()) return level;
  for (Polygon& polygon : upright) polygon = transposed(polygon);
  return upright;
}

}  // namespace geometry
