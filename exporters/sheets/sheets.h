// The sheets of a plan: views of the whole, then one for each frame, with its parts, and more where the parts need
// them.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"
#include "exporters/plan.h"

namespace exporters {

struct SheetPage {
  std::string file;  // name in the pack's folder sheets/, "01-front-wall-frame.svg"
  Drawing drawing;
};
[[nodiscard]] std::vector<SheetPage> sheets(const Plan& plan);

// Writes sheets/*.svg.
void write_sheets(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
