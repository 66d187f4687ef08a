// The relaxation to sources alone, and the simplex method under it, worked out by hand.
#include <limits>

#include <gtest/gtest.h>

#include "models/cutting/purchase.h"
#include "models/cutting/tableau.h"

using namespace models::cutting;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

// 3 x + 2 y is to be least, with x + y at least 4 and x + 3 y at least 6.
Tableau two_columns(double most_y) {
  Tableau tableau({3, 2});
  tableau.bound_column(0, 0, 10);
  tableau.bound_column(1, 0, most_y);
  tableau.add_row({1, 1}, 4, endless);
  tableau.add_row({1, 3}, 6, endless);
  return tableau;
}

}  // namespace

TEST(CuttingTableau, FindsTheCheapestCorner) {
  Tableau tableau = two_columns(10);
  ASSERT_EQ(tableau.solve(), Tableau::End::solved);
  EXPECT_DOUBLE_EQ(tableau.column(0), 0);
  EXPECT_DOUBLE_EQ(tableau.column(1), 4);
  EXPECT_DOUBLE_EQ(tableau.prices().at(0), 2);  // one more of x + y is one more y
  EXPECT_DOUBLE_EQ(tableau.prices().at(1), 0);  // 12 where 6 are asked
  EXPECT_TRUE(tableau.slack(1));
}

TEST(CuttingTableau, GoesOnWhenABoundMoves) {
  Tableau tableau = two_columns(10);
  ASSERT_EQ(tableau.solve(), Tableau::End::solved);
  tableau.bound_column(1, 0, 0.5);  // x + 1.5 at least 6 asks for more than x + 0.5 at least 4
  ASSERT_EQ(tableau.solve(), Tableau::End::solved);
  EXPECT_DOUBLE_EQ(tableau.column(0), 4.5);
  EXPECT_DOUBLE_EQ(tableau.column(1), 0.5);
  EXPECT_DOUBLE_EQ(tableau.prices().at(1), 3);
  tableau.remove_rows({true, false});
  ASSERT_EQ(tableau.solve(), Tableau::End::solved);
  EXPECT_DOUBLE_EQ(tableau.column(0), 4.5);
}

TEST(CuttingTableau, WeighsRowsToShowThatThereIsNoSolution) {
  Tableau tableau = two_columns(10);
  ASSERT_EQ(tableau.solve(), Tableau::End::solved);
  tableau.bound_column(0, 0, 1);
  tableau.bound_column(1, 0, 1);  // 2 together where 4 are asked, or 4 where 6 are
  ASSERT_EQ(tableau.solve(), Tableau::End::no_solution);
  const double a = tableau.prices().at(0);
  const double b = tableau.prices().at(1);
  EXPECT_GE(a, 0);
  EXPECT_GE(b, 0);
  EXPECT_GT(4 * a + 6 * b, (a + b) + (a + 3 * b));  // what is asked, and the most that there can be
}

TEST(CuttingPurchase, MayBeginWithMoreCutsThanItKeeps) {
  CoverProblem problem;
  problem.sources = {{1, {}, -1}};
  Objective objective;
  objective.weight = {1};
  Purchase purchase(problem, objective);
  for (int least = 1; least <= 70; ++least) {
    Cut cut;
    cut.coefficient = {Cut::whole_part};
    cut.least = least * Cut::whole_part;
    ASSERT_TRUE(purchase.add(cut));
  }
  ASSERT_EQ(purchase.solve({{0}, {100}}), Purchase::End::solved);
  EXPECT_DOUBLE_EQ(purchase.taken().at(0), 70);
  EXPECT_EQ(purchase.bound(), 70);
}
