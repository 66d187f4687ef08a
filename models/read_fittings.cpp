#include <algorithm>

#include "geometry/tolerance.h"
#include "models/furniture.h"
#include "models/read_parts.h"
#include "models/wall_plane.h"

namespace models {

std::optional<Nests> read_nests(const Element& coop, const House& house) {
  const Element element = coop.child("nests");
  if (!element.given()) return std::nullopt;
  Nests nests;
  nests.line = element.line();
  nests.outside = element.choice("place") == 1;
  nests.loose = element.choice("boxes") == 1;
  nests.lid_pitch = element.angle("lid-pitch");
  nests.lid_overhang = element.length("lid-overhang");
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
  if (nests.loose && nests.outside)
    element.problem("boxes",
                    "boxes that stand outside are fixed to the wall: expected fixed, or place=\"inside\"");
  nests.left =
      element.given_length("left").value_or((wall_length(house, nests.wall) - row_length(nests)) / 2);
  if (element.sound({"lip", "lip-board"}) &&
      nests.lip > nests.lip_board.width + geometry::mm(geometry::same_place))
    element.must_be_at_most("lip", nests.lip_board.width, "the lip is higher than its board is wide");
  return nests;
}

std::optional<Roosts> read_roosts(const Element& coop) {
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
  roosts.droppings_board = element.given_sheet("droppings-board");
  return roosts;
}

}  // namespace models
