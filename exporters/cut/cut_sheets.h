// The sheets of the cutting plan: the cut list, the boards with their cuts, and what to buy.
#pragma once

#include <string>
#include <vector>

#include "exporters/plan.h"
#include "exporters/sheets/sheets.h"

namespace exporters {

// In the order of their numbers: list pages, board pages, the shopping list.
[[nodiscard]] std::vector<SheetPage> cut_sheets(const Plan& plan);

// cut/list.csv, cut/boards.csv, cut/sheets.csv, cut/fasteners.csv, cut/buy.csv and cut/*.svg.
void write_cut(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
