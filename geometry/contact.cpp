#include "geometry/contact.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/convex.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

constexpr double parallel = 1e-6;  // rad: what snapping to nanometres turns an edge of a few millimetres by

// A plane with the given normal, its x along the body's x, or along y where that is the normal.
Placement plane_of(Vec3 point, Vec3 normal) {
  const Vec3 grain = std::abs(normal.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 x = normalized(grain - normal * dot(grain, normal));
  return placement(point, x, cross(normal, x));
}

Vec2 flat(const Placement& plane, Vec3 point) {
  const Vec3 p = plane.inverse_point(point);
  return {p.x, p.y};
}

// A circle as a polygon of the same area.
Polygon circle(Vec2 centre, double radius) {
  constexpr int corners = 48;
  const double step = 2 * std::numbers::pi / corners;
  const double reach = radius * std::sqrt(step / std::sin(step));
  Polygon polygon;
  for (int i = 0; i < corners; ++i)
    polygon.push_back(centre + Vec2{std::cos(i * step), std::sin(i * step)} * reach);
  return polygon;
}

// What stays flat of a face of a stick whose long edges are rounded.
Region within_rounding(const Region& region, const FlatFace& face, double radius) {
  const Outline& whole = region.front();
  const Vec2 from = low(whole), to = high(whole);
  if (std::abs(face.plane.z.x) < 0.5)  // along the grain: a strip along x is gone on both sides
    return intersection(region, {rectangle({from.x, from.y + radius}, {to.x, to.y - radius})});
  Region kept{rectangle({from.x + radius, from.y}, {to.x - radius, to.y}),
              rectangle({from.x, from.y + radius}, {to.x, to.y - radius})};
  for (const Vec2 corner : {from, Vec2{to.x, from.y}, to, Vec2{from.x, to.y}})
    kept.push_back({circle({std::clamp(corner.x, from.x + radius, to.x - radius),
                            std::clamp(corner.y, from.y + radius, to.y - radius)},
                           radius),
                    {}});
  return intersection(region, united(kept, {}));
}

bool same_plane(const FlatFace& a, const Placement& b) {
  return norm(a.plane.z - b.z) <= parallel &&
         std::abs(dot(a.plane.z, b.origin - a.plane.origin)) <= same_place;
}
bool back_to_back(const FlatFace& a, const FlatFace& b) {
  return norm(a.plane.z + b.plane.z) <= parallel &&
         std::abs(dot(a.plane.z, b.plane.origin - a.plane.origin)) <= same_place;
}

// b's region in a's plane. Facing planes see each other mirrored, so each polygon turns the other way round.
Region seen_from(const FlatFace& a, const FlatFace& b) {
  Region region = b.region;
  const auto turn = [&](Polygon& polygon) {
    for (Vec2& p : polygon) p = flat(a.plane, b.plane.point({p.x, p.y, 0}));
    std::reverse(polygon.begin(), polygon.end());
  };
  for (Outline& outline : region) {
    turn(outline.outer);
    for (Polygon& hole : outline.holes) turn(hole);
  }
  return region;
}

void set_box(FlatFace& face) {
  face.box = {};
  for (const Outline& outline : face.region)
    for (const Vec2 p : outline.outer) face.box.add(face.plane.point({p.x, p.y, 0}));
}

}  // namespace

std::vector<FlatFace> flat_faces(const Body& body) {
  std::vector<FlatFace> faces;
  for (const ConvexPiece& piece : convex_pieces(body))
    for (const ConvexPiece::Face& side : piece.faces) {
      const Placement own = plane_of(piece.points[side.loop.front()], side.outward);
      auto face =
          std::find_if(faces.begin(), faces.end(), [&](const FlatFace& f) { return same_plane(f, own); });
      if (face == faces.end()) face = faces.insert(faces.end(), {own, {}, {}});
      Outline outline;
      for (const int i : side.loop) outline.outer.push_back(flat(face->plane, piece.points[i]));
      face->region.push_back(std::move(outline));
    }
  for (FlatFace& face : faces)
    if (face.region.size() > 1) face.region = united(face.region, {});
  // Where two pieces of the body meet there is no face.
  for (std::size_t i = 0; i < faces.size(); ++i)
    for (std::size_t k = i + 1; k < faces.size(); ++k) {
      if (!back_to_back(faces[i], faces[k])) continue;
      const Region of_i = faces[i].region;
      faces[i].region = difference(of_i, seen_from(faces[i], faces[k]));
      FlatFace mirrored{faces[i].plane, of_i, {}};
      faces[k].region = difference(faces[k].region, seen_from(faces[k], mirrored));
    }
  for (FlatFace& face : faces) {
    if (std::abs(face.plane.z.z) > 0.5)
      for (const Bore& bore : body.bores)
        face.region = difference(
            face.region,
            {{circle(flat(face.plane, {bore.centre.x, bore.centre.y, 0}), bore.diameter.mm() / 2), {}}});
    if (body.rounding > Length() && !face.region.empty())
      face.region = within_rounding(face.region, face, body.rounding.mm());
    set_box(face);
  }
  std::erase_if(faces, [](const FlatFace& face) { return area(face.region).mm2 < least_area; });
  return faces;
}

FlatFace placed(const FlatFace& face, const Placement& placement) {
  FlatFace result{compose(placement, face.plane), face.region, {}};
  set_box(result);
  return result;
}

std::vector<Facing> facing(const std::vector<FlatFace>& a, const std::vector<FlatFace>& b, double most_gap) {
  std::vector<Facing> found;
  for (const FlatFace& p : a)
    for (const FlatFace& q : b) {
      if (norm(p.plane.z + q.plane.z) > parallel) continue;
      if (!near(p.box, q.box, most_gap + contact)) continue;
      const auto gap_at = [&](Vec3 point) {
        return dot(q.plane.z, q.plane.origin - point) / dot(q.plane.z, p.plane.z);
      };
      const double slack = contact + parallel * norm(q.plane.origin - p.plane.origin);
      const double roughly = gap_at(p.plane.origin);
      if (roughly < -contact - slack || roughly > most_gap + slack) continue;
      Region shared = intersection(p.region, seen_from(p, q));
      std::erase_if(shared, [](const Outline& o) { return area(o).mm2 < least_area; });
      if (shared.empty()) continue;
      const Area whole = area(shared);
      const Vec2 middle = (low(shared.front()) + high(shared.front())) * 0.5;
      const double gap = gap_at(p.plane.point({middle.x, middle.y, 0}));
      if (gap < -contact || gap > most_gap) continue;
      found.push_back({gap, p.plane, std::move(shared), whole});
    }
  return found;
}

double leaning_length(const std::vector<FlatFace>& a, const std::vector<FlatFace>& b) {
  double longest = 0;
  for (const FlatFace& q : b)
    for (const FlatFace& p : a) {
      if (!near(p.box, q.box, contact)) continue;
      for (const Outline& outline : p.region)
        for (std::size_t i = 0; i < outline.outer.size(); ++i) {
          const Vec2 from = outline.outer[i], to = outline.outer[(i + 1) % outline.outer.size()];
          const Vec3 u = q.plane.inverse_point(p.plane.point({from.x, from.y, 0}));
          const Vec3 v = q.plane.inverse_point(p.plane.point({to.x, to.y, 0}));
          const Vec2 u2{u.x, u.y}, v2{v.x, v.y};
          if (std::abs(u.z) > contact || std::abs(v.z) > contact || norm(v2 - u2) <= same_place) continue;
          // A strip of one millimetre on either side of the edge has to lie in the face: then the edge lies in its
          // midst, and the strip's area is its length.
          const Vec2 along = (v2 - u2) * (1 / norm(v2 - u2)), side{-along.y, along.x};
          const double left = area(intersection(q.region, {{{u2, v2, v2 + side, u2 + side}, {}}})).mm2;
          const double right = area(intersection(q.region, {{{u2 - side, v2 - side, v2, u2}, {}}})).mm2;
          longest = std::max(longest, std::min(left, right));
        }
    }
  return longest;
}

}  // namespace geometry
