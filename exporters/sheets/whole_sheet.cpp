#include "exporters/sheets/whole_sheet.h"

namespace exporters {

OpenSheet whole_sheet(const Plan& plan, const Paper& paper, const std::string& name, const std::string& shows,
                      const std::string& scale) {
  OpenSheet out{start_sheet(paper, name, shows + " of " + plan.design.name), {}};
  out.block.title = plan.design.name;
  out.block.subtitle = name;
  out.block.document = "general arrangement";
  out.block.scale = scale;
  out.block.units = plan.design.units == geometry::Units::in ? "feet and inches" : "millimetres";
  return out;
}

void add_caption(Drawing& drawing, const std::string& text) {
  constexpr double cap = 3.5;
  const Space space = extent(drawing);
  drawing.labels.push_back(centred(
      Role::note, {(space.low.x + space.high.x) / 2, space.high.y + caption_room / 2 + 1}, text, cap));
}

}  // namespace exporters
