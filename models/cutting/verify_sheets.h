// Checks a plan of sheets against its order, from the order alone: nothing here is shared with what made the plan.
#pragma once

#include <string>
#include <vector>

#include "models/cutting/sheets.h"

namespace models::cutting {

// What is wrong with the plan, one sentence each. Every sheet is sawn again, cut by cut: each cut must divide a part that
// is there at that moment, and each piece and leftover must be a part that is there at the end, no two the same one.
// Sizes, grain, counts and money must be right too. The order must be sound; the plan may come from anywhere.
[[nodiscard]] std::vector<std::string> faults_in(const SheetOrder& order, const SheetPlan& plan);

}  // namespace models::cutting
