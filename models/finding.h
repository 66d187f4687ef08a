// What the checks found.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/vector.h"

namespace models {

enum class Severity { error, warning, note };
[[nodiscard]] std::string_view name(Severity severity);

struct Finding {
  std::string rule;  // id: "fit.overlap"
  Severity severity = Severity::error;
  std::string message;             // one sentence
  std::vector<std::size_t> parts;  // indices into Building::parts, ascending
  geometry::Vec3 place;            // house coordinates, mm
  std::string measured;            // with unit, as printed; may be empty
  std::string asked;
  std::string source;  // of the rule: publication or "common practice"
  std::string advice;  // the nearest change that would satisfy it; computed
  int line = 0;        // of the design file, 0 when none
};

}  // namespace models
