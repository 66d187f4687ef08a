#include <algorithm>

#include "geometry/tolerance.h"
#include "models/furniture.h"
#include "models/practice.h"
#include "models/wall_frame.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

// Bars from wall to wall: in the plane of `wall`, whose x is the way from bar to bar.
struct Rack {
  Side starts;   // the wall the first bar is measured from
  Side ends[2];  // the walls the bars end on
};

Rack rack(const Roosts& roosts) {
  if (roosts.along_x) return {Side::back, {Side::left, Side::right}};
  return {Side::right, {Side::front, Side::back}};
}

// The distance along `end`'s wall coordinates of a place that is `from_start` inside the house's outer face
// at the wall `starts`.
double along_wall(const House& house, Side starts, Side end, double from_start) {
  const Placement plane = wall_plane(house, end);
  const Placement start = wall_plane(house, starts);
  const Vec3 place =
      start.origin - start.z * from_start;  // a place at that distance, anywhere along the start wall
  return dot(plane.x, place - plane.origin);
}

}  // namespace

Reach reach_of_posts(const Design& design, Side side, double from, double to) {
  const Wall& wall = design.walls[static_cast<std::size_t>(side)];
  const double set_in = design.house.framing.thickness.mm();
  const double least = set_in, most = wall_length(design.house, side).mm() - set_in;
  Reach reach{least, most};
  for (const Member& member : frame_members(frame_spec(design, wall))) {
    if (member.name != "post") continue;
    if (member.low.x <= from + geometry::same_place) reach.from = std::max(reach.from, member.low.x);
    if (member.high.x >= to - geometry::same_place) reach.to = std::min(reach.to, member.high.x);
  }
  return reach;
}

std::vector<double> post_middles(const Design& design, Side side) {
  std::vector<double> middles;
  for (const Member& member : frame_members(frame_spec(design, design.walls[static_cast<std::size_t>(side)])))
    if (member.name == "post") middles.push_back((member.low.x + member.high.x) / 2);
  return middles;
}

void add_roosts(Assembler& assembler, const Design& design) {
  if (!design.roosts) return;
  const Roosts& r = *design.roosts;
  const House& house = design.house;
  const Rack across = rack(r);
  const double wall = house.framing.thickness.mm(), half = r.bars.width.mm() / 2;
  const double length = (r.along_x ? house.width : house.depth).mm() - 2 * wall;
  for (int i = 0; i < r.count; ++i) {
    const double from_start = wall + r.first.mm() + i * r.spacing.mm();  // centre, from the outer face
    const double top = r.height.mm() - i * r.step.mm();
    const Placement plane = wall_plane(house, across.starts);
    // Along the wall from its left; the width lies level, the thickness upright.
    assembler.add(
        {"roost bar",
         Group::roost,
         stick_of(r.bars),
         {geometry::rectangle(mm(length), r.bars.width), r.bars.thickness, {}, {}, r.rounding},
         geometry::compose(plane, geometry::placement({wall, top - r.bars.thickness.mm(), -from_start + half},
                                                      {1, 0, 0}, {0, 0, -1})),
         {}},
        {"roosts", "bars"});
  }
  // One ledge under all bars where they lie level, else one under each.
  const int ledges = r.step > Length() ? r.count : 1;
  for (const Side end : across.ends)
    for (int i = 0; i < ledges; ++i) {
      const double first = wall + r.first.mm() + i * r.spacing.mm();
      const double last = r.step > Length() ? first : first + (r.count - 1) * r.spacing.mm();
      double a = along_wall(house, across.starts, end, first),
             b = along_wall(house, across.starts, end, last);
      if (a > b) std::swap(a, b);
      const Reach reach = reach_of_posts(design, end, a - half, b + half);
      const double top = r.height.mm() - i * r.step.mm() - r.bars.thickness.mm();
      assembler.add(
          {"roost ledge", Group::roost, stick_of(r.ledges),
           geometry::stick(mm(reach.to - reach.from), r.ledges.width, r.ledges.thickness),
           geometry::compose(wall_plane(house, end), geometry::shift({reach.from, top - r.ledges.width.mm(),
                                                                      -wall - r.ledges.thickness.mm()})),
           end},
          {"roosts", "ledges"});
    }
  if (!r.droppings_board) return;
  // On the ledges' lower side would be out of reach to clean: it lies on cleats of its own, a hand under the bars.
  const double lowest =
      r.height.mm() - (r.count - 1) * r.step.mm() - r.bars.thickness.mm() - r.ledges.width.mm();
  const double top = lowest - practice::hand.mm(), thickness = r.droppings_board->thickness.mm();
  const double reach = half + practice::hand.mm();  // past the outer bars, either side
  const double from = wall + std::max(0.0, r.first.mm() - reach);
  const double to = wall + std::min((r.along_x ? house.depth : house.width).mm() - 2 * wall,
                                    r.first.mm() + (r.count - 1) * r.spacing.mm() + reach);
  const Placement plane = wall_plane(house, across.starts);
  // As many boards side by side, from cleat to cleat, as the sheet's width asks for.
  const int boards =
      std::max(1, static_cast<int>(std::ceil((to - from) / r.droppings_board->width.mm() - 1e-9)));
  for (int i = 0; i < boards; ++i) {
    const double near = from + (to - from) * i / boards;
    assembler.add(
        {"droppings board",
         Group::roost,
         sheet_of(*r.droppings_board),
         {geometry::rectangle(mm(length), mm((to - from) / boards)),
          r.droppings_board->thickness,
          {},
          {},
          {}},
         geometry::compose(plane, geometry::placement({wall, top - thickness, -near}, {1, 0, 0}, {0, 0, -1})),
         {}},
        {"roosts", "board"});
  }
  for (const Side end : across.ends) {
    double a = along_wall(house, across.starts, end, from), b = along_wall(house, across.starts, end, to);
    if (a > b) std::swap(a, b);
    const Reach posts = reach_of_posts(design, end, a, b);
    assembler.add({"board cleat", Group::roost, stick_of(r.ledges),
                   geometry::stick(mm(posts.to - posts.from), r.ledges.width, r.ledges.thickness),
                   geometry::compose(wall_plane(house, end),
                                     geometry::shift({posts.from, top - thickness - r.ledges.width.mm(),
                                                      -wall - r.ledges.thickness.mm()})),
                   end},
                  {"roosts", "board"});
  }
}

}  // namespace models
