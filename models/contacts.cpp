#include "models/contacts.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

struct Rectangle {
  Vec2 x{1, 0};  // unit, along its longer side
  Vec2 centre;
  Vec2 size;  // longer side first
};

// The least bounding rectangle has a side along one of the outline's edges; of equal ones the first edge's.
Rectangle bounding_rectangle(const geometry::Region& region) {
  Rectangle best;
  double least = INFINITY;
  for (const geometry::Outline& outline : region)
    for (std::size_t i = 0; i < outline.outer.size(); ++i) {
      const Vec2 edge = outline.outer[(i + 1) % outline.outer.size()] - outline.outer[i];
      if (norm(edge) <= geometry::same_place) continue;
      const Vec2 x = edge * (1 / norm(edge)), y{-x.y, x.x};
      Vec2 from{INFINITY, INFINITY}, to{-INFINITY, -INFINITY};
      for (const geometry::Outline& o : region)
        for (const Vec2 p : o.outer) {
          from = {std::min(from.x, dot(p, x)), std::min(from.y, dot(p, y))};
          to = {std::max(to.x, dot(p, x)), std::max(to.y, dot(p, y))};
        }
      const Vec2 size = to - from, middle = (from + to) * 0.5;
      if (size.x * size.y >= least - geometry::same_place) continue;
      least = size.x * size.y;
      best = {x, x * middle.x + y * middle.y, size};
    }
  if (best.size.x < best.size.y) {
    best.x = {-best.x.y, best.x.x};
    std::swap(best.size.x, best.size.y);
  }
  // One of the two ways along the side, whatever edge it was found by.
  if (best.x.x < -geometry::rounding || (best.x.x <= geometry::rounding && best.x.y < 0))
    best.x = best.x * -1.0;
  return best;
}

Contact contact_of(std::size_t a, std::size_t b, geometry::Facing&& facing) {
  const Rectangle around = bounding_rectangle(facing.region);
  const Vec2 x = around.x, y{-x.y, x.x};
  Contact contact{a, b, mm(facing.gap), {}, mm(around.size.x), mm(around.size.y), {}, facing.area};
  contact.plane = geometry::compose(
      facing.plane, geometry::placement({around.centre.x, around.centre.y, 0}, {x.x, x.y, 0}, {y.x, y.y, 0}));
  const auto turn = [&](geometry::Polygon& polygon) {
    for (Vec2& p : polygon) p = {dot(p - around.centre, x), dot(p - around.centre, y)};
  };
  for (geometry::Outline& outline : facing.region) {
    turn(outline.outer);
    for (geometry::Polygon& hole : outline.holes) turn(hole);
  }
  contact.region = std::move(facing.region);
  return contact;
}

}  // namespace

std::vector<std::vector<geometry::FlatFace>> standing_faces(const Building& building) {
  std::vector<std::vector<geometry::FlatFace>> of_mark;
  of_mark.reserve(building.marks.size());
  for (const Mark& mark : building.marks) of_mark.push_back(geometry::flat_faces(mark.body));
  std::vector<std::vector<geometry::FlatFace>> all;
  all.reserve(building.parts.size());
  for (const Part& part : building.parts) {
    std::vector<geometry::FlatFace> faces;
    for (const geometry::FlatFace& face : of_mark[part.mark])
      faces.push_back(geometry::placed(face, part.placement));
    all.push_back(std::move(faces));
  }
  return all;
}

std::vector<Contact> contacts(const Building& building, const Scene& scene, double most_gap) {
  const std::vector<std::vector<geometry::FlatFace>> faces = standing_faces(building);
  std::vector<Contact> found;
  for (const auto& [a, b] : near_pairs(scene, most_gap + geometry::contact))
    for (geometry::Facing& facing : geometry::facing(faces[a], faces[b], most_gap))
      found.push_back(contact_of(a, b, std::move(facing)));
  return found;
}

std::vector<Joint> joints(const Building& building, const Scene& scene) {
  std::vector<Joint> joints;
  for (Contact& contact : contacts(building, scene, geometry::contact)) {
    if (joints.empty() || joints.back().a != contact.a || joints.back().b != contact.b)
      joints.push_back({contact.a, contact.b, {}, {}});
    joints.back().area.mm2 += contact.area.mm2;
    joints.back().contacts.push_back(std::move(contact));
  }
  return joints;
}

}  // namespace models
