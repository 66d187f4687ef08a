// What a building gives its flock, measured from its bodies.
#include <algorithm>
#include <cmath>
#include <limits>

#include "models/flock.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::Box;
using geometry::mm;
using geometry::rectangle;
using geometry::Region;
using geometry::Vec2;

// Less than this overhead and a bird does not count a floor as its own: Council Directive 1999/74/EC, Art. 2.
constexpr double headroom = 450;

// The room between the walls' frames, in plan.
struct Room {
  Vec2 low, high;
};
Room room_of(const Building& building, const Scene& scene) {
  Box walls[4];
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    const Part& part = building.parts[i];
    if (part.group == Group::frame && part.wall) walls[static_cast<int>(*part.wall)].add(scene.parts[i].box);
  }
  const auto& [front, right, back, left] = walls;
  return {{left.high.x, front.high.y}, {right.low.x, back.low.y}};
}

// Along the wall, from left to right in house coordinates: x for front and back, y for the others.
bool along_x(Side side) { return side == Side::front || side == Side::back; }
double low_along(const Box& box, bool x) { return x ? box.low.x : box.low.y; }
double high_along(const Box& box, bool x) { return x ? box.high.x : box.high.y; }

}  // namespace

geometry::Area floor_given(const Building& building, const Scene& scene) {
  const Room room = room_of(building, scene);
  if (!(room.low.x < room.high.x && room.low.y < room.high.y)) return {};
  Region taken;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    const Group group = building.parts[i].group;
    const bool board = building.parts[i].name == "droppings board";
    if (group != Group::nest && group != Group::extra && !board) continue;
    for (const geometry::ConvexPiece& piece : scene.parts[i].pieces) {
      const Box& box = piece.box;
      if (box.low.z < headroom && box.high.z > 0)
        taken.push_back(rectangle({box.low.x, box.low.y}, {box.high.x, box.high.y}));
    }
  }
  return geometry::area(geometry::difference({rectangle(room.low, room.high)}, taken));
}

geometry::Area run_given(const Design& design, const Building& building, const Scene& scene) {
  if (!design.run) return {};
  Box mesh;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (building.parts[i].name == "run mesh") mesh.add(scene.parts[i].box);
  // Mesh stands on the frames' outer faces, which are on three sides; the fourth is the house.
  const bool sideways = !along_x(design.run->wall);
  const double t = design.run->framing.thickness.mm(), wire = design.run->mesh.wire.mm();
  const double out = sideways ? mesh.size().x : mesh.size().y,
               across = sideways ? mesh.size().y : mesh.size().x;
  const double m2 = 1e6;
  return {(out - t - wire) * (across - 2 * (t + wire)) + design.run->existing_area * m2};
}

NestsGiven nests_given(const Building& building, const Scene& scene, const Design& design) {
  if (!design.nests) return {};
  const bool x = along_x(design.nests->wall);
  std::vector<Box> dividers;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (building.parts[i].name == "nest divider" || building.parts[i].name == "nest end" ||
        building.parts[i].name == "nest side")
      dividers.push_back(scene.parts[i].box);
  std::sort(dividers.begin(), dividers.end(),
            [&](const Box& a, const Box& b) { return low_along(a, x) < low_along(b, x); });
  NestsGiven nests;
  // Between two boxes that stand loose there is no nest.
  for (std::size_t i = 0; i + 1 < dividers.size(); i += design.nests->loose ? 2 : 1) {
    const Length width = mm(low_along(dividers[i + 1], x) - high_along(dividers[i], x));
    nests.width = i == 0 ? width : std::min(nests.width, width);
    ++nests.boxes;
  }
  if (nests.boxes == 0) return nests;
  const geometry::Vec3 size = dividers.front().size();
  nests.depth = mm(x ? size.y : size.x);
  nests.height = mm(size.z);
  return nests;
}

RoostsGiven roosts_given(const Building& building, const Scene& scene, const Design& design) {
  RoostsGiven roosts;
  if (!design.roosts) return roosts;
  const Room room = room_of(building, scene);
  const bool x = design.roosts->along_x;
  std::vector<double> centres;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    if (building.parts[i].name != "roost bar") continue;
    const Box& box = scene.parts[i].box;
    ++roosts.bars;
    roosts.length += mm(x ? box.size().x : box.size().y);
    centres.push_back(x ? box.centre().y : box.centre().x);
  }
  if (centres.empty()) return roosts;
  std::sort(centres.begin(), centres.end());
  for (std::size_t i = 0; i + 1 < centres.size(); ++i) {
    const Length apart = mm(centres[i + 1] - centres[i]);
    roosts.spacing = roosts.spacing ? std::min(*roosts.spacing, apart) : apart;
  }
  roosts.to_wall = mm(std::min(centres.front() - (x ? room.low.y : room.low.x),
                               (x ? room.high.y : room.high.x) - centres.back()));
  return roosts;
}

std::vector<BirdDoorGiven> bird_doors_given(const Design& design) {
  for (const OpeningKind kind : {OpeningKind::bird_door, OpeningKind::door}) {
    std::vector<BirdDoorGiven> doors;
    for (const Wall& wall : design.walls)
      for (const Opening& opening : wall.openings)
        if (opening.kind == kind) doors.push_back({&opening, wall.side});
    if (!doors.empty()) return doors;
  }
  return {};
}

}  // namespace models
