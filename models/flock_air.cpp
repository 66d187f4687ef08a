// How much free opening the air has: through mesh, and through the gaps between the boards of the walls.
#include <algorithm>
#include <cmath>

#include "models/flock.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::Box;
using geometry::Outline;
using geometry::Polygon;
using geometry::rectangle;
using geometry::Region;
using geometry::Vec2;

constexpr double level = 1e-9;  // a plane's normal with no more than this upwards is level
constexpr double across_wall =
    150;  // mm; from mesh on the inside of a frame to the cladding's face, and no farther

// Counter-clockwise, by the monotone chain; fewer than three points when the points lie on a line.
Polygon hull(Polygon points) {
  std::sort(points.begin(), points.end(), [](Vec2 a, Vec2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  Polygon chain;
  for (const bool back : {false, true}) {
    const std::size_t base = chain.size();
    for (const Vec2 p : points) {
      while (chain.size() >= base + 2 && cross(chain.back() - chain[chain.size() - 2], p - chain.back()) <= 0)
        chain.pop_back();
      chain.push_back(p);
    }
    chain.pop_back();
    if (!back) std::reverse(points.begin(), points.end());
  }
  return chain;
}

// What a part covers when it is seen square to the plane.
void add_shadow(Region& shadow, const Scene::Standing& part, const Placement& plane) {
  for (const geometry::ConvexPiece& piece : part.pieces) {
    Polygon points;
    for (const Vec3& p : piece.points)
      points.push_back({dot(p - plane.origin, plane.x), dot(p - plane.origin, plane.y)});
    Polygon outline = hull(std::move(points));
    if (outline.size() >= 3) shadow.push_back({std::move(outline), {}});
  }
}

bool is_mesh(const Building& building, std::size_t part) {
  return building.mark_of(part).material.form == Material::Form::mesh;
}

// Mesh that closes the house, not the run and not the ground.
bool closes_house(const Building& building, std::size_t part) {
  const std::string& name = building.parts[part].name;
  return is_mesh(building, part) && (name == "mesh" || name == "vent mesh");
}

// Whether the part may stand before or behind the mesh: in a wall, what belongs to the wall; over a ridge, the rafters
// and the ridge board that it lies on.
bool may_cover(const Building& building, const Scene& scene, std::size_t part, std::size_t mesh) {
  const Part &one = building.parts[part], &other = building.parts[mesh];
  if (is_mesh(building, part) || one.group == Group::nest || one.group == Group::roost) return false;
  if (std::abs(other.placement.z.z) > level)
    return one.group == Group::roof && near(scene.parts[part].box, scene.parts[mesh].box, 1);
  return one.wall && (!other.wall || one.wall == other.wall) &&
         near(scene.parts[part].box, scene.parts[mesh].box, across_wall);
}

// The mesh's area that nothing stands close before or behind, seen square to an upright mesh and from above to one over
// the ridge, where only what is over the room counts.
double free_area(const Design& design, const Building& building, const Scene& scene, std::size_t mesh) {
  const bool upright = std::abs(building.parts[mesh].placement.z.z) <= level;
  const Placement view = upright ? building.parts[mesh].placement : Placement{};
  Region area, shadow;
  add_shadow(area, scene.parts[mesh], view);
  if (!upright) {
    const double t = design.house.framing.thickness.mm();
    area = geometry::intersection(
        area, {rectangle({t, t}, {design.house.width.mm() - t, design.house.depth.mm() - t})});
  }
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (may_cover(building, scene, i, mesh)) add_shadow(shadow, scene.parts[i], view);
  return geometry::area(geometry::difference(area, shadow)).mm2;
}

// What shows light in a wall, from the floor to the top rail, where no mesh is.
double gaps_in(const Design& design, const Building& building, const Scene& scene, Side side) {
  const Placement plane = wall_plane(design.house, side);
  const double t = design.house.framing.thickness.mm();
  Region shadow;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    const Part& part = building.parts[i];
    // Nests that hang outside close their mouth.
    if (part.wall == side && part.group != Group::roost) add_shadow(shadow, scene.parts[i], plane);
  }
  const Region room{rectangle(
      {t, 0}, {wall_length(design.house, side).mm() - t, wall_top(design.house, design.roof, side).mm()})};
  double open = 0;
  // A strip narrower than a millimetre is a joint, not a gap.
  for (const Outline& outline : geometry::difference(room, shadow)) {
    const Vec2 size = high(outline) - low(outline);
    if (std::min(size.x, size.y) >= 1) open += geometry::area(outline).mm2;
  }
  return open;
}

}  // namespace

double free_share(Length opening, Length wire) {
  const double line = opening / (opening + wire);
  return line * line;
}

AirGiven air_given(const Design& design, const Building& building, const Scene& scene) {
  AirGiven air;
  const House& house = design.house;
  if (std::min(house.width, house.depth) <= house.framing.thickness * 2) return air;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    if (!closes_house(building, i)) continue;
    const Mark& mark = building.mark_of(i);
    air.mesh.mm2 +=
        free_area(design, building, scene, i) * free_share(mark.material.opening, mark.body.thickness);
  }
  for (const Side side : {Side::front, Side::right, Side::back, Side::left})
    air.gaps.mm2 += gaps_in(design, building, scene, side);
  return air;
}

}  // namespace models
