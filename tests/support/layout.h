// What a drawing must never do, whatever is on it.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"

namespace support {

// One sentence for each fault: two texts that overlap; a line, other than an edge of the thing, through a text;
// an edge through a text that does not blank it; two leaders that cross; anything but the page's own frame and
// grid outside `space`. Empty when there is none.
[[nodiscard]] std::vector<std::string> layout_faults(const exporters::Drawing& drawing,
                                                     const exporters::Space& space);

}  // namespace support
