#include <algorithm>
#include <cmath>

#include "models/grounds.h"
#include "models/leaf_context.h"
#include "models/practice.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

// Envelopes of a small butt hinge's plate and of a barrel bolt, mm: common practice.
constexpr double plate_long = 60, plate_wide = practice::hinge_plate.mm(), plate_thick = 2;
constexpr double bolt_long = 75, bolt_wide = 25, bolt_thick = 14;

// A plain body on the wall's or the leaf's outer face.
std::size_t add_plate(const LeafContext& c, const char* name, Vec2 low, Vec2 size, double thick,
                      double face) {
  return c.assembler.add({name,
                          Group::hardware,
                          {name, Material::Form::other},
                          {geometry::rectangle(mm(size.x), mm(size.y)), mm(thick), {}, {}, {}},
                          geometry::compose(c.plane, geometry::shift({low.x, low.y, face})),
                          c.wall.side},
                         c.path);
}

}  // namespace

void add_hardware(const LeafContext& c, Mover& mover) {
  const Door& door = c.opening.door;
  if (door.kind != DoorKind::hinged || door.swing != Swing::outward) return;
  const bool upright = door.edge == Edge::left || door.edge == Edge::right;
  const auto [low, high] = c.leaf;
  const double reveal = door.reveal.mm(), face = c.outer_face();
  // `along` runs up the hinged edge, `across` from it into the leaf; both in the wall's plane.
  const double from = upright ? low.y : low.x, to = upright ? high.y : high.x;
  const auto place = [&](double along, double across, double length, double width, bool on_wall) {
    // Distance from the hinged edge, into the leaf (positive) or out over the wall.
    const double near_edge = on_wall ? -reveal - across - width : across;
    Vec2 corner, size = upright ? Vec2{width, length} : Vec2{length, width};
    switch (door.edge) {
      case Edge::left:
        corner = {low.x + near_edge, along};
        break;
      case Edge::right:
        corner = {high.x - near_edge - width, along};
        break;
      case Edge::bottom:
        corner = {along, low.y + near_edge};
        break;
      case Edge::top:
        corner = {along, high.y - near_edge - width};
        break;
    }
    return std::pair{corner, size};
  };
  const double edge = std::min(100.0, (to - from) / 5), length = std::min(plate_long, (to - from) / 4);
  for (const double along : {from + edge, to - edge - length}) {
    const auto [on_leaf, size] = place(along, 0, length, plate_wide, false);
    mover.parts.push_back(add_plate(c, "hinge plate", on_leaf, size, plate_thick, face));
    const auto [on_wall, same] = place(along, 0, length, plate_wide, true);
    mover.ignored.push_back(add_plate(c, "hinge plate", on_wall, same, plate_thick, face));
  }
  // The bolt on the leaf, its length across, at the middle of the free edge.
  const double depth = upright ? high.x - low.x : high.y - low.y;
  const auto [corner, size] = place((from + to - bolt_wide) / 2, std::max(0.0, depth - bolt_long), bolt_wide,
                                    std::min(bolt_long, depth), false);
  mover.parts.push_back(add_plate(c, "bolt", corner, size, bolt_thick, face));
}

void add_ramp(const LeafContext& c) {
  if (!c.opening.ramp) return;
  const double t = c.opening.ramp->thickness.mm(), length = c.opening.ramp_length.mm();
  const bool slides = c.opening.door.kind == DoorKind::sliding;
  // Under the guide of a leaf that slides; else so low that the leaf swings out over it.
  const double drop = slides ? c.opening.door.lap.mm() + c.design.house.framing.thickness.mm() : t;
  const double top = c.opening.bottom.mm() - drop, height = top - ground_level(c.design);
  // Lying on the ground at its foot, leaning against the wall with the lower edge of its head.
  const double sine = std::min(0.95, height / length), cosine = std::sqrt(1 - sine * sine);
  const Vec3 down{0, -sine, cosine},
      up{0, cosine, sine};  // along the plank, and out of its upper face; wall coordinates
  const Vec3 head{c.opening.left.mm(), top, c.cladding_face() + t * sine};
  // Body: x down the plank, y along the wall, z = x cross y.
  const Vec3 along{-1, 0, 0};
  const Vec3 normal = cross(down, along);
  const Vec3 origin = head + Vec3{c.opening.width.mm(), 0, 0} - (dot(normal, up) > 0 ? normal * t : Vec3{});
  c.assembler.add(
      {"ramp",
       Group::door,
       sheet_of(*c.opening.ramp),
       {geometry::rectangle(c.opening.ramp_length, c.opening.width), c.opening.ramp->thickness, {}, {}, {}},
       geometry::compose(c.plane, geometry::placement(origin, down, along)),
       c.wall.side},
      {c.path[0], c.opening.name + " ramp"});
}

}  // namespace models
