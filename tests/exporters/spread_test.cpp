// Labels in a row, in cases whose best placing is known.
#include "exporters/sheets/spread.h"

#include <random>

#include <gtest/gtest.h>

namespace exporters {
namespace {

TEST(spread, leaves_labels_alone_that_do_not_meet) {
  const auto at = spread({{10, 2}, {20, 2}, {30, 2}}, 0, 100);
  EXPECT_DOUBLE_EQ(at[0], 10);
  EXPECT_DOUBLE_EQ(at[1], 20);
  EXPECT_DOUBLE_EQ(at[2], 30);
}

TEST(spread, parts_two_at_one_place_evenly) {
  const auto at = spread({{50, 3}, {50, 3}}, 0, 100);
  EXPECT_DOUBLE_EQ(at[0], 47);
  EXPECT_DOUBLE_EQ(at[1], 53);
}

TEST(spread, a_pool_takes_in_the_neighbour_it_runs_into) {
  // Three wanted at 50, 50, 51 with halves of 3: centres 44.33, 50.33, 56.33 have the least squared shifts.
  const auto at = spread({{50, 3}, {50, 3}, {51, 3}}, 0, 100);
  EXPECT_NEAR(at[0], 50.0 + 1.0 / 3 - 6, 1e-9);
  EXPECT_NEAR(at[2] - at[1], 6, 1e-9);
}

TEST(spread, keeps_within_its_bounds_when_it_can) {
  const auto at = spread({{1, 5}, {99, 5}}, 0, 100);
  EXPECT_DOUBLE_EQ(at[0], 5);
  EXPECT_DOUBLE_EQ(at[1], 95);
  const auto over = spread({{1, 30}, {2, 30}}, 0, 100);  // 120 into 100
  EXPECT_DOUBLE_EQ(over[0], 20);
  EXPECT_DOUBLE_EQ(over[1], 80);
}

TEST(spread, no_small_change_makes_a_random_row_better) {
  std::mt19937 engine(7);
  const auto random = [&](double high) { return high * (static_cast<double>(engine()) / 4294967296.0); };
  for (int round = 0; round < 200; ++round) {
    std::vector<Wanted> labels;
    double at = 10;
    for (int i = 0; i < 8; ++i) labels.push_back({at += random(8), 1 + random(3)});
    const auto places = spread(labels, 0, 150);
    const auto cost = [&](const std::vector<double>& p) {
      double sum = 0;
      for (std::size_t i = 0; i < p.size(); ++i) sum += (p[i] - labels[i].at) * (p[i] - labels[i].at);
      return sum;
    };
    const auto allowed = [&](const std::vector<double>& p) {
      for (std::size_t i = 0; i + 1 < p.size(); ++i)
        if (p[i + 1] - p[i] < labels[i].half + labels[i + 1].half - 1e-9) return false;
      return p.front() >= labels.front().half - 1e-9 && p.back() <= 150 - labels.back().half + 1e-9;
    };
    ASSERT_TRUE(allowed(places));
    // Shifting any run of neighbours together either breaks the rule or costs more.
    for (std::size_t first = 0; first < places.size(); ++first) {
      for (std::size_t last = first; last < places.size(); ++last) {
        for (const double by : {-0.01, 0.01}) {
          auto moved = places;
          for (std::size_t i = first; i <= last; ++i) moved[i] += by;
          EXPECT_TRUE(!allowed(moved) || cost(moved) > cost(places) - 1e-9);
        }
      }
    }
  }
}

}  // namespace
}  // namespace exporters
