// One frame's sheet: the view at the largest scale that fits, its tables, frame and title block.
#pragma once

#include <vector>

#include "exporters/drawing.h"
#include "exporters/sheets/frame_view.h"
#include "exporters/sheets/page.h"
#include "exporters/table.h"

namespace exporters {

// A sheet that is complete but for its place among the others.
struct OpenSheet {
  Drawing drawing;
  TitleBlock block;  // sheet and sheets still 0
};

// The frame's sheet first; further ones hold the rows of the parts table that found no room on it.
[[nodiscard]] std::vector<OpenSheet> frame_sheets(const FrameSubject& subject, const Paper& paper,
                                                  const std::string& design);

}  // namespace exporters
