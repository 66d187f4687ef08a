#include <algorithm>
#include <cmath>

#include "models/cladding.h"
#include "models/practice.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

// Whether some level board of this wall lies over the top rail with less of it on the rail than a screw needs.
bool boards_miss_the_rail(const Building& building, Side side, double rail_top) {
  return std::any_of(building.parts.begin(), building.parts.end(), [&](const Part& part) {
    if (part.group != Group::cladding || part.wall != side) return false;
    double low = INFINITY;
    for (const geometry::Vec2 p : building.marks[part.mark].body.outline.outer)
      low = std::min(low, part.placement.point({p.x, p.y, 0}).z);
    return low > rail_top - practice::least_hold.mm();
  });
}

}  // namespace

void add_slat_cleats(Assembler& assembler, const Design& design, const Wall& wall) {
  if (under_gable(design.roof, wall.side)) return;
  const RoofShape shape = roof_shape(design.house, design.roof);
  const double foot = wall_top(design.house, design.roof, wall.side).mm();
  if (!boards_miss_the_rail(assembler.building(), wall.side, foot)) return;
  const Lumber& framing = design.house.framing;
  const double width = framing.width.mm(), deep = framing.thickness.mm(),
               length = wall_length(design.house, wall.side).mm();
  // As high as the boards, and under the cover, which is lowest over the cleat's lower side.
  const bool higher = shape.kind == RoofKind::single_slope && wall.side == design.roof.rises_to;
  const double out = wall.cladding.thickness().mm(), gap = design.roof.eave_gap.mm();
  const double top = higher ? std::min(shape.upper(shape.span) - gap, shape.upper(shape.span - deep))
                            : shape.upper(-out) - gap;
  if (top - foot < practice::least_hold.mm()) return;
  // Rafters stand at the same places seen from either wall.
  for (std::size_t i = 0; i < shape.trusses.size(); ++i) {
    const double left = shape.trusses[i], right = left + shape.thickness;
    const double before = i == 0 ? 0 : shape.trusses[i - 1] + shape.thickness;
    const double after = i + 1 < shape.trusses.size() ? shape.trusses[i + 1] : length;
    // Between two rafters that stand close there is room for one.
    const bool room_before = left - before >= 2 * width, room_after = after - right >= width;
    for (const auto& [x, room] : {std::pair{left - width, room_before}, {right, room_after}}) {
      if (!room) continue;
      assembler.add({"slat cleat", Group::frame, stick_of(framing),
                     geometry::stick(mm(top - foot), framing.width, framing.thickness),
                     geometry::compose(wall_plane(design.house, wall.side),
                                       geometry::placement({x + width, foot, -deep}, {0, 1, 0}, {-1, 0, 0})),
                     wall.side},
                    {std::string(name(wall.side)) + " wall", "cleats"});
    }
  }
}

}  // namespace models
