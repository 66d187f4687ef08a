#include "geometry/drawn_body.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "geometry/tolerance.h"

namespace geometry {
namespace {

constexpr int arcs_to_the_round = 48;

// How far from an edge its surroundings are looked at: across the face, and off it. The ratio sets the
// sharpest edge that is still seen as one (3 degrees).
constexpr double across_face = 0.02, off_face = 0.001;

struct Plane {
  Vec3 outward;
  double offset = 0;  // dot(outward, p) == offset on it
};
double above(const Plane& plane, Vec3 p) { return dot(plane.outward, p) - plane.offset; }

// A body whose curves have become facets: an outline pushed up from z = 0, cut by bevels.
struct Facets {
  Outline outline;
  double height = 0;
  std::vector<Plane> bevels;
  std::vector<std::vector<bool>> smooth;  // of each polygon's corners: whether the side edge there is
  Placement placement;                    // to the body's coordinates

  [[nodiscard]] std::vector<const Polygon*> polygons() const {
    std::vector<const Polygon*> out{&outline.outer};
    for (const Polygon& hole : outline.holes) out.push_back(&hole);
    return out;
  }
};

bool holds(const std::vector<const Polygon*>& polygons, Vec2 p) {
  bool inside = false;
  for (const Polygon* polygon : polygons) {
    for (std::size_t i = 0; i < polygon->size(); ++i) {
      const Vec2 a = (*polygon)[i], b = (*polygon)[(i + 1) % polygon->size()];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) inside = !inside;
    }
  }
  return inside;
}

bool holds(const Facets& facets, Vec3 p) {
  return p.z > 0 && p.z < facets.height &&
         std::all_of(facets.bevels.begin(), facets.bevels.end(),
                     [&](const Plane& bevel) { return above(bevel, p) < 0; }) &&
         holds(facets.polygons(), {p.x, p.y});
}

Polygon circle(Vec2 centre, double radius) {  // clockwise, as a hole is
  Polygon out;
  for (int i = 0; i < arcs_to_the_round; ++i) {
    const double angle = -2 * std::numbers::pi * i / arcs_to_the_round;
    out.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
  }
  return out;
}

// A rounded stick, seen along its grain: z runs along x, x along y, y along z of the body.
Facets rounded_stick(const Body& body) {
  const Box box = blank(body);
  const double r = std::min({body.rounding.mm(), box.size().y / 2, box.size().z / 2});
  Facets out;
  out.height = box.size().x;
  out.placement = placement({box.low.x, 0, 0}, {0, 1, 0}, {0, 0, 1});
  out.smooth.emplace_back();
  const Vec2 corners[] = {{box.high.y - r, box.high.z - r},
                          {box.low.y + r, box.high.z - r},
                          {box.low.y + r, box.low.z + r},
                          {box.high.y - r, box.low.z + r}};
  constexpr int steps = arcs_to_the_round / 4;
  for (int corner = 0; corner < 4; ++corner) {
    for (int i = 0; i <= steps; ++i) {
      const double angle = (corner + static_cast<double>(i) / steps) * std::numbers::pi / 2;
      const Vec2 p = corners[corner] + Vec2{std::cos(angle), std::sin(angle)} * r;
      Polygon& outer = out.outline.outer;
      if (!outer.empty() && norm(outer.back() - p) < same_shape) continue;
      outer.push_back(p);
      out.smooth.back().push_back(true);
    }
  }
  Polygon& outer = out.outline.outer;
  if (norm(outer.front() - outer.back()) < same_shape) {
    outer.pop_back();
    out.smooth.back().pop_back();
  }
  return out;
}

Facets facets_of(const Body& body) {
  if (body.rounding.mm() > same_shape) return rounded_stick(body);
  Facets out{body.outline, body.thickness.mm(), {}, {}, {}};
  for (const HalfSpace& bevel : body.bevels)
    out.bevels.push_back({bevel.outward, dot(bevel.outward, bevel.point)});
  for (const Polygon* polygon : out.polygons()) out.smooth.emplace_back(polygon->size(), false);
  for (const Bore& bore : body.bores) {
    out.outline.holes.push_back(circle(bore.centre, bore.diameter.mm() / 2));
    out.smooth.emplace_back(out.outline.holes.back().size(), true);
  }
  return out;
}

class Edges {
 public:
  explicit Edges(const Facets& facets) : facets_(facets), polygons_(facets.polygons()) {
    planes_ = {{{0, 0, -1}, 0}, {{0, 0, 1}, facets.height}};
    for (const Polygon* polygon : polygons_) {
      for (std::size_t i = 0; i < polygon->size(); ++i) {
        const Vec2 a = (*polygon)[i], along = (*polygon)[(i + 1) % polygon->size()] - a;
        const Vec2 outward = Vec2{along.y, -along.x} * (1 / norm(along));
        planes_.push_back({{outward.x, outward.y, 0}, dot(outward, a)});
      }
    }
    planes_.insert(planes_.end(), facets.bevels.begin(), facets.bevels.end());
  }

  [[nodiscard]] std::vector<DrawnEdge> find() {
    for (std::size_t k = 0; k < polygons_.size(); ++k) {
      const Polygon& polygon = *polygons_[k];
      for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2 p = polygon[i], q = polygon[(i + 1) % polygon.size()];
        const double h = facets_.height;
        add({p.x, p.y, 0}, {q.x, q.y, 0}, false);
        add({p.x, p.y, h}, {q.x, q.y, h}, false);
        add({p.x, p.y, 0}, {p.x, p.y, h}, facets_.smooth[k][i]);
      }
    }
    // Where a bevel meets anything else.
    const std::size_t first = planes_.size() - facets_.bevels.size();
    for (std::size_t k = first; k < planes_.size(); ++k)
      for (std::size_t f = 0; f < k; ++f) add_crossing(planes_[k], planes_[f]);
    return std::move(out_);
  }

 private:
  // The segment as far as no bevel cuts it away, with the strips beside it.
  void add(Vec3 a, Vec3 b, bool smooth) {
    double from = 0, to = 1;
    for (const Plane& bevel : facets_.bevels) {
      const double start = above(bevel, a) - same_place, step = above(bevel, b) - above(bevel, a);
      if (std::fabs(step) < rounding) {
        if (start > 0) return;
      } else if (step > 0) {
        to = std::min(to, -start / step);
      } else {
        from = std::max(from, -start / step);
      }
    }
    DrawnEdge edge{a + (b - a) * from, a + (b - a) * to, {}, smooth};
    if (from >= to || norm(edge.b - edge.a) < same_shape) return;
    add_strips(edge);
    if (edge.strips.size() < 2) return;
    const bool flat = edge.strips.size() == 2 && norm(edge.strips[0].outward - edge.strips[1].outward) < 1e-6;
    const bool known = std::any_of(out_.begin(), out_.end(), [&](const DrawnEdge& other) {
      return (norm(other.a - edge.a) < same_shape && norm(other.b - edge.b) < same_shape) ||
             (norm(other.a - edge.b) < same_shape && norm(other.b - edge.a) < same_shape);
    });
    if (!flat && !known) out_.push_back(std::move(edge));
  }

  // What stands round the edge's middle decides which faces meet there.
  void add_strips(DrawnEdge& edge) const {
    const Vec3 along = normalized(edge.b - edge.a), middle = (edge.a + edge.b) * 0.5;
    for (const Plane& plane : planes_) {
      if (std::fabs(above(plane, edge.a)) > same_place || std::fabs(above(plane, edge.b)) > same_place)
        continue;
      for (const double sense : {1.0, -1.0}) {
        const Vec3 into = cross(plane.outward, along) * sense, beside = middle + into * across_face;
        const bool here = holds(facets_, beside - plane.outward * off_face) &&
                          !holds(facets_, beside + plane.outward * off_face);
        const bool known = std::any_of(edge.strips.begin(), edge.strips.end(), [&](const auto& strip) {
          return norm(strip.outward - plane.outward) < 1e-9 && norm(strip.into - into) < 1e-6;
        });
        if (here && !known) edge.strips.push_back({plane.outward, into});
      }
    }
  }

  // The line in which two planes meet, as far as it runs within the blank.
  void add_crossing(const Plane& p, const Plane& q) {
    const Vec3 direction = cross(p.outward, q.outward);
    if (norm(direction) < 1e-6) return;
    const Vec3 along = normalized(direction);
    const double sine2 = dot(direction, direction);
    const Vec3 point =
        (cross(q.outward, direction) * p.offset + cross(direction, p.outward) * q.offset) / sine2;
    double low = -INFINITY, high = INFINITY;
    if (std::fabs(along.z) > rounding) {
      low = std::min((0 - point.z) / along.z, (facets_.height - point.z) / along.z);
      high = std::max((0 - point.z) / along.z, (facets_.height - point.z) / along.z);
    }
    std::vector<double> stops;
    const Vec2 start{point.x, point.y}, step{along.x, along.y};
    for (const Polygon* polygon : polygons_) {
      for (std::size_t i = 0; i < polygon->size(); ++i) {
        const Vec2 a = (*polygon)[i], side = (*polygon)[(i + 1) % polygon->size()] - a;
        const double across = cross(step, side);
        if (std::fabs(across) < rounding * norm(side)) {  // alongside: its ends are stops
          if (std::fabs(cross(a - start, step)) > same_place || norm(step) < rounding) continue;
          stops.push_back(dot(a - start, step) / dot(step, step));
          stops.push_back(dot(a + side - start, step) / dot(step, step));
          continue;
        }
        const double u = cross(a - start, step) / across;
        if (u > -1e-9 && u < 1 + 1e-9) stops.push_back(cross(a - start, side) / across);
      }
    }
    if (norm(step) < rounding) stops = {low, high};
    if (std::isfinite(low)) {
      for (double& stop : stops) stop = std::clamp(stop, low, high);
    }
    std::sort(stops.begin(), stops.end());
    for (std::size_t i = 0; i + 1 < stops.size(); ++i)
      if (stops[i + 1] - stops[i] > same_shape)
        add(point + along * stops[i], point + along * stops[i + 1], false);
  }

  const Facets& facets_;
  std::vector<const Polygon*> polygons_;
  std::vector<Plane> planes_;  // bottom, top, sides, bevels
  std::vector<DrawnEdge> out_;
};

}  // namespace

DrawnBody drawn_body(const Body& body) {
  const Facets facets = facets_of(body);
  DrawnBody out;
  out.edges = Edges(facets).find();
  Body plane_faced{facets.outline,
                   mm(facets.height),
                   body.rounding.mm() > same_shape ? std::vector<HalfSpace>{} : body.bevels,
                   {},
                   {}};
  for (const ConvexPiece& piece : convex_pieces(plane_faced))
    out.pieces.push_back(placed(piece, facets.placement));
  for (DrawnEdge& edge : out.edges) {
    edge.a = facets.placement.point(edge.a);
    edge.b = facets.placement.point(edge.b);
    for (DrawnEdge::Strip& strip : edge.strips)
      strip = {facets.placement.direction(strip.outward), facets.placement.direction(strip.into)};
  }
  return out;
}

}  // namespace geometry
