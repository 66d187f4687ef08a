// The least cost of an order of sticks by another model and another solver: an arc-flow model (J. M. Valerio de
// Carvalho, Exact solution of bin-packing problems using column generation and branch-and-bound, Annals of Operations
// Research 86, 1999), given whole to the CBC solver. Positions along a stick are nodes, pieces are arcs; nothing of the
// program's own search, patterns or rip layouts is used. For small orders in small units.
#pragma once

#include <optional>

#include "models/cutting/sticks.h"

namespace tests {

struct LeastCost {
  models::cutting::Money cost = 0;
  int bought = 0;  // fewest boards bought at that cost
};

// Where boards may be ripped in part, every whole nanometre is tried for the crosscut. Nothing where no plan exists.
std::optional<LeastCost> least_cost(const models::cutting::StickOrder& order);

}  // namespace tests
