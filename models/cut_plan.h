// What to cut from what, what to buy, and what it costs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/building.h"
#include "models/buy_line.h"
#include "models/cut_list.h"
#include "models/cut_order.h"
#include "models/fasteners.h"
#include "models/sheet_cutting.h"

namespace models {

// Boards of sections of which some price is missing: the least wood is bought of them. Volumes in mm3.
struct LeastWood {
  std::vector<std::string> sections;
  cutting::PlanStatus status = cutting::PlanStatus::not_found;
  cutting::Money volume = 0, bound = 0, whole_rips_bound = 0;
  std::optional<cutting::Money> by_hand;
};

struct CutPlan {
  CutList list;
  StickCutting sticks;
  // Of sticks.order. Its cost and bounds are those of the boards whose prices are all known, or, where there are no such,
  // volumes; `least_wood` is beside them where there are both.
  cutting::StickPlan plan;
  std::optional<cutting::StickPlan> by_hand;  // first fit, longest first, without ripping
  std::optional<LeastWood> least_wood;
  std::vector<SheetCutting> sheets;
  FasteningPlan fasteners;
  std::vector<BuyLine> buy;
  Money known_cost = 0;        // of what has a price
  std::optional<Money> total;  // the same, when every price is known
  double wood_bought = 0,
         wood_used = 0;  // m3, of sticks: boards bought and taken from what is at hand; pieces cut
  std::vector<std::string> problems;  // why there is no plan, or what it leaves out
};

[[nodiscard]] CutPlan cut_plan(const Design& design, const Building& building, const Scene& scene);

}  // namespace models
