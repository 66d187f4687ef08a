#include "models/read_parts.h"
#include "models/wall_plane.h"

namespace models {

std::optional<Site> read_site(const Element& coop) {
  const Element element = coop.child("site");
  if (!element.given()) return std::nullopt;
  constexpr std::string_view exposures = "BCD";
  return Site{element.number("snow-kpa"), element.number("wind-m-s"),
              exposures[static_cast<std::size_t>(element.choice("exposure"))],
              element.choice<Climate>("climate")};
}

Length read_litter(const Element& coop) {
  const Element element = coop.child("litter");
  return element.given() ? element.length("depth") : Length();
}

std::optional<RaisedFloor> read_floor(const Element& coop) {
  const Element element = coop.child("floor");
  if (!element.given()) return std::nullopt;
  RaisedFloor floor;
  floor.line = element.line();
  floor.clear = element.length("clear");
  floor.bearers = element.lumber("bearers");
  floor.joists = element.lumber("joists");
  floor.legs = element.lumber("legs");
  floor.joist_spacing = element.length("joist-spacing");
  floor.boards = element.given_lumber("boards");
  if (!floor.boards)
    floor.sheets = element.has("sheet") ? element.sheet("sheet") : element.default_sheet();
  else if (element.has("sheet"))
    element.problem("sheet", "a deck is of boards or of sheets: expected one of them, not both");
  return floor;
}

std::optional<Base> read_base(const Element& coop) {
  const Element element = coop.child("base");
  if (!element.given()) return std::nullopt;
  coop.one_of({"floor", "base"}, "a raised floor stands on its own legs");
  Base base;
  base.line = element.line();
  base.kind = element.choice<BaseKind>("kind");
  base.ring_width = element.length("ring-width");
  base.ring_depth = element.length("ring-depth");
  base.block_length = element.length("block-length");
  base.block_height = element.length("block-height");
  base.skids = element.lumber("skids");
  return base;
}

std::optional<Apron> read_apron(const Element& coop) {
  const Element element = coop.child("apron");
  if (!element.given()) return std::nullopt;
  return Apron{element.line(), element.mesh("mesh"), element.length("depth"), element.length("width")};
}

std::optional<RunPen> read_run(const Element& coop, const House& house) {
  const Element element = coop.child("run");
  if (!element.given()) return std::nullopt;
  RunPen run;
  run.line = element.line();
  run.wall = element.choice<Side>("wall");
  run.length = element.length("length");
  run.width = element.given_length("width").value_or(wall_length(house, run.wall));
  run.height = element.length("height");
  run.framing = element.lumber("framing");
  run.post_spacing = element.length("post-spacing");
  run.mesh = element.mesh("mesh");
  run.roof_mesh = element.choice("top") == 0;
  run.door_width = element.length("door-width");
  run.existing_area = element.number("joins-m2");
  return run;
}

}  // namespace models
