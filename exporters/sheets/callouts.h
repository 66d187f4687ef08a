// Labels beside a drawn thing, joined to it by leaders that neither cross each other nor run through a text.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"

namespace exporters {

// Something to be named: its label, and the points inside it that a leader may start from, the best first.
struct Callout {
  std::string text;
  std::vector<Vec2> anchors;  // on the page
  bool upright = false;       // named over the thing if it can be, else at its right
  bool left = false;          // named at its left
};

// Names what it can: upright things in a row over `thing`, the others in a column at its right or left. Leaders run
// straight within the thing (plumb or level), so that they cross no other; outside they slant. Returns the
// texts for which there was no room.
[[nodiscard]] std::vector<std::string> add_callouts(Drawing& drawing, const std::vector<Callout>& callouts,
                                                    const Space& thing);

}  // namespace exporters
