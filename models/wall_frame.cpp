#include "models/wall_frame.h"

#include "models/roof_shape.h"
#include "models/splices.h"
#include "models/vents.h"
#include "models/wall_plane.h"

namespace models {

FrameSpec frame_spec(const Design& design, const Wall& wall) {
  const House& house = design.house;
  const Extent extent = frame_extent(house, wall.side);
  FrameSpec spec{extent.from.mm(),
                 extent.to.mm(),
                 wall_top(house, design.roof, wall.side).mm(),
                 house.framing.width.mm(),
                 house.post_spacing.mm(),
                 {},
                 {},
                 {}};
  spec.longest = longest_board(design, house.framing).mm();
  for (const Opening& o : wall_openings(design, wall))
    spec.holes.push_back(
        {{o.left.mm(), o.bottom.mm()}, {(o.left + o.width).mm(), (o.bottom + o.height).mm()}});
  for (const Length x : wall.extra_posts) spec.extra_posts.push_back(x.mm());
  for (const Length y : wall.extra_rails) spec.extra_rails.push_back(y.mm());
  return spec;
}

std::vector<std::size_t> add_wall_frame(Assembler& assembler, const Design& design, const Wall& wall) {
  const Placement plane = wall_plane(design.house, wall.side);
  const std::string wall_name = std::string(name(wall.side)) + " wall";
  const FrameSpec spec = frame_spec(design, wall);
  std::vector<std::size_t> parts = add_members(assembler, frame_members(spec), design.house.framing,
                                               Group::frame, plane, wall.side, {wall_name, "frame"});
  FrameView view{wall_name + " frame",
                 "wall",
                 geometry::compose(plane, geometry::shift({spec.from, 0, 0})),
                 geometry::mm(spec.to - spec.from),
                 geometry::mm(spec.top),
                 parts,
                 {}};
  for (const Opening& o : wall_openings(design, wall)) {
    const geometry::Vec2 low{o.left.mm() - spec.from, o.bottom.mm()};
    view.openings.push_back({o.name, low, low + geometry::Vec2{o.width.mm(), o.height.mm()}});
  }
  assembler.add(std::move(view));
  return parts;
}

}  // namespace models
