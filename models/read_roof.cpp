#include "geometry/tolerance.h"
#include "models/read_parts.h"

namespace models {
namespace {

using geometry::mm;

void read_tie(const Element& element, const House& house, Roof& roof) {
  if (!element.given()) return;
  roof.tie = element.lumber("size");
  const Length span = roof.ridge_runs == RidgeRuns::front_to_back ? house.width : house.depth;
  const Length rise = span / 2 * geometry::tan(roof.pitch);
  roof.tie_height = element.given_length("height").value_or(rise / 3);
}

void read_cover(const Element& element, Roof& roof) {
  const Element boards = element.child("boards"), sheets = element.child("sheets");
  if (boards.given() && sheets.given())
    sheets.problem("a roof has one cover: expected <boards> or <sheets>, not both; <boards> is in line " +
                   std::to_string(boards.line()));
  if (sheets.given())
    roof.sheets = sheets.sheet("sheet");
  else
    roof.boards = boards.lumber("size");
}

}  // namespace

Roof read_roof(const Element& coop, const House& house) {
  const Element element = coop.child("roof");
  Roof roof;
  roof.line = element.line();
  const Pitch pitch = element.pitch("pitch");
  roof.pitch = pitch.angle;
  roof.rise_in_12 = pitch.rise_in_12;
  roof.ridge_runs = element.choice<RidgeRuns>("ridge");
  roof.eave_overhang = element.length("eave-overhang");
  roof.gable_overhang = element.length("gable-overhang");
  roof.rafters = element.lumber("rafters");
  roof.ridge = element.lumber("ridge-board");
  roof.spacing = element.length("spacing");
  roof.seat = element.given_length("seat");
  const Length rail = house.framing.thickness;
  if (house_is_sound(coop) && roof.seat > rail + mm(geometry::same_place))
    element.must_be_at_most("seat", rail, "the seat is longer than the top rail is thick");
  read_tie(element.child("tie"), house, roof);
  if (const Element gussets = element.child("gussets"); gussets.given())
    roof.gussets = gussets.sheet("sheet");
  read_cover(element, roof);
  return roof;
}

}  // namespace models
