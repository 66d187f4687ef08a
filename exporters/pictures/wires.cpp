#include "exporters/pictures/wires.h"

#include <algorithm>
#include <cmath>

namespace exporters {
namespace {

using geometry::Vec2;
using geometry::Vec3;

// Where a level line at height y crosses the outline, sorted.
std::vector<double> crossings(const geometry::Outline& outline, double y) {
  std::vector<double> out;
  const auto add = [&](const geometry::Polygon& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
      if ((a.y > y) != (b.y > y)) out.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
    }
  };
  add(outline.outer);
  for (const geometry::Polygon& hole : outline.holes) add(hole);
  std::sort(out.begin(), out.end());
  return out;
}

geometry::Outline transposed(geometry::Outline outline) {
  const auto swap = [](geometry::Polygon& polygon) {
    for (Vec2& p : polygon) std::swap(p.x, p.y);
  };
  swap(outline.outer);
  for (geometry::Polygon& hole : outline.holes) swap(hole);
  return outline;
}

}  // namespace

std::vector<geometry::DrawnEdge> wires(const geometry::Body& body, double spacing) {
  std::vector<geometry::DrawnEdge> out;
  const double z = body.thickness.mm() / 2;
  for (const bool upright : {false, true}) {
    const geometry::Outline outline = upright ? transposed(body.outline) : body.outline;
    const double from = low(outline).y, to = high(outline).y;
    const auto count = static_cast<int>(std::min((to - from) / spacing, 1000.0));
    for (int i = 1; i <= count; ++i) {
      // Set out from the middle, so that both edges look alike.
      const double y = (from + to) / 2 + (i - (count + 1) / 2.0) * spacing;
      const std::vector<double> x = crossings(outline, y);
      for (std::size_t k = 0; k + 1 < x.size(); k += 2) {
        const auto at = [&](double along) { return upright ? Vec3{y, along, z} : Vec3{along, y, z}; };
        out.push_back({at(x[k]), at(x[k + 1]), {}, false});
      }
    }
  }
  return out;
}

}  // namespace exporters
