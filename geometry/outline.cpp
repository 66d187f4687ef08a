#include "geometry/outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <polyclipping/clipper.hpp>

#include "geometry/tolerance.h"

namespace geometry {
namespace {

constexpr double nanometres = 1e6;  // in a millimetre

ClipperLib::Paths to_paths(const Region& region) {
  ClipperLib::Paths paths;
  const auto add = [&](const Polygon& polygon) {
    ClipperLib::Path path;
    path.reserve(polygon.size());
    for (const Vec2 p : polygon)
      path.emplace_back(std::llround(p.x * nanometres), std::llround(p.y * nanometres));
    paths.push_back(std::move(path));
  };
  for (const Outline& outline : region) {
    add(outline.outer);
    for (const Polygon& hole : outline.holes) add(hole);
  }
  return paths;
}

Polygon to_polygon(const ClipperLib::Path& path) {
  Polygon polygon;
  polygon.reserve(path.size());
  for (const auto& p : path)
    polygon.push_back({static_cast<double>(p.X) / nanometres, static_cast<double>(p.Y) / nanometres});
  return polygon;
}

bool before(Vec2 a, Vec2 b) { return a.y != b.y ? a.y < b.y : a.x < b.x; }

// Starts each polygon at its lowest, leftmost point, so that equal outlines are written equally.
void start_lowest(Polygon& polygon) {
  std::rotate(polygon.begin(), std::min_element(polygon.begin(), polygon.end(), before), polygon.end());
}

struct Piece {
  ClipperLib::Path outer;
  ClipperLib::Paths holes;
};

void collect(const ClipperLib::PolyNode& node, std::vector<Piece>& pieces) {
  for (const ClipperLib::PolyNode* child : node.Childs) {
    Piece piece{child->Contour, {}};
    for (const ClipperLib::PolyNode* hole : child->Childs) piece.holes.push_back(hole->Contour);
    pieces.push_back(std::move(piece));
    for (const ClipperLib::PolyNode* hole : child->Childs) collect(*hole, pieces);  // islands within the hole
  }
}

// Some place well inside: on the level line halfway between its lowest corner and the next higher, in the middle of the
// first stretch there.
ClipperLib::IntPoint inside(const ClipperLib::Path& path) {
  ClipperLib::cInt lowest = path.front().Y, next = std::numeric_limits<ClipperLib::cInt>::max();
  for (const ClipperLib::IntPoint& p : path) lowest = std::min(lowest, p.Y);
  for (const ClipperLib::IntPoint& p : path)
    if (p.Y > lowest) next = std::min(next, p.Y);
  const double y = (static_cast<double>(lowest) + static_cast<double>(next)) / 2;
  std::vector<double> crossings;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const ClipperLib::IntPoint &p = path[i], &q = path[(i + 1) % path.size()];
    const double from = static_cast<double>(p.Y), to = static_cast<double>(q.Y);
    if ((from < y) != (to < y))
      crossings.push_back(static_cast<double>(p.X) +
                          static_cast<double>(q.X - p.X) * (y - from) / (to - from));
  }
  std::sort(crossings.begin(), crossings.end());
  return {std::llround((crossings[0] + crossings[1]) / 2), std::llround(y)};
}

// A hole that all but touches the outside of its piece may come back as a piece beside it. No piece lies in another but
// in its holes, so it is put back where it belongs.
void put_back_holes(std::vector<Piece>& pieces) {
  for (std::size_t i = 0; pieces.size() > 1 && i < pieces.size();) {
    const ClipperLib::Path& hole = pieces[i].outer;
    const ClipperLib::IntPoint place = inside(hole);
    const auto holds = [&](const ClipperLib::Path& path) {
      return ClipperLib::PointInPolygon(place, path) == 1;
    };
    const auto around = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& piece) {
      return &piece != &pieces[i] &&
             std::abs(ClipperLib::Area(piece.outer)) > std::abs(ClipperLib::Area(hole)) &&
             holds(piece.outer) && std::none_of(piece.holes.begin(), piece.holes.end(), holds);
    });
    if (around == pieces.end()) {
      ++i;
      continue;
    }
    around->holes.push_back(hole);
    pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

Region clip(const Region& a, const Region& b, ClipperLib::ClipType type) {
  ClipperLib::Clipper clipper;
  clipper.StrictlySimple(true);
  clipper.AddPaths(to_paths(a), ClipperLib::ptSubject, true);
  clipper.AddPaths(to_paths(b), ClipperLib::ptClip, true);
  ClipperLib::PolyTree tree;
  clipper.Execute(type, tree, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  std::vector<Piece> pieces;
  collect(tree, pieces);
  put_back_holes(pieces);
  Region region;
  for (const Piece& piece : pieces) {
    Outline outline{to_polygon(piece.outer), {}};
    for (const ClipperLib::Path& hole : piece.holes) outline.holes.push_back(to_polygon(hole));
    outline = cleaned(std::move(outline));
    if (outline.outer.size() >= 3) region.push_back(std::move(outline));
  }
  std::sort(region.begin(), region.end(),
            [](const Outline& x, const Outline& y) { return before(x.outer.front(), y.outer.front()); });
  return region;
}

Polygon without_idle_points(const Polygon& polygon) {
  // A point is idle when it lies on the straight line between its neighbours, to within `same_place`;
  // Clipper's snapping leaves such points where pieces were joined. Repeated until nothing changes, since
  // dropping one can make its neighbour idle.
  Polygon kept = polygon;
  for (bool changed = true; changed && kept.size() >= 3;) {
    changed = false;
    for (std::size_t i = 0; i < kept.size(); ++i) {
      const Vec2 a = kept[(i + kept.size() - 1) % kept.size()], p = kept[i], b = kept[(i + 1) % kept.size()];
      const double chord = norm(b - a);
      const bool repeated = norm(p - a) <= same_place || norm(b - p) <= same_place;
      if (repeated || chord <= same_place || std::abs(cross(b - a, p - a)) <= 2 * same_place * chord) {
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(i));
        changed = true;
        break;
      }
    }
  }
  return kept;
}

}  // namespace

Outline rectangle(Length width, Length height) { return rectangle({0, 0}, {width.mm(), height.mm()}); }

Outline rectangle(Vec2 low, Vec2 high) { return {{low, {high.x, low.y}, high, {low.x, high.y}}, {}}; }

double signed_area(const Polygon& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  return twice / 2;
}

Area area(const Outline& outline) {
  double sum = std::abs(signed_area(outline.outer));
  for (const Polygon& hole : outline.holes) sum -= std::abs(signed_area(hole));
  return {sum};
}

Area area(const Region& region) {
  double sum = 0;
  for (const Outline& outline : region) sum += area(outline).mm2;
  return {sum};
}

Vec2 low(const Outline& outline) {
  Vec2 corner = outline.outer.front();
  for (const Vec2 p : outline.outer) corner = {std::min(corner.x, p.x), std::min(corner.y, p.y)};
  return corner;
}

Vec2 high(const Outline& outline) {
  Vec2 corner = outline.outer.front();
  for (const Vec2 p : outline.outer) corner = {std::max(corner.x, p.x), std::max(corner.y, p.y)};
  return corner;
}

Outline moved(Outline outline, Vec2 by) {
  for (Vec2& p : outline.outer) p = p + by;
  for (Polygon& hole : outline.holes)
    for (Vec2& p : hole) p = p + by;
  return outline;
}

Outline cleaned(Outline outline) {
  outline.outer = without_idle_points(outline.outer);
  if (outline.outer.size() < 3) return {};
  if (signed_area(outline.outer) < 0) std::reverse(outline.outer.begin(), outline.outer.end());
  start_lowest(outline.outer);
  std::vector<Polygon> holes;
  for (const Polygon& hole : outline.holes) {
    Polygon kept = without_idle_points(hole);
    if (kept.size() < 3) continue;
    if (signed_area(kept) > 0) std::reverse(kept.begin(), kept.end());
    start_lowest(kept);
    holes.push_back(std::move(kept));
  }
  std::sort(holes.begin(), holes.end(),
            [](const Polygon& a, const Polygon& b) { return before(a.front(), b.front()); });
  outline.holes = std::move(holes);
  return outline;
}

Region intersection(const Region& a, const Region& b) { return clip(a, b, ClipperLib::ctIntersection); }
Region difference(const Region& a, const Region& b) { return clip(a, b, ClipperLib::ctDifference); }
Region united(const Region& a, const Region& b) { return clip(a, b, ClipperLib::ctUnion); }

}  // namespace geometry
