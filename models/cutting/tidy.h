// Exchanges pieces between sticks of a plan, which costs nothing: towards fewer lengths on each stick, then towards one
// long leftover instead of several short ones.
#pragma once

#include "models/cutting/load.h"

namespace models::cutting {

void tidy(std::vector<Load>& loads, Nanometres kerf);

}  // namespace models::cutting
