// What every plan's sources must meet, whatever the patterns: linear inequalities, exact in whole numbers.
#pragma once

#include <cstdint>
#include <vector>

namespace models::cutting {

// sum of coefficient(s) y(s) >= least, both counted in parts of a whole.
struct Cut {
  static constexpr std::int64_t whole_part = 65'536;
  std::vector<std::int64_t> coefficient;  // by source
  std::int64_t least = 0;
  bool operator==(const Cut&) const = default;
};

// Mixed-integer rounding of a cut whose coefficients are 0 or more: what whole sources must do that fractions need not.
// It is rounded by each coefficient among the sources taken, with sources that stand at their most counted from there.
// Only cuts that `taken` violates.
[[nodiscard]] std::vector<Cut> rounding_cuts(const Cut& base, const std::vector<int>& most,
                                             const std::vector<double>& taken);

// How far `taken` falls short of the cut, over the length of its coefficients; 0 or less where it holds.
[[nodiscard]] double violation(const Cut& cut, const std::vector<double>& taken);

// Whether whole sources meet the cut, exactly.
[[nodiscard]] bool meets(const Cut& cut, const std::vector<int>& taken);

}  // namespace models::cutting
