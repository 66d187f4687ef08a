#include "models/corner_trim.h"

#include <algorithm>

#include "models/cladding.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {

using geometry::mm;
using geometry::rectangle;

void add_corner_trim(Assembler& assembler, const Design& design) {
  if (!design.house.corner_trim) return;
  const Lumber& trim = *design.house.corner_trim;
  const RoofShape roof = roof_shape(design.house, design.roof);
  const double w = trim.width.mm(), t = trim.thickness.mm();
  for (const Wall& wall : design.walls) {
    const std::size_t at = static_cast<std::size_t>(wall.side);
    const double face = wall.cladding.thickness().mm(), length = wall_length(design.house, wall.side).mm();
    const bool gable = under_gable(design.roof, wall.side);
    // Under a gable the boards also cover the edges of the neighbours' boards; under an eave they end below the tails.
    const double left = gable ? -design.walls[(at + 3) % 4].cladding.thickness().mm() - t : 0;
    const double right = gable ? length + design.walls[(at + 1) % 4].cladding.thickness().mm() + t : length;
    geometry::Region area = wall_area(design, wall.side);
    const bool higher = design.roof.kind == RoofKind::single_slope && wall.side == design.roof.rises_to;
    double top = roof.lower(higher ? roof.span : -face - t);
    if (gable) {
      // Their tops lie under the cover: as high as the wall's area reaches at its ends.
      top = 1e9;
      for (const geometry::Outline& o : area)
        for (const geometry::Vec2 p : o.outer)
          if (p.y > 1) top = std::min(top, p.y - t * roof.slope);
    }
    for (const double x : {left, right - w})
      assembler.add({"corner trim", Group::cladding, stick_of(trim),
                     geometry::stick(mm(top), trim.width, trim.thickness),
                     geometry::compose(wall_plane(design.house, wall.side),
                                       geometry::placement({x + w, 0, face}, {0, 1, 0}, {-1, 0, 0})),
                     wall.side},
                    {std::string(name(wall.side)) + " wall", "trim"});
  }
}

}  // namespace models
