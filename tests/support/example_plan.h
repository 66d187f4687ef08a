// A design file, read, built and checked.
#pragma once

#include <string>
#include <vector>

#include "exporters/plan.h"

namespace support {

// `file` is a path; the plan is named after it. Throws std::runtime_error with the first problem of the design.
[[nodiscard]] exporters::Plan plan_of_file(const std::string& file);

// The paths of the design files in a folder, sorted.
[[nodiscard]] std::vector<std::string> designs_in(const std::string& folder);

}  // namespace support
