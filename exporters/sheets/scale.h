// Scales that rulers carry.
#pragma once

#include <string>
#include <vector>

#include "geometry/length_text.h"

namespace exporters {

struct Scale {
  double ratio = 1;  // length on paper over length of the thing
  std::string label;
};

// From the largest to the smallest. Millimetres: ISO 5455, 1:1 to 1:1000. Inches: so many inches to the foot,
// as architects' scales have them (arithmetic: 12 in over the inches), from full size to 1/16 in.
[[nodiscard]] const std::vector<Scale>& scales(geometry::Units units);

}  // namespace exporters
