// Cuts in words: what templates, sheets and lists print about them.
#pragma once

#include <string>

#include "geometry/length_text.h"
#include "models/building.h"
#include "models/cuts.h"

namespace exporters {

// To a tenth of a degree: "33.7°".
[[nodiscard]] std::string angle_text(geometry::Angle angle);

// "square"; "33.7°" from square; "33.7°, blade 20°"; "45° + notch".
[[nodiscard]] std::string end_text(const models::End& end);
// Both ends: "square" when both are, else left / right, and whether two mitres run the same way.
[[nodiscard]] std::string ends_text(const models::Cuts& cuts);

// Whether the part is cut to lines that a paper pattern helps to draw: any outline but the blank's rectangle,
// a bevelled end, a hole. A square-ended stick, a rectangular panel and a ripped edge need none.
[[nodiscard]] bool needs_template(const models::Cuts& cuts);

// How an edge of the outline lies once the part stands in its place, as the trade names it: in the notch of a
// sloping stick "seat" when level and "heel" when plumb; elsewhere "level cut" and "plumb cut"; else "cut".
// A square end is a "square cut" however it stands.
enum class Where { notch, end };
[[nodiscard]] std::string cut_name(const models::CutEdge& edge, Where where,
                                   const geometry::Placement& placement);

}  // namespace exporters
