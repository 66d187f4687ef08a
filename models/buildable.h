// Sizes of a design that no set of parts can be made for: each named, with the nearest size that can.
#pragma once

#include <vector>

#include "models/design.h"
#include "models/problem.h"

namespace models {

// Held against a design whose single values are all sound (as read_design() leaves it). build() may be called
// when this returns nothing; every part then has a positive size.
[[nodiscard]] std::vector<Problem> unbuildable(const Design& design);

}  // namespace models
