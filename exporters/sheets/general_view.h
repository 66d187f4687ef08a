// Sheets of the whole: what it looks like, how large it is, and what stands inside.
#pragma once

#include <vector>

#include "exporters/plan.h"
#include "exporters/sheets/frame_sheet.h"

namespace exporters {

// Two sheets. "general view": a picture from the front right above, views of the front, the right side and, as
// far as there is room, the back, the left side and the plan, to one scale, with overall dimensions. "open
// view": the same picture without roof cover and cladding, its members named. None for a design without parts.
[[nodiscard]] std::vector<OpenSheet> general_sheets(const Plan& plan, const Paper& paper);

}  // namespace exporters
