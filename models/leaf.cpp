#include "models/leaf.h"

#include <algorithm>
#include <cmath>

#include "models/cladding.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::Vec2;

// Everything about one leaf that its makers need.
struct Context {
  Assembler& assembler;
  const Design& design;
  const Wall& wall;
  const Opening& opening;
  Placement plane;  // of the wall
  LeafSize leaf;
  std::vector<std::string> path;  // of the leaf's assembly
};

double cladding_face(const Context& c) { return c.wall.cladding.thickness().mm(); }
double leaf_thickness(const Door& door) { return (door.frame.thickness + door.slats.thickness).mm(); }

// z of the leaf's outer face in wall coordinates.
double outer_face(const Context& c) {
  const Door& door = c.opening.door;
  return door.kind == DoorKind::hinged ? cladding_face(c)
                                       : cladding_face(c) + door.reveal.mm() + leaf_thickness(door);
}

// A stick in the wall's plane, its outer face at z = face.
std::size_t add_stick(const Context& c, const std::string& name, const Lumber& lumber, Vec2 low, Vec2 high,
                      double depth, double face, Group group, const std::vector<std::string>& path) {
  const Vec2 size = high - low;
  const bool upright = size.y > size.x;
  const Placement in_wall = upright
                                ? geometry::placement({high.x, low.y, face - depth}, {0, 1, 0}, {-1, 0, 0})
                                : geometry::placement({low.x, low.y, face - depth}, {1, 0, 0}, {0, 1, 0});
  return c.assembler.add({name, group, stick_of(lumber),
                          geometry::stick(geometry::mm(upright ? size.y : size.x),
                                          geometry::mm(upright ? size.x : size.y), geometry::mm(depth)),
                          geometry::compose(c.plane, in_wall), c.wall.side},
                         path);
}

std::vector<std::size_t> add_leaf_frame(const Context& c) {
  const Door& door = c.opening.door;
  const double w = door.frame.width.mm(), face = outer_face(c) - door.slats.thickness.mm();
  const auto [low, high] = c.leaf;
  const auto add = [&](const char* name, Vec2 from, Vec2 to) {
    return add_stick(c, name, door.frame, from, to, door.frame.thickness.mm(), face, Group::door, c.path);
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

// The line the leaf turns about: the hinges' pins, just off the face that the leaf opens to, half the reveal off
// its hinged edge.
geometry::Axis hinge_axis(const Context& c) {
  const Door& door = c.opening.door;
  const double half = door.reveal.mm() / 2;
  const bool outward = door.swing == Swing::outward;
  const double pin = practice::pin_stands_out.mm();
  const double z = outward ? outer_face(c) + pin : outer_face(c) - leaf_thickness(door) - pin;
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

// Above and below a sliding leaf: a spacer as thick as the leaf with its play, and a keeper strip over the
// leaf's edge. The leaf stands on the lower spacer. Returns the lower spacer.
std::size_t add_guides(const Context& c) {
  const Door& door = c.opening.door;
  const double play = door.reveal.mm(), lap = practice::keeper_lap.mm(), face = cladding_face(c);
  const double spacer_height = c.design.house.framing.thickness.mm();
  const double spacer_depth = leaf_thickness(door) + 2 * play;
  const SliderReach reach = slider_reach(c.opening);
  const double from = reach.from.mm(), to = reach.to.mm();
  const std::vector<std::string> path{c.path[0], c.opening.name + " guides"};
  const auto spacer = [&](double y) {
    return add_stick(c, "guide spacer", c.design.house.framing, {from, y}, {to, y + spacer_height},
                     spacer_depth, face + spacer_depth, Group::door, path);
  };
  const auto keeper = [&](double y) {
    const double depth = door.frame.thickness.mm();
    add_stick(c, "guide keeper", door.frame, {from, y}, {to, y + spacer_height + lap}, depth,
              face + spacer_depth + depth, Group::door, path);
  };
  const double below = c.leaf.low.y - spacer_height, above = c.leaf.high.y + play;
  const std::size_t lower = spacer(below);
  keeper(below);
  spacer(above);
  keeper(above - lap);
  return lower;
}

}  // namespace

LeafSize leaf_size(const Opening& opening) {
  const Vec2 low{opening.left.mm(), opening.bottom.mm()};
  const Vec2 high = low + Vec2{opening.width.mm(), opening.height.mm()};
  // A hinged leaf stands inside the opening by its reveal; a sliding one covers it by its lap.
  const double out =
      opening.door.kind == DoorKind::hinged ? -opening.door.reveal.mm() : opening.door.lap.mm();
  return {low - Vec2{out, out}, high + Vec2{out, out}};
}

Length slide_travel(const Opening& opening) { return opening.width + opening.door.lap; }

SliderReach slider_reach(const Opening& opening) {
  const LeafSize leaf = leaf_size(opening);
  const Length travel = slide_travel(opening);
  const bool left = opening.door.edge == Edge::left;
  return {geometry::mm(leaf.low.x) - (left ? travel : Length()),
          geometry::mm(leaf.high.x) + (left ? Length() : travel)};
}

void add_leaf(Assembler& assembler, const Design& design, const Wall& wall, const Opening& opening) {
  const std::string wall_name = std::string(name(wall.side)) + " wall";
  const Door& door = opening.door;
  const Context c{assembler,
                  design,
                  wall,
                  opening,
                  wall_plane(design.house, wall.side),
                  leaf_size(opening),
                  {wall_name, opening.name}};
  std::vector<std::size_t> parts = add_leaf_frame(c);
  FrameView view{opening.name + " leaf",
                 "leaf",
                 geometry::compose(c.plane, geometry::shift({c.leaf.low.x, c.leaf.low.y, 0})),
                 geometry::mm(c.leaf.high.x - c.leaf.low.x),
                 geometry::mm(c.leaf.high.y - c.leaf.low.y),
                 parts,
                 {}};
  const Cladding slats{door.slats, Run::upright, wall.cladding.gap};
  const Placement back =
      geometry::compose(c.plane, geometry::shift({0, 0, outer_face(c) - door.slats.thickness.mm()}));
  for (const std::size_t part :
       add_slats(assembler, slats_over({geometry::rectangle(c.leaf.low, c.leaf.high)}, {}, slats), door.slats,
                 Group::door, back, wall.side, c.path))
    parts.push_back(part);

  Mover mover;
  mover.name = opening.name;
  mover.kind = door.kind;
  mover.closes = opening.kind;
  mover.wall = wall.side;
  mover.line = opening.line;
  mover.parts = parts;
  mover.reveal = door.reveal;
  if (door.kind == DoorKind::hinged) {
    mover.axis = hinge_axis(c);
    mover.opens = door.opens;
  } else {
    mover.ignored.push_back(add_guides(c));
    const double travel = slide_travel(opening).mm();
    mover.travel = c.plane.direction({door.edge == Edge::left ? -travel : travel, 0, 0});
  }
  assembler.add(std::move(mover));
  assembler.add(std::move(view));
}

}  // namespace models
