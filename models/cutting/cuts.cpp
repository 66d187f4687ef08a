#include "models/cutting/cuts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace models::cutting {

namespace {

constexpr double violated = 1e-3;

std::int64_t floor_of(std::int64_t a, std::int64_t by) { return a >= 0 ? a / by : -((-a + by - 1) / by); }

// floor(a / by) + min(1, rest of a / rest), in parts and rounded up, as the rule for a variable that is whole and not
// below zero.
std::int64_t rounded(std::int64_t a, std::int64_t by, std::int64_t rest) {
  const std::int64_t below = floor_of(a, by);
  const std::int64_t part = a - below * by;
  if (part >= rest) return (below + 1) * Cut::whole_part;
  const double share = static_cast<double>(part) / static_cast<double>(rest);
  // The quotient of doubles is off by less than one part in 2^50: a part more makes the cut safe.
  const auto parts = part == 0 ? 0 : static_cast<std::int64_t>(std::ceil(share * Cut::whole_part + 1e-6));
  return below * Cut::whole_part + std::min(parts, Cut::whole_part);
}

}  // namespace

double violation(const Cut& cut, const std::vector<double>& taken) {
  double left = static_cast<double>(cut.least);
  double squares = 0;
  for (std::size_t s = 0; s < taken.size(); ++s) {
    const auto coefficient = static_cast<double>(cut.coefficient[s]);
    left -= coefficient * taken[s];
    squares += coefficient * coefficient;
  }
  return squares > 0 ? left / std::sqrt(squares) : 0;
}

std::vector<Cut> rounding_cuts(const Cut& base, const std::vector<int>& most,
                               const std::vector<double>& taken) {
  std::int64_t asked = base.least;
  std::vector<bool> from_most(taken.size());
  for (std::size_t s = 0; s < taken.size(); ++s) {
    from_most[s] = base.coefficient[s] > 0 && taken[s] > most[s] - 1e-6;
    if (from_most[s]) asked -= base.coefficient[s] * most[s];
  }
  std::vector<std::int64_t> divisors;
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (taken[s] > 1e-6 && !from_most[s] && base.coefficient[s] > 0) divisors.push_back(base.coefficient[s]);
  }
  std::sort(divisors.begin(), divisors.end());
  divisors.erase(std::unique(divisors.begin(), divisors.end()), divisors.end());
  std::vector<Cut> cuts;
  for (std::int64_t by : divisors) {
    const std::int64_t below = floor_of(asked, by);
    const std::int64_t rest = asked - below * by;
    // A rest close to nothing or to all gives a cut that says nothing beyond rounding.
    if (rest * 1000 < by || rest * 1000 > by * 999) continue;
    Cut cut;
    cut.least = (below + 1) * Cut::whole_part;
    for (std::size_t s = 0; s < taken.size(); ++s) {
      if (!from_most[s]) {
        cut.coefficient.push_back(rounded(base.coefficient[s], by, rest));
        continue;
      }
      const std::int64_t mirrored = rounded(-base.coefficient[s], by, rest);
      cut.coefficient.push_back(-mirrored);
      cut.least -= mirrored * most[s];
    }
    if (violation(cut, taken) > violated) cuts.push_back(std::move(cut));
  }
  std::stable_sort(cuts.begin(), cuts.end(),
                   [&](const Cut& a, const Cut& b) { return violation(a, taken) > violation(b, taken); });
  return cuts;
}

bool meets(const Cut& cut, const std::vector<int>& taken) {
  std::int64_t sum = 0;
  for (std::size_t s = 0; s < taken.size(); ++s) sum += cut.coefficient[s] * taken[s];
  return sum >= cut.least;
}

}  // namespace models::cutting
