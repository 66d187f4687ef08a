#include <cmath>

#include "models/grounds.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

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
  ring(assembler, apron, low, high, ground_level(design) - apron.depth.mm() - apron.mesh.wire.mm(), "apron");
}

}  // namespace models
