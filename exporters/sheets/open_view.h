// The house without what closes it: what stands inside, and what it is called.
#pragma once

#include "exporters/pictures/picture.h"
#include "exporters/plan.h"
#include "exporters/sheets/frame_sheet.h"

namespace exporters {

// A picture from the front right above without roof cover, cladding and run, as large as the sheet holds. One
// member of each kind is named. The design has a house.
[[nodiscard]] OpenSheet open_view(const Plan& plan, const Paper& paper, const DrawnMarks& marks);

}  // namespace exporters
