// Plans the sections that ripping ties together: first with boards that are ripped over their whole length or not at all,
// then, from there, with boards of which a part may be ripped.
#pragma once

#include <optional>

#include "models/cutting/load.h"
#include "models/cutting/nested_pricer.h"
#include "models/cutting/part_fitter.h"
#include "models/cutting/search.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

struct GroupProblems {
  const StickProblem& whole;      // rips boards whole or not at all
  const StickProblem& parts;      // rips parts too, where the order allows it
  const StickProblem& all_leans;  // the same with every lean that could save anything
};

// Adds the boards of the group to the layout, and to the plan its bounds, what is proven of it and the work it took;
// whether there is any plan.
bool plan_group(const StickOrder& order, const GroupProblems& problems, const Limits& limits, StickPlan& plan,
                Layout& layout);

}  // namespace models::cutting
