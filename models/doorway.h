// Openings that a person steps in by.
#pragma once

#include "models/design.h"

namespace models {

[[nodiscard]] bool is_doorway(const Opening& opening);
[[nodiscard]] bool has_doorway(const Design& design);

}  // namespace models
