// Checks a plan against its order, from the order alone: nothing here is shared with what made the plan.
#pragma once

#include <string>
#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

// What is wrong with the plan, one sentence each; empty when every piece, kerf and trim fits, ends
// that meet have one slope and the kerf between them, nothing lies face down that must not, defects are left alone,
// every mark is cut as often as it is asked for, no board is used more often than it can be had, strips fit the board's
// width and the part of it that is ripped, and money, boards, set-ups and leftovers add up. The order must be sound; the plan may come from anywhere, read
// back from a file for one.
[[nodiscard]] std::vector<std::string> faults_in(const StickOrder& order, const StickPlan& plan);

}  // namespace models::cutting
