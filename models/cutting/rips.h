// How a board may be ripped into strips.
#pragma once

#include <optional>
#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

struct RipLayout {
  int from = 0;             // section of the board
  std::vector<int> strips;  // sections, in order across, widest first
  Money work = 0;
  Nanometres leftover = 0;  // width of the strip that is left, kerf taken off
};

// All layouts that are worth considering: every set of strips that fits the width, but none that lies within another
// of no more work. Rules for the same two sections count once, the cheapest. Nothing when there are beyond all measure.
[[nodiscard]] std::optional<std::vector<RipLayout>> rip_layouts(const std::vector<Section>& sections,
                                                                const std::vector<RipRule>& rules,
                                                                const Saw& saw);

}  // namespace models::cutting
