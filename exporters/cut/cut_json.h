// The cutting plan for programs: in plan.json as "cutting", and what `cut --json` prints.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "models/cut_plan.h"

namespace exporters {

// Lengths in mm, angles in degrees, money in the currency's unit, volumes in mm3; see docs/plan.schema.json.
[[nodiscard]] nlohmann::ordered_json cut_json(const models::CutPlan& plan, const models::Design& design,
                                              const models::Building& building);

}  // namespace exporters
