// The part of the shopping list that nothing is cut from: hardware, fasteners, glue and sealant, litter and stone.
#pragma once

#include <vector>

#include "models/building.h"
#include "models/buy_line.h"
#include "models/fasteners.h"

namespace models {

// Where the design's shop has a pack of them, in whole packs at its price. Of fasteners a tenth more than are driven:
// common practice.
[[nodiscard]] std::vector<BuyLine> supplies(const Design& design, const Building& building,
                                            const FasteningPlan& fasteners);

}  // namespace models
