// A plan that rips boards over their whole length or not at all, as one of those that may rip them in part.
#pragma once

#include "models/cutting/load.h"
#include "models/cutting/ripping_pricer.h"

namespace models::cutting {

// The layout holds the boards of the plan and what is cut from each, by add_to(); the pricer is that of the problem.
[[nodiscard]] CoverPlan as_ripped_in_part(const Layout& layout, const StickProblem& problem,
                                          RippingPricer& pricer);

// Patterns of the problem that rips boards whole, on all boards of that length: as they are, and on every strip of their
// section.
[[nodiscard]] std::vector<Pattern> as_ripped_in_part(const StickProblem& whole,
                                                     const std::vector<Pattern>& patterns,
                                                     const StickProblem& problem, RippingPricer& pricer);

}  // namespace models::cutting
