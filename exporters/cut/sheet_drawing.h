// A sheet or a roll with what is cut from it: pieces by mark, the saw's cuts numbered in an order that works.
#pragma once

#include <string>

#include "exporters/drawing.h"
#include "geometry/length_text.h"
#include "models/sheet_cutting.h"

namespace exporters {

// Sheets that are cut alike are drawn once.
struct SheetGroup {
  int first = 0, last = 0;  // numbers of the sheets, from 1, within their kind
  std::size_t index = 0;    // of the first: into SheetCutting::plan.sheets
};
[[nodiscard]] std::vector<SheetGroup> sheet_groups(const models::SheetCutting& cutting);

// True to proportion, also to the other sheets of its kind, none of which is larger than width x height with its caption;
// the upper left corner at the origin.
[[nodiscard]] Drawing sheet_drawing(const models::SheetCutting& cutting, const SheetGroup& group,
                                    double width, double height, const geometry::LengthStyle& style);

}  // namespace exporters
