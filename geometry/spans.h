// Stretches of a line, as numbers along it.
#pragma once

#include <vector>

namespace geometry {

struct Span {
  double from = 0, to = 1;
  [[nodiscard]] bool empty() const { return from >= to; }
  // Keeps only where start + t * step > limit.
  void keep_above(double start, double step, double limit);
};

// Sorted; what overlaps, or lies no more than `gap` apart, becomes one.
[[nodiscard]] std::vector<Span> joined(std::vector<Span> spans, double gap);
// What of `from` is not in `taken`, and what is in both. All sorted and apart.
[[nodiscard]] std::vector<Span> without(const std::vector<Span>& from, const std::vector<Span>& taken);
[[nodiscard]] std::vector<Span> common(const std::vector<Span>& a, const std::vector<Span>& b);

}  // namespace geometry
