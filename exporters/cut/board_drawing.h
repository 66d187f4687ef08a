// One line of the boards' sheet: a bar in proportion, its pieces by mark, and the running totals to cut at.
#pragma once

#include "exporters/cut/board_lines.h"
#include "exporters/drawing.h"

namespace exporters {

inline constexpr double board_caption_width = 66;  // of the words at the left of the bar

// The line's upper left corner at the origin; `scale` is page millimetres per millimetre. Totals are measured
// from the left end once it is trimmed; those of a rest, which lies as far along as it does on its board, from its own.
[[nodiscard]] Drawing board_drawing(const BoardLine& line, double scale, const geometry::LengthStyle& style);

}  // namespace exporters
