#include <algorithm>

#include "geometry/tolerance.h"
#include "models/read_parts.h"

namespace models {
namespace {

using geometry::mm;

const Length same = mm(geometry::same_place);

// Wood that must stay over the notch for the rafter to be one piece.
const Length least_left = mm(5);

// How far the ridge stands over the rails' outer edges, along the line of the rafters' undersides.
Length rise_of(const Roof& roof, const House& house) {
  const Length span = roof.ridge_runs == RidgeRuns::front_to_back ? house.width : house.depth;
  return span / 2 * geometry::tan(roof.pitch);
}

void read_tie(const Element& element, const House& house, bool sound, Roof& roof) {
  if (!element.given()) return;
  roof.tie = element.lumber("size");
  const Length rise = rise_of(roof, house);
  roof.tie_height = element.given_length("height").value_or(rise / 3);
  if (!sound || !element.sound()) return;
  const Length most = rise - roof.tie->width;
  if (roof.tie_height <= most + same) return;
  if (most < Length())
    element.problem("size", "a tie of " + roof.tie->name + " has no room under a ridge " +
                                element.shown(rise) + " over the rails");
  else
    element.must_be_at_most("height", most, "the tie would stand out over the rafters");
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

void check_notch(const Element& element, const Roof& roof, const House& house) {
  const Length rail = house.framing.thickness, seat = roof.seat.value_or(rail);
  if (seat > rail + same) {
    element.must_be_at_most("seat", rail, "the seat is longer than the top rail is thick");
    return;
  }
  // Square to the rafter's edge the notch is seat times the sine of the pitch deep.
  const double sine = geometry::sin(roof.pitch);
  if (roof.rafters.width - seat * sine >= least_left - same) return;
  element.must_be_at_most("seat", std::max(Length(), (roof.rafters.width - least_left) / sine),
                          "the notch would cut through rafters of " + roof.rafters.name);
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
  const bool sound = house_is_sound(coop) && element.sound({"pitch", "ridge", "rafters", "seat"});
  if (sound) check_notch(element, roof, house);
  // Trusses spread evenly come as close as half of the spacing asked.
  if (element.sound({"spacing", "rafters"}) && roof.spacing < 2 * roof.rafters.thickness)
    element.must_be_at_least("spacing", 2 * roof.rafters.thickness,
                             "rafters of " + roof.rafters.name + " would run into each other");
  read_tie(element.child("tie"), house, sound, roof);
  if (const Element gussets = element.child("gussets"); gussets.given())
    roof.gussets = gussets.sheet("sheet");
  read_cover(element, roof);
  return roof;
}

}  // namespace models
