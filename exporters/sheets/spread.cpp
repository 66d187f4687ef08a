#include "exporters/sheets/spread.h"

#include <algorithm>

namespace exporters {

double total_length(const std::vector<Wanted>& labels) {
  double total = 0;
  for (const Wanted& label : labels) total += 2 * label.half;
  return total;
}

// With the labels' own lengths taken out, `at - offset` must only not decrease: isotonic regression, solved by
// pooling adjacent violators; clipping its solution to the bounds gives the best one within them.
std::vector<double> spread(const std::vector<Wanted>& labels, double low, double high) {
  const double total = total_length(labels);
  if (total > high - low) {
    const double middle = (low + high) / 2;
    low = middle - total / 2;
    high = middle + total / 2;
  }
  struct Pool {
    double sum = 0;
    std::size_t count = 0;
    [[nodiscard]] double mean() const { return sum / static_cast<double>(count); }
  };
  std::vector<double> offsets;
  std::vector<Pool> pools;
  double used = 0;
  for (const Wanted& label : labels) {
    offsets.push_back(used + label.half);
    used += 2 * label.half;
    Pool pool{label.at - offsets.back(), 1};
    while (!pools.empty() && pools.back().mean() > pool.mean()) {
      pool.sum += pools.back().sum;
      pool.count += pools.back().count;
      pools.pop_back();
    }
    pools.push_back(pool);
  }
  std::vector<double> out;
  for (const Pool& pool : pools) {
    const double base = std::clamp(pool.mean(), low, std::max(low, high - total));
    for (std::size_t i = 0; i < pool.count; ++i) out.push_back(base + offsets[out.size()]);
  }
  return out;
}

}  // namespace exporters
