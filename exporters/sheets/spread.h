// Labels in a row: each as near as can be to where it belongs, none over another, in the same order.
#pragma once

#include <vector>

namespace exporters {

struct Wanted {
  double at = 0;    // where its middle should be
  double half = 0;  // half of what it takes, its share of the gap to the next one included
};

// Middles of the labels, in the order given (ascending `at`), with the least sum of squared shifts, all within
// low..high. When they take more than that, they are set edge to edge about its middle and reach past both
// ends.
[[nodiscard]] std::vector<double> spread(const std::vector<Wanted>& labels, double low, double high);
// What the labels take when set edge to edge.
[[nodiscard]] double total_length(const std::vector<Wanted>& labels);

}  // namespace exporters
