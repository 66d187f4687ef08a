#include "models/leaf.h"

#include <algorithm>
#include <cmath>

#include "models/cladding.h"
#include "models/leaf_context.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

std::vector<std::size_t> add_leaf_frame(const LeafContext& c) {
  const Door& door = c.opening.door;
  const double w = door.frame.width.mm(), face = c.outer_face() - door.slats.thickness.mm();
  const auto [low, high] = c.leaf;
  const auto add = [&](const char* name, Vec2 from, Vec2 to) {
    return add_leaf_stick(c, name, door.frame, from, to, door.frame.thickness.mm(), face, Group::door,
                          c.path);
  };
  std::vector<std::size_t> parts{add("stile", low, {low.x + w, high.y}),
                                 add("stile", {high.x - w, low.y}, high),
                                 add("leaf rail", {low.x + w, low.y}, {high.x - w, low.y + w}),
                                 add("leaf rail", {low.x + w, high.y - w}, {high.x - w, high.y})};
  // Rails between, no farther apart than posts in a wall.
  const double span = high.y - low.y - w;
  const int bays = std::max(1, static_cast<int>(std::ceil(span / c.design.house.post_spacing.mm() - 1e-9)));
  for (int k = 1; k < bays; ++k) {
    const double y = low.y + span * k / bays;
    parts.push_back(add("leaf rail", {low.x + w, y}, {high.x - w, y + w}));
  }
  return parts;
}

// The leaf's cladding, or the whole of a leaf that is one sheet.
std::vector<std::size_t> add_leaf_skin(const LeafContext& c) {
  const Door& door = c.opening.door;
  const geometry::Outline outline = geometry::rectangle(c.leaf.low, c.leaf.high);
  if (door.sheet) {
    const Placement back =
        geometry::compose(c.plane, geometry::shift({0, 0, c.outer_face() - door.sheet->thickness.mm()}));
    return {c.assembler.add({"leaf sheet",
                             Group::door,
                             sheet_of(*door.sheet),
                             {outline, door.sheet->thickness, {}, {}, {}},
                             back,
                             c.wall.side},
                            c.path)};
  }
  const Cladding slats{door.slats, Run::upright, c.wall.cladding.gap};
  const Placement back =
      geometry::compose(c.plane, geometry::shift({0, 0, c.outer_face() - door.slats.thickness.mm()}));
  return add_slats(c.assembler, slats_over({outline}, {}, slats), door.slats, Group::door, back, c.wall.side,
                   c.path);
}

// The line the leaf turns about: the hinges' pins, just off the face that the leaf opens to, half the reveal off
// its hinged edge.
geometry::Axis hinge_axis(const LeafContext& c) {
  const Door& door = c.opening.door;
  const double half = door.reveal.mm() / 2;
  const bool outward = door.swing == Swing::outward;
  const double pin = practice::pin_stands_out.mm();
  const double z = outward ? c.outer_face() + pin : c.outer_face() - leaf_thickness(door) - pin;
  const auto [low, high] = c.leaf;
  Vec3 point, direction;  // the direction makes positive angles open outward
  switch (door.edge) {
    case Edge::left:
      point = {low.x - half, 0, z}, direction = {0, -1, 0};
      break;
    case Edge::right:
      point = {high.x + half, 0, z}, direction = {0, 1, 0};
      break;
    case Edge::top:
      point = {0, high.y + half, z}, direction = {-1, 0, 0};
      break;
    case Edge::bottom:
      point = {0, low.y - half, z}, direction = {1, 0, 0};
      break;
  }
  if (!outward) direction = -direction;
  return {c.plane.point(point), c.plane.direction(direction)};
}

// What a leaf that is not hinged is moved by to open.
Vec3 travel_of(const LeafContext& c) {
  const Door& door = c.opening.door;
  // A leaf that is lifted off comes straight out, past its own thickness and the width of a hand.
  if (door.kind == DoorKind::lift_off) return {0, 0, leaf_thickness(door) + practice::hand.mm()};
  const double travel = slide_travel(c.opening).mm();
  if (door.edge == Edge::top) return {0, travel, 0};
  return {door.edge == Edge::left ? -travel : travel, 0, 0};
}

}  // namespace

double leaf_thickness(const Door& door) {
  return door.sheet ? door.sheet->thickness.mm() : (door.frame.thickness + door.slats.thickness).mm();
}

double LeafContext::outer_face() const {
  const Door& door = opening.door;
  if (door.kind == DoorKind::sliding) return cladding_face() + door.reveal.mm() + leaf_thickness(door);
  return wall.cladding.edge_thickness().mm();
}

std::size_t add_leaf_stick(const LeafContext& c, const std::string& name, const Lumber& lumber, Vec2 low,
                           Vec2 high, double depth, double face, Group group,
                           const std::vector<std::string>& path) {
  const Vec2 size = high - low;
  const bool upright = size.y > size.x;
  const Placement in_wall = upright
                                ? geometry::placement({high.x, low.y, face - depth}, {0, 1, 0}, {-1, 0, 0})
                                : geometry::placement({low.x, low.y, face - depth}, {1, 0, 0}, {0, 1, 0});
  return c.assembler.add(
      {name, group, stick_of(lumber),
       geometry::stick(mm(upright ? size.y : size.x), mm(upright ? size.x : size.y), mm(depth)),
       geometry::compose(c.plane, in_wall), c.wall.side},
      path);
}

LeafSize leaf_size(const Opening& opening) {
  const Vec2 low{opening.left.mm(), opening.bottom.mm()};
  const Vec2 high = low + Vec2{opening.width.mm(), opening.height.mm()};
  // A sliding leaf covers the opening by its lap; others stand inside it by their reveal.
  const double out =
      opening.door.kind == DoorKind::sliding ? opening.door.lap.mm() : -opening.door.reveal.mm();
  return {low - Vec2{out, out}, high + Vec2{out, out}};
}

Length slide_travel(const Opening& opening) {
  return (opening.door.edge == Edge::top ? opening.height : opening.width) + opening.door.lap;
}

SliderReach slider_reach(const Opening& opening) {
  const LeafSize leaf = leaf_size(opening);
  const Length travel = slide_travel(opening), low = mm(leaf.low.x), high = mm(leaf.high.x);
  switch (opening.door.edge) {
    case Edge::left:
      return {low - travel, high};
    case Edge::right:
      return {low, high + travel};
    default:
      return {low, high};
  }
}

void add_leaf(Assembler& assembler, const Design& design, const Wall& wall, const Opening& opening) {
  const Door& door = opening.door;
  const LeafContext c{assembler,
                      design,
                      wall,
                      opening,
                      wall_plane(design.house, wall.side),
                      leaf_size(opening),
                      {std::string(name(wall.side)) + " wall", opening.name}};
  Mover mover;
  mover.name = opening.name;
  mover.kind = door.kind;
  mover.closes = opening.kind;
  mover.wall = wall.side;
  mover.line = opening.line;
  mover.reveal = door.reveal;
  if (!door.sheet) mover.parts = add_leaf_frame(c);
  FrameView view{opening.name + " leaf",
                 "leaf",
                 geometry::compose(c.plane, geometry::shift({c.leaf.low.x, c.leaf.low.y, 0})),
                 mm(c.leaf.high.x - c.leaf.low.x),
                 mm(c.leaf.high.y - c.leaf.low.y),
                 mover.parts,
                 {}};
  for (const std::size_t part : add_leaf_skin(c)) mover.parts.push_back(part);
  if (door.kind == DoorKind::hinged) {
    mover.axis = hinge_axis(c);
    mover.opens = door.opens;
    add_hardware(c, mover);
  } else {
    if (door.kind == DoorKind::sliding) mover.ignored.push_back(add_guides(c));
    mover.travel = c.plane.direction(travel_of(c));
  }
  add_ramp(c);
  assembler.add(std::move(mover));
  if (!door.sheet) assembler.add(std::move(view));
}

}  // namespace models
