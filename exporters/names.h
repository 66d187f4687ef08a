// What parts are called in files that want a name for each.
#pragma once

#include <string>
#include <vector>

#include "models/building.h"

namespace exporters {

// "F3 top rail".
[[nodiscard]] std::string mark_name(const models::Mark& mark);
// One for each part, unique: "F3 top rail #2" is the second part with that mark.
[[nodiscard]] std::vector<std::string> part_names(const models::Building& building);

}  // namespace exporters
