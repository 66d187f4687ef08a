#include "models/wall_frame.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::same_place;
using geometry::Vec2;

// Full-height posts of a wall: their left edges.
std::vector<double> post_positions(const Extent& extent, const Wall& wall, double width, double spacing) {
  std::vector<double> posts{extent.from.mm(), extent.to.mm() - width};
  for (const Opening& opening : wall.openings) {
    posts.push_back(opening.left.mm() - width);
    posts.push_back((opening.left + opening.width).mm());
  }
  std::sort(posts.begin(), posts.end());
  posts.erase(std::unique(posts.begin(), posts.end(), [](double a, double b) { return b - a < same_place; }),
              posts.end());
  const auto opening_between = [&](double left, double right) {
    return std::any_of(wall.openings.begin(), wall.openings.end(), [&](const Opening& o) {
      return o.left.mm() > left && (o.left + o.width).mm() < right + width;
    });
  };
  std::vector<double> all;
  for (std::size_t i = 0; i + 1 < posts.size(); ++i) {
    all.push_back(posts[i]);
    if (opening_between(posts[i], posts[i + 1])) continue;
    const double span = posts[i + 1] - posts[i];
    const int bays = std::max(1, static_cast<int>(std::ceil(span / spacing - 1e-9)));
    for (int k = 1; k < bays; ++k) all.push_back(posts[i] + span * k / bays);
  }
  all.push_back(posts.back());
  return all;
}

// Short posts that fill the height between two rails over or under an opening.
void add_short_posts(std::vector<Member>& members, const Opening& opening, double from, double to,
                     double width, double spacing) {
  if (to - from < width) return;
  const double left = opening.left.mm() - width, span = opening.width.mm() + width;
  const int bays = static_cast<int>(std::ceil(span / spacing - 1e-9));
  for (int k = 1; k < bays; ++k) {
    const double x = left + span * k / bays;
    members.push_back({"short post", true, {x, from}, {x + width, to}});
  }
}

}  // namespace

std::vector<Member> frame_members(const Design& design, const Wall& wall) {
  const House& house = design.house;
  const Extent extent = frame_extent(house, wall.side);
  const double from = extent.from.mm(), to = extent.to.mm();
  const double width = house.framing.width.mm(), top = wall_top(house, design.roof, wall.side).mm(),
               spacing = house.post_spacing.mm();
  std::vector<Member> members{{"bottom rail", false, {from, 0}, {to, width}},
                              {"top rail", false, {from, top - width}, {to, top}}};
  for (const double x : post_positions(extent, wall, width, spacing))
    members.push_back({"post", true, {x, width}, {x + width, top - width}});
  for (const Opening& opening : wall.openings) {
    const double left = opening.left.mm(), right = (opening.left + opening.width).mm();
    const double sill = opening.bottom.mm(), head = (opening.bottom + opening.height).mm();
    if (head < top - width - same_place) {
      members.push_back({"head rail", false, {left, head}, {right, head + width}});
      add_short_posts(members, opening, head + width, top - width, width, spacing);
    }
    if (sill > width + same_place) {
      members.push_back({"sill rail", false, {left, sill - width}, {right, sill}});
      add_short_posts(members, opening, width, sill - width, width, spacing);
    }
  }
  return members;
}

std::vector<std::size_t> add_wall_frame(Assembler& assembler, const Design& design, const Wall& wall) {
  const House& house = design.house;
  const Placement plane = wall_plane(house, wall.side);
  const double thickness = house.framing.thickness.mm();
  const std::string wall_name = std::string(name(wall.side)) + " wall";
  std::vector<std::size_t> parts;
  for (const Member& member : frame_members(design, wall)) {
    const Vec2 size = member.high - member.low;
    const Length length = geometry::mm(member.upright ? size.y : size.x);
    // The stick's length runs along the member; its thickness goes through the wall, outer face at z = 0.
    const Placement in_wall =
        member.upright ? geometry::placement({member.high.x, member.low.y, -thickness}, {0, 1, 0}, {-1, 0, 0})
                       : geometry::placement({member.low.x, member.low.y, -thickness}, {1, 0, 0}, {0, 1, 0});
    parts.push_back(assembler.add({member.name, Group::frame, stick_of(house.framing),
                                   geometry::stick(length, house.framing.width, house.framing.thickness),
                                   geometry::compose(plane, in_wall), wall.side},
                                  {wall_name, "frame"}));
  }
  const Extent extent = frame_extent(house, wall.side);
  FrameView view{wall_name + " frame",
                 "wall",
                 geometry::compose(plane, geometry::shift({extent.from.mm(), 0, 0})),
                 extent.to - extent.from,
                 wall_top(house, design.roof, wall.side),
                 parts,
                 {}};
  for (const Opening& o : wall.openings) {
    const Vec2 low{(o.left - extent.from).mm(), o.bottom.mm()};
    view.openings.push_back({o.name, low, low + Vec2{o.width.mm(), o.height.mm()}});
  }
  assembler.add(std::move(view));
  return parts;
}

}  // namespace models
