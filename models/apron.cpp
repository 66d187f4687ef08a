#include <cmath>

#include "models/grounds.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

constexpr double skirt_lap = 25;  // mm up the cladding, to staple it: common practice

// Flat panels of mesh round a rectangle in plan, `out` wide, in the plane at z; corners are covered by the pieces along x,
// and the pieces along y lap under them there. Roll lengths are cut where a side is longer than a roll.
void ring(Assembler& assembler, const Apron& apron, Vec2 low, Vec2 high, double z, const std::string& what) {
  const double out = apron.width.mm(), lap = std::min(100.0, out), wire = apron.mesh.wire.mm();
  const auto panel = [&](Vec2 from, Vec2 to, double level) {
    const bool along_x = to.x - from.x >= to.y - from.y;
    const Vec2 size = to - from;
    const Placement place = along_x ? geometry::shift({from.x, from.y, level})
                                    : geometry::placement({to.x, from.y, level}, {0, 1, 0}, {-1, 0, 0});
    assembler.add({"apron mesh",
                   Group::mesh,
                   mesh_of(apron.mesh),
                   {geometry::rectangle(mm(along_x ? size.x : size.y), mm(along_x ? size.y : size.x)),
                    apron.mesh.wire,
                    {},
                    {},
                    {}},
                   place,
                   {}},
                  {what});
  };
  panel({low.x - out, low.y - out}, {high.x + out, low.y}, z);
  panel({low.x - out, high.y}, {high.x + out, high.y + out}, z);
  // Under the corner pieces by the lap, one wire lower.
  panel({low.x - out, low.y - lap}, {low.x, high.y + lap}, z - wire);
  panel({high.x, low.y - lap}, {high.x + out, high.y + lap}, z - wire);
}

// Upright mesh from the walls' feet down to the apron, where the house stands on blocks or skids and is open below.
void skirt(Assembler& assembler, const Design& design, double low) {
  const House& house = design.house;
  for (const Wall& wall : design.walls) {
    const auto at = static_cast<std::size_t>(wall.side);
    const double length = wall_length(house, wall.side).mm(), wire = design.apron->mesh.wire.mm();
    const bool along_x = wall.side == Side::front || wall.side == Side::back;
    // Front and back reach past the neighbours' cladding and close the ends of the other two.
    const double past = along_x ? wire : 0;
    const double left = -design.walls[(at + 3) % 4].cladding.thickness().mm() - past;
    const double right = length + design.walls[(at + 1) % 4].cladding.thickness().mm() + past;
    geometry::Region area{geometry::rectangle({left, low}, {right, skirt_lap})};
    const auto leave_out = [&](Vec2 from, Vec2 to) {
      area = geometry::difference(area, {geometry::rectangle(from, to)});
    };
    if (house.corner_trim) {  // its boards stand where the mesh would lap over the cladding
      const double reach = 1000, wide = house.corner_trim->width.mm();
      leave_out({left - reach, 0}, {wide, reach});
      leave_out({length - wide, 0}, {right + reach, reach});
    }
    const bool skids_along_x = house.width >= house.depth;
    if (design.base->kind == BaseKind::skids && skids_along_x != along_x) {
      const double across = design.base->skids.thickness.mm();
      leave_out({0, ground_level(design)}, {across, 0});
      leave_out({length - across, ground_level(design)}, {length, 0});
    }
    const Placement plane = geometry::compose(wall_plane(house, wall.side),
                                              geometry::shift({0, 0, wall.cladding.thickness().mm()}));
    for (const geometry::Outline& outline : area)
      assembler.add({"skirt mesh",
                     Group::mesh,
                     mesh_of(design.apron->mesh),
                     {outline, design.apron->mesh.wire, {}, {}, {}},
                     plane,
                     wall.side},
                    {"apron"});
  }
}

}  // namespace

void add_apron(Assembler& assembler, const Design& design) {
  if (!design.apron) return;
  const Apron& apron = *design.apron;
  Vec2 low{0, 0}, high{design.house.width.mm(), design.house.depth.mm()};
  if (design.run) {
    const PlanRectangle run = run_plan(design);
    low = {std::min(low.x, run.low.x), std::min(low.y, run.low.y)};
    high = {std::max(high.x, run.high.x), std::max(high.y, run.high.y)};
  }
  const double top = ground_level(design) - apron.depth.mm();
  ring(assembler, apron, low, high, top - apron.mesh.wire.mm(), "apron");
  if (design.base && !design.floor && design.base->kind != BaseKind::stone) skirt(assembler, design, top);
}

}  // namespace models
