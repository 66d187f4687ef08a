// Which positions of a frame are dimensioned.
#pragma once

#include <vector>

#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/frame_view.h"

namespace exporters {

struct FrameChains {
  std::vector<Chain> level;  // under the frame
  std::vector<Chain> plumb;  // at its left
};

// Walls and leaves: the edges of everything upright, of everything level, and of the openings; then over all.
// Trusses: tails, rails, seats and ridge; run and overhang; then over all.
[[nodiscard]] FrameChains frame_chains(const FrameSubject& subject);

}  // namespace exporters
