// The plan as it is made by hand, for comparison.
#pragma once

#include "models/cutting/sticks.h"

namespace models::cutting {

// First-fit decreasing, buying only: one length of board is settled on for each section, the longest piece goes into
// the first board that still has room for it, a new board is bought when none has; at the end each board is swapped for
// the cheapest that holds the same pieces. The length that comes out cheapest is kept. Nothing is ripped and nothing on
// hand is used, and no ends are made to meet. The status is best_found with bound 0, and otherwise as from plan_sticks; not_found where the boards on
// sale run out.
[[nodiscard]] StickPlan first_fit_decreasing(const StickOrder& order);

}  // namespace models::cutting
