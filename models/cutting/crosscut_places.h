// Where boards that are ripped in part are crosscut, from a relaxation in which that is known in ranges only.
#pragma once

#include <vector>

#include "models/cutting/uses_relaxation.h"

namespace models::cutting {

struct CrosscutBoard {
  BoardUse use;
  Nanometres place = 0;  // of its crosscut, with the kerf
};

// The likeliest places where so many boards are used in each way, a whole number of each.
struct LikelyPlaces {
  std::vector<CrosscutBoard> boards;
  bool exact = true;  // the relaxation has them all there, none partly here and partly there
};
[[nodiscard]] LikelyPlaces likely_places(const UsesRelaxation& relaxed, const std::vector<int>& used);

// The ways to use these boards, with each range of crosscuts in parts: those that the relaxation is least decided on, or
// else halves. Each way of `used` is a group. Nothing where all places are known already. Strips end at multiples of a step.
[[nodiscard]] std::vector<BoardUse> narrower_uses(const UsesRelaxation& relaxed, const std::vector<int>& used,
                                                  Nanometres step);

}  // namespace models::cutting
