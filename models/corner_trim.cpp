#include "models/corner_trim.h"

#include <algorithm>

#include "models/cladding.h"
#include "models/practice.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {

using geometry::mm;
using geometry::rectangle;

TrimReach trim_reach(const Design& design, Side side) {
  if (!design.house.corner_trim) return {};
  const Lumber& trim = *design.house.corner_trim;
  if (!under_gable(design.roof, side)) return {trim.width, trim.width};
  // Under a gable the boards also cover the edges of the neighbours' boards.
  const std::size_t at = static_cast<std::size_t>(side);
  const auto past = [&](std::size_t neighbour) {
    return design.walls[neighbour % 4].cladding.thickness() + trim.thickness;
  };
  return {trim.width - past(at + 3), trim.width - past(at + 1)};
}

TrimReach corner_strips(const Design& design, Side side) {
  const Length half_post = design.house.framing.width * 0.5;
  const auto width = [&](Length reach) {
    return reach < half_post + practice::least_hold ? std::max(reach, half_post) : half_post;
  };
  const TrimReach trim = trim_reach(design, side);
  return {width(trim.left), width(trim.right)};
}

void add_corner_trim(Assembler& assembler, const Design& design) {
  if (!design.house.corner_trim) return;
  const Lumber& trim = *design.house.corner_trim;
  const RoofShape roof = roof_shape(design.house, design.roof);
  const double w = trim.width.mm(), t = trim.thickness.mm();
  for (const Wall& wall : design.walls) {
    const TrimReach reach = trim_reach(design, wall.side);
    const TrimReach strips = corner_strips(design, wall.side);
    const double face = wall.cladding.thickness().mm(), length = wall_length(design.house, wall.side).mm();
    const bool gable = under_gable(design.roof, wall.side);
    geometry::Region area = wall_area(design, wall.side);
    const bool higher = design.roof.kind == RoofKind::single_slope && wall.side == design.roof.rises_to;
    // Under an eave they end below the tails.
    double top = roof.lower(higher ? roof.span : -face - t);
    if (gable) {
      // Their tops lie under the cover: as high as the wall's area reaches at its ends.
      top = 1e9;
      for (const geometry::Outline& o : area)
        for (const geometry::Vec2 p : o.outer)
          if (p.y > 1) top = std::min(top, p.y - t * roof.slope);
    }
    // On leaning boards, or on the strips at their ends.
    const auto lies_at = [&](Length reaches, Length strip) {
      return reaches > strip ? face : wall.cladding.edge_thickness().mm();
    };
    for (const auto& [x, z] : {std::pair{reach.left.mm() - w, lies_at(reach.left, strips.left)},
                               {length - reach.right.mm(), lies_at(reach.right, strips.right)}})
      assembler.add({"corner trim", Group::cladding, stick_of(trim),
                     geometry::stick(mm(top), trim.width, trim.thickness),
                     geometry::compose(wall_plane(design.house, wall.side),
                                       geometry::placement({x + w, 0, z}, {0, 1, 0}, {-1, 0, 0})),
                     wall.side},
                    {std::string(name(wall.side)) + " wall", "trim"});
  }
}

}  // namespace models
