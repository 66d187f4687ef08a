// From counts of patterns to boards with every cut in its place.
#pragma once

#include <vector>

#include "models/cutting/load.h"
#include "models/cutting/ripping_pricer.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

// Adds the boards of a plan for one problem. What is cut beyond what is asked for is left out. `how` tells how patterns lie
// where boards may be ripped in part.
void add_to(Layout& layout, const StickOrder& order, const StickProblem& problem, const CoverPlan& plan,
            const RippingPricer* how = nullptr);

// Drops boards that nothing is cut from, orders the others so that the length stop moves seldom, gives every piece its
// place and every mark its pieces, and fills in the plan's boards and what is reckoned from them.
void put_in_place(Layout layout, const StickOrder& order, StickPlan& plan);

}  // namespace models::cutting
