// A plan of sticks made anew from the boards' table, as a reader of the file would.
#pragma once

#include "models/cut_plan.h"

namespace support {

// Boards, strips, pieces and their places are read from boards_csv(); leftovers and sums, which are not in it, are the
// plan's own. Throws std::runtime_error where the table names a section or a piece that the order does not have, or cuts
// one more often than it is asked for.
[[nodiscard]] models::cutting::StickPlan made_anew(const models::CutPlan& plan);

}  // namespace support
