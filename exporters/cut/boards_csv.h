// The cutting plan of the boards as a table: a row for each piece, one for each strip that none is cut from.
#pragma once

#include <string>

#include "models/cut_plan.h"

namespace exporters {

// Boards are numbered from 1 in the plan's order; `source` is the line of the offer, counted from 1, among what is on sale
// or at hand. Lengths in mm to a nanometre, from the board's left end: the plan can be made anew from it. `ripped to` is
// empty but for a board of which a part is ripped; the rest is its last strip.
[[nodiscard]] std::string boards_csv(const models::CutPlan& plan);

}  // namespace exporters
