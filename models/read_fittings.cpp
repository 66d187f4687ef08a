#include <algorithm>

#include "geometry/tolerance.h"
#include "models/read_parts.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

const Length same = mm(geometry::same_place);

// Between the inner faces of the two walls that stand across `side`, and from `side` to the one facing it.
Length inside_along(const House& house, Side side) {
  return wall_length(house, side) - 2 * house.framing.thickness;
}
Length inside_across(const House& house, Side side) {
  return inside_along(house, side == Side::front || side == Side::back ? Side::left : Side::front);
}

void check_nests(const Element& element, const Nests& nests, const House& house) {
  const Length panel = nests.panel.thickness, wall = house.framing.thickness;
  const Length room = inside_along(house, nests.wall);
  const Length row = nests.count * nests.width + (nests.count + 1) * panel;
  const int fitting = static_cast<int>((room - panel + same) / (nests.width + panel));
  if (row > room + same) {
    const std::string why = "a row of " + std::to_string(nests.count) + " nests is " + element.shown(row) +
                            " long, and the wall " + element.shown(room) + " inside";
    if (fitting >= 1)
      element.problem("count",
                      why + ": expected at most " + std::to_string(fitting) + " nests of this width");
    else
      element.must_be_at_most("width", room - 2 * panel, why);
  } else if (nests.left < wall - same) {
    element.must_be_at_least("left", wall, "the nests reach into the wall at their left");
  } else if (nests.left + row > wall + room + same) {
    element.must_be_at_most("left", wall + room - row, "the nests reach into the wall at their right");
  }

  const Length depth = inside_across(house, nests.wall) - nests.lip_board.thickness;
  if (nests.depth > depth + same)
    element.must_be_at_most("depth", depth, "the nests are deeper than the house");
  const Length lowest = panel + nests.ledges.width;
  if (nests.bottom < lowest - same)
    element.must_be_at_least("bottom", lowest, "the ledges under the nests would reach into the ground");
  const Length highest = house.wall_height - nests.height - panel;
  if (nests.bottom > highest + same && highest >= lowest)
    element.must_be_at_most("bottom", highest, "the nests stand out over the wall");
  else if (nests.bottom > highest + same)
    element.must_be_at_most("height", house.wall_height - lowest - panel,
                            "the nests are higher than the wall");
  const Length lip = std::min(nests.lip_board.width, nests.height);
  if (nests.lip > lip + same)
    element.must_be_at_most("lip", lip, "the lip is higher than its board is wide, or than the nest is high");
}

void check_roosts(const Element& element, const Roosts& roosts, const House& house) {
  const Length room = inside_across(house, roosts.along_x ? Side::back : Side::right);
  const Length half_bar = roosts.bars.width / 2;
  const int steps = roosts.count - 1;
  const Length last = roosts.first + steps * roosts.spacing;
  if (roosts.first < half_bar - same)
    element.must_be_at_least("first", half_bar, "the first bar reaches into the wall");
  if (steps > 0 && roosts.spacing < roosts.bars.width - same)
    element.must_be_at_least("spacing", roosts.bars.width, "the bars run into each other");
  else if (roosts.first + half_bar > room + same)
    element.must_be_at_most("first", room - half_bar,
                            "the first bar stands beyond the wall that it is counted towards");
  else if (last + half_bar > room + same)
    element.problem(
        "count",
        "the last bar stands " + element.shown(last) + " from the wall, and the house is " +
            element.shown(room) + " inside: expected at most " +
            std::to_string(1 + static_cast<int>((room - half_bar - roosts.first + same) / roosts.spacing)) +
            " bars at this spacing");
  if (roosts.height > house.wall_height + same)
    element.must_be_at_most("height", house.wall_height, "the first bar stands over the walls");
  const Length lowest = roosts.bars.thickness + roosts.ledges.width;
  if (roosts.height < lowest - same)
    element.must_be_at_least("height", lowest, "the ledge under the first bar would reach into the ground");
  else if (roosts.height - steps * roosts.step < lowest - same)
    element.must_be_at_most("step", (roosts.height - lowest) / steps,
                            "the ledge under the last bar would reach into the ground");
  if (roosts.rounding > roosts.bars.thickness / 2 + same)
    element.must_be_at_most("rounding", roosts.bars.thickness / 2,
                            "the rounding is more than half of the bar");
}

}  // namespace

std::optional<Nests> read_nests(const Element& coop, const House& house) {
  const Element element = coop.child("nests");
  if (!element.given()) return std::nullopt;
  Nests nests;
  nests.line = element.line();
  nests.wall = element.choice<Side>("wall");
  nests.count = element.whole("count");
  nests.bottom = element.length("bottom");
  nests.width = element.length("width");
  nests.depth = element.length("depth");
  nests.height = element.length("height");
  nests.panel = element.sheet("panel");
  nests.ledges = element.lumber("ledges");
  nests.lip_board = element.lumber("lip-board");
  nests.lip = element.given_length("lip").value_or(std::min(nests.lip_board.width, nests.height));
  const Length row = nests.count * nests.width + (nests.count + 1) * nests.panel.thickness;
  nests.left = element.given_length("left").value_or((wall_length(house, nests.wall) - row) / 2);
  if (element.sound() && house_is_sound(coop)) check_nests(element, nests, house);
  return nests;
}

std::optional<Roosts> read_roosts(const Element& coop, const House& house) {
  const Element element = coop.child("roosts");
  if (!element.given()) return std::nullopt;
  Roosts roosts;
  roosts.line = element.line();
  roosts.count = element.whole("count");
  roosts.along_x = element.choice("runs") == 0;
  roosts.first = element.length("first");
  roosts.spacing = element.length("spacing");
  roosts.height = element.length("height");
  roosts.step = element.length("step");
  roosts.bars = element.lumber("bars");
  roosts.rounding = element.length("rounding");
  roosts.ledges = element.lumber("ledges");
  if (element.sound() && house_is_sound(coop)) check_roosts(element, roosts, house);
  return roosts;
}

}  // namespace models
