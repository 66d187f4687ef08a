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

Corrugated read_corrugated(const Element& element) {
  const Corrugated sheet{element.text("name"),          element.length("height"), element.length("width"),
                         element.length("cover-width"), element.length("length"), element.length("end-lap")};
  if (!element.sound()) return sheet;
  if (sheet.cover_width > sheet.width + mm(geometry::same_place))
    element.must_be_at_most("cover-width", sheet.width, "a sheet covers more than it is wide");
  if (sheet.end_lap > sheet.length / 2)
    element.must_be_at_most("end-lap", sheet.length / 2, "the lap is more than half the sheet");
  return sheet;
}

void read_cover(const Element& element, Roof& roof) {
  const Element boards = element.child("boards"), sheets = element.child("sheets"),
                corrugated = element.child("corrugated");
  element.one_of({"boards", "sheets", "corrugated"}, "a roof has one cover");
  if (boards.given() || (!sheets.given() && !corrugated.given()))
    roof.boards = boards.lumber("size");
  else if (sheets.given())
    roof.sheets = sheets.sheet("sheet");
  else
    roof.corrugated = read_corrugated(corrugated);
}

void read_gaps(const Element& element, Roof& roof) {
  roof.eave_gap = element.length("eave-gap");
  roof.ridge_gap = element.length("ridge-gap");
  roof.mesh = element.given_mesh("mesh");
  const bool gap = roof.eave_gap > Length() || roof.ridge_gap > Length();
  if (gap && !roof.mesh)
    element.problem("mesh",
                    "is missing: a gap under the cover is closed with mesh; expected a mesh of the stock");
}

// What only a gable has, or only a single slope.
void check_kind(const Element& element, const Roof& roof) {
  if (!element.sound({"slopes"})) return;
  if (roof.kind == RoofKind::gable) {
    if (element.has("rises-to"))
      element.problem("rises-to", "a gable roof rises to its ridge: expected it with slopes=\"single\" only");
    return;
  }
  for (const char* attribute : {"ridge", "ridge-board", "ridge-gap"})
    if (element.has(attribute))
      element.problem(attribute, "a single slope has no ridge: expected it with slopes=\"gable\" only");
  for (const char* name : {"tie", "gussets"})
    if (const Element child = element.child(name); child.given())
      child.problem("a single slope has single rafters: expected it with slopes=\"gable\" only");
}

std::optional<Lumber> read_edge(const Element& element) {
  return element.given() ? std::optional(element.lumber("size")) : std::nullopt;
}

}  // namespace

Roof read_roof(const Element& coop, const House& house) {
  const Element element = coop.child("roof");
  Roof roof;
  roof.line = element.line();
  const Pitch pitch = element.pitch("pitch");
  roof.pitch = pitch.angle;
  roof.rise_in_12 = pitch.rise_in_12;
  roof.kind = element.choice<RoofKind>("slopes");
  roof.ridge_runs = element.choice<RidgeRuns>("ridge");
  roof.rises_to = element.choice<Side>("rises-to");
  roof.tails = element.choice<TailCut>("tails");
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
  roof.fascia = read_edge(element.child("fascia"));
  roof.barge = read_edge(element.child("barge"));
  read_cover(element, roof);
  read_gaps(element, roof);
  check_kind(element, roof);
  return roof;
}

}  // namespace models
