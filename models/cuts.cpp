#include "models/cuts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/tolerance.h"

namespace models {
namespace {

using geometry::HalfSpace;
using geometry::mm;
using geometry::Polygon;
using geometry::Vec3;

constexpr double on_line = geometry::same_shape;
constexpr double no_angle = 1e-6;  // radians: a thousandth of a millimetre on a metre

CutEdge cut_edge(Vec2 from, Vec2 to) {
  const Vec2 d = to - from;
  return {from, to, mm(norm(d)), geometry::radians(std::atan2(std::fabs(d.y), std::fabs(d.x)))};
}

// The outline of the blank's coordinates, from the first point of the near edge on, with the places where
// each point stands.
struct Walk {
  Polygon points;
  double width = 0;
  [[nodiscard]] bool on_near(std::size_t i) const { return points[i].y <= on_line; }
  [[nodiscard]] bool on_far(std::size_t i) const { return points[i].y >= width - on_line; }
};

// Going round counter-clockwise, a polygon touches the near edge in one run of visits, left to right, then
// the far edge in another, right to left (it cannot cross itself). The walk starts where the near run does.
Walk walk(const Polygon& outer, Vec2 low, double width) {
  Walk walk{{}, width};
  for (const Vec2 p : outer) walk.points.push_back(p - low);
  const std::size_t count = walk.points.size();
  for (std::size_t start = 0; start < count; ++start) {
    if (!walk.on_near(start)) continue;
    std::size_t before = (start + count - 1) % count;
    while (!walk.on_near(before) && !walk.on_far(before)) before = (before + count - 1) % count;
    if (walk.on_far(before)) {
      std::rotate(walk.points.begin(), walk.points.begin() + static_cast<std::ptrdiff_t>(start),
                  walk.points.end());
      break;
    }
  }
  return walk;
}

// Whether a straight cut along the edge leaves the whole outline standing.
bool straight_through(const CutEdge& edge, const Polygon& points) {
  const Vec2 along = (edge.to - edge.from) * (1 / edge.length.mm());
  return std::all_of(points.begin(), points.end(),
                     [&](Vec2 p) { return cross(along, p - edge.from) >= -on_line; });
}

// Whether a bevel takes away all of the face under an edge, so that no cut of its own makes it.
bool taken_by_bevel(const CutEdge& edge, const Body& body, Vec2 low) {
  return std::any_of(body.bevels.begin(), body.bevels.end(), [&](const HalfSpace& bevel) {
    const auto outside = [&](Vec2 p, double z) {
      return dot(bevel.outward, Vec3{p.x + low.x, p.y + low.y, z} - bevel.point) >= -on_line;
    };
    const double t = body.thickness.mm();
    return outside(edge.from, 0) && outside(edge.to, 0) && outside(edge.from, t) && outside(edge.to, t);
  });
}

void add_saw_cut(End& end, const CutEdge& edge) {
  const Vec2 d = edge.to - edge.from;
  if (!end.saw_cuts.empty()) {  // two stretches of one line are one cut
    SawCut& last = end.saw_cuts.back();
    const Vec2 along = (last.to - last.from) * (1 / norm(last.to - last.from));
    if (std::fabs(cross(along, edge.from - last.from)) <= on_line &&
        std::fabs(cross(along, edge.to - last.from)) <= on_line) {
      last.to = edge.to;
      return;
    }
  }
  end.saw_cuts.push_back({geometry::radians(std::atan2(d.x, std::fabs(d.y))), {}, edge.from, edge.to});
}

End end_of(const Walk& walk, std::size_t first, std::size_t last, const Body& body, Vec2 low) {
  End end;
  const std::size_t count = walk.points.size();
  for (std::size_t i = first; i != last; i = (i + 1) % count) {
    const CutEdge edge = cut_edge(walk.points[i], walk.points[(i + 1) % count]);
    end.edges.push_back(edge);
    if (taken_by_bevel(edge, body, low)) continue;
    if (straight_through(edge, walk.points)) {
      add_saw_cut(end, edge);
    } else {
      end.notched = true;
    }
  }
  return end;
}

Notch notch_of(const Walk& walk, std::size_t first, std::size_t last, LongEdge edge) {
  Notch notch;
  notch.edge = edge;
  notch.left = mm(std::min(walk.points[first].x, walk.points[last].x));
  notch.right = mm(std::max(walk.points[first].x, walk.points[last].x));
  for (std::size_t i = first; i < last; ++i) {
    notch.edges.push_back(cut_edge(walk.points[i], walk.points[i + 1]));
    const double y = walk.points[i].y;
    notch.depth = std::max(notch.depth, mm(edge == LongEdge::near ? y : walk.width - y));
  }
  return notch;
}

// The bevel as a cut through the end it is at.
SawCut bevel_cut(const HalfSpace& bevel, double z, double width, Vec2 low) {
  const Vec3 n = bevel.outward;
  const auto x = [&](double y) {  // where it meets the face, across the blank
    return bevel.point.x - low.x - (n.y * (y + low.y - bevel.point.y) + n.z * (z - bevel.point.z)) / n.x;
  };
  const Vec2 near{x(0), 0}, far{x(width), width};
  return {geometry::radians(std::atan2(-n.y, std::fabs(n.x))), geometry::radians(-std::asin(n.z)),
          n.x > 0 ? near : far, n.x > 0 ? far : near};
}

// What the bevels leave of the long arris at (y, z), from x = left to x = right.
double arris(double left, double right, double y, double z, const Body& body, Vec2 low) {
  for (const HalfSpace& bevel : body.bevels) {
    const Vec3 n = bevel.outward;
    const double rest = dot(n, Vec3{low.x, y + low.y, z} - bevel.point);  // at x = 0
    if (n.x > no_angle) {
      right = std::min(right, -rest / n.x);
    } else if (n.x < -no_angle) {
      left = std::max(left, -rest / n.x);
    } else if (rest > on_line) {
      return 0;  // ripped off
    }
  }
  return std::max(0.0, right - left);
}

}  // namespace

bool End::square() const {
  return !notched && saw_cuts.size() == 1 && std::fabs(saw_cuts[0].mitre.radians()) <= no_angle &&
         std::fabs(saw_cuts[0].bevel.radians()) <= no_angle;
}

std::vector<Vec2> Notch::corners(Length width) const {
  std::vector<Vec2> out;
  for (std::size_t i = 1; i < edges.size(); ++i) {
    const Vec2 p = edges[i].from;
    out.push_back({p.x, edge == LongEdge::near ? p.y : width.mm() - p.y});
  }
  return out;
}

bool Cuts::plain() const {
  return left.square() && right.square() && notches.empty() && rips.empty() && cutouts.empty() &&
         bores.empty();
}

Cuts cuts(const Body& body) {
  const geometry::Outline outline = geometry::cleaned(body.outline);
  const Vec2 low = geometry::low(outline), size = geometry::high(outline) - low;
  Cuts cuts;
  cuts.length = mm(size.x);
  cuts.width = mm(size.y);
  cuts.thickness = body.thickness;
  cuts.rounded = body.rounding > Length{};

  const Walk round = walk(outline.outer, low, size.y);
  const std::size_t count = round.points.size();
  std::vector<std::size_t> near, far;
  for (std::size_t i = 0; i < count; ++i) {
    if (round.on_near(i)) near.push_back(i);
    if (round.on_far(i)) far.push_back(i);
  }
  for (std::size_t i = 1; i < near.size(); ++i) {
    if (near[i] > near[i - 1] + 1)
      cuts.notches.push_back(notch_of(round, near[i - 1], near[i], LongEdge::near));
  }
  for (std::size_t i = far.size(); i-- > 1;) {  // the far edge is walked from right to left
    if (far[i] > far[i - 1] + 1) cuts.notches.push_back(notch_of(round, far[i - 1], far[i], LongEdge::far));
  }
  const auto x = [&](std::size_t i) { return round.points[i].x; };
  cuts.near_edge = mm(x(near.back()) - x(near.front()));
  cuts.far_edge = mm(x(far.front()) - x(far.back()));
  cuts.right = end_of(round, near.back(), far.front(), body, low);
  cuts.left = end_of(round, far.back(), near.front(), body, low);

  double shortest = size.x;
  for (const double z : {0.0, body.thickness.mm()}) {
    shortest = std::min(shortest, arris(x(near.front()), x(near.back()), 0, z, body, low));
    shortest = std::min(shortest, arris(x(far.back()), x(far.front()), size.y, z, body, low));
  }
  cuts.short_point = mm(shortest);

  for (const HalfSpace& bevel : body.bevels) {
    if (std::fabs(bevel.outward.x) > no_angle) {
      (bevel.outward.x > 0 ? cuts.right : cuts.left)
          .saw_cuts.push_back(bevel_cut(bevel, body.thickness.mm(), size.y, low));
    } else {
      cuts.rips.push_back({bevel.outward.y > 0 ? LongEdge::far : LongEdge::near,
                           geometry::radians(-std::asin(bevel.outward.z))});
    }
  }
  for (const Polygon& hole : outline.holes) {
    Polygon shifted;
    for (const Vec2 p : hole) shifted.push_back(p - low);
    cuts.cutouts.push_back(shifted);
  }
  for (geometry::Bore bore : body.bores) {
    bore.centre = bore.centre - low;
    cuts.bores.push_back(bore);
  }
  return cuts;
}

}  // namespace models
