// Wire mesh as it is drawn.
#pragma once

#include <vector>

#include "geometry/drawn_body.h"

namespace exporters {

// The wires of a flat piece of mesh that are drawn, `spacing` apart both ways (mm), set out from its middle, in
// the body's own coordinates. At most a thousand each way.
[[nodiscard]] std::vector<geometry::DrawnEdge> wires(const geometry::Body& body, double spacing);

}  // namespace exporters
