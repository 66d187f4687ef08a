#include "models/vents.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/furniture.h"
#include "models/wall_plane.h"

namespace models {

using geometry::mm;
using geometry::Vec2;

std::vector<Opening> wall_openings(const Design& design, const Wall& wall) {
  std::vector<Opening> openings = wall.openings;
  if (design.nests && design.nests->outside && design.nests->wall == wall.side) {
    const Nests& n = *design.nests;
    Opening mouth;
    mouth.kind = OpeningKind::nest_mouth;
    mouth.name = "nest mouth";
    mouth.line = n.line;
    // Between the outermost boxes' inner faces; the lip closes its foot.
    mouth.left = n.left + n.panel.thickness;
    mouth.width = row_length(n) - n.panel.thickness * 2;
    mouth.bottom = n.bottom;
    mouth.height = n.height;
    openings.push_back(mouth);
  }
  std::stable_sort(openings.begin(), openings.end(),
                   [](const Opening& a, const Opening& b) { return a.left < b.left; });
  return openings;
}

geometry::Outline opening_outline(const Opening& opening) {
  const Vec2 low{opening.left.mm(), opening.bottom.mm()};
  const Vec2 high = low + Vec2{opening.width.mm(), opening.height.mm()};
  if (opening.kind != OpeningKind::round_vent) return geometry::rectangle(low, high);
  constexpr int corners = 64;
  const double radius = opening.width.mm() / 2 / std::cos(std::numbers::pi / corners);
  const Vec2 centre = (low + high) * 0.5;
  geometry::Outline outline;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i + 0.5) / corners;
    outline.outer.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
  }
  return outline;
}

void add_vent(Assembler& assembler, const Design& design, const Wall& wall, const Opening& opening) {
  const Placement plane = wall_plane(design.house, wall.side);
  const std::vector<std::string> path{std::string(name(wall.side)) + " wall", opening.name};
  const double inside = -design.house.framing.thickness.mm(), lap = opening.battens.width.mm();
  const Vec2 low = Vec2{opening.left.mm(), opening.bottom.mm()} - Vec2{lap, lap};
  const Vec2 size{opening.width.mm() + 2 * lap, opening.height.mm() + 2 * lap};

  const Length thickness = opening.mesh ? opening.mesh->wire : opening.pane->thickness;
  const Material material = opening.mesh ? mesh_of(*opening.mesh) : sheet_of(*opening.pane);
  assembler.add({opening.mesh ? "mesh" : "pane",
                 Group::mesh,
                 material,
                 {geometry::rectangle(mm(size.x), mm(size.y)), thickness, {}, {}, {}},
                 geometry::compose(plane, geometry::shift({low.x, low.y, inside - thickness.mm()})),
                 wall.side},
                path);

  const double back = inside - thickness.mm() - opening.battens.thickness.mm();
  const auto batten = [&](bool upright, Vec2 from, double length) {
    const Placement in_wall = upright
                                  ? geometry::placement({from.x + lap, from.y, back}, {0, 1, 0}, {-1, 0, 0})
                                  : geometry::shift({from.x, from.y, back});
    assembler.add({"batten", Group::mesh, stick_of(opening.battens),
                   geometry::stick(mm(length), opening.battens.width, opening.battens.thickness),
                   geometry::compose(plane, in_wall), wall.side},
                  path);
  };
  batten(false, low, size.x);
  batten(false, {low.x, low.y + size.y - lap}, size.x);
  batten(true, {low.x, low.y + lap}, size.y - 2 * lap);
  batten(true, {low.x + size.x - lap, low.y + lap}, size.y - 2 * lap);
}

}  // namespace models
