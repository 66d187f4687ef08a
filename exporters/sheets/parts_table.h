// The members of a frame, one row a mark.
#pragma once

#include "exporters/table.h"
#include "geometry/length_text.h"
#include "models/building.h"

namespace exporters {

// Marks in the order of the frame's parts: how many in this frame, what it is, stock, length to the long
// points, ends (left / right as its template shows it).
[[nodiscard]] Table parts_table(const models::Building& building, const models::FrameView& frame,
                                const geometry::LengthStyle& style);

}  // namespace exporters
