// How much a search may do, and how much it did.
#pragma once

#include <cstdint>

namespace models::cutting {

// Work limits. They are counts, never seconds, so that the same problem always ends in the same plan.
struct Limits {
  std::int64_t nodes = 200'000;                // nodes of the search tree
  std::int64_t lp_iterations = 1'000'000;      // pivots of the simplex method, more for large ones
  std::int64_t pricing_steps = 1'000'000'000;  // states looked at while pricing patterns
};

struct Work {
  std::int64_t nodes = 0;
  std::int64_t lp_iterations = 0;
  std::int64_t pricing_steps = 0;

  Work& operator+=(const Work& more) {
    nodes += more.nodes;
    lp_iterations += more.lp_iterations;
    pricing_steps += more.pricing_steps;
    return *this;
  }
  friend Work since(const Work& before, const Work& now) {
    return {now.nodes - before.nodes, now.lp_iterations - before.lp_iterations,
            now.pricing_steps - before.pricing_steps};
  }
};

}  // namespace models::cutting
