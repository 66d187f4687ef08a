// Random small orders with everything in them, against the arc-flow model solved by CBC.
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "cutting_arc_flow.h"
#include "models/cutting/first_fit.h"
#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"

using namespace models::cutting;
using testing::IsEmpty;

namespace {

class Draw {
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  int between(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<std::uint64_t>(most - least + 1));
  }

 private:
  std::mt19937_64 engine_;
};

// Lengths are a few dozen nanometres: the model does not care, and arcs stay few.
StickOrder small_order(unsigned seed) {
  Draw draw(seed);
  StickOrder order;
  order.saw = {draw.between(0, 2), draw.between(0, 2), draw.between(0, 1), draw.between(0, 1)};
  const int sections = draw.between(1, 3);
  for (int s = 0; s < sections; ++s)
    order.sections.push_back({std::to_string(s), 4 + 5 * s + draw.between(0, 3), 4});
  const int marks = draw.between(2, 6);
  for (int m = 0; m < marks; ++m) {
    order.pieces.push_back(
        {std::to_string(m), draw.between(0, sections - 1), draw.between(4, 20), draw.between(1, 4)});
  }
  for (int s = 0; s < sections; ++s) {
    const int lengths = draw.between(1, 3);
    for (int l = 0; l < lengths; ++l) {
      Stock stock{s, draw.between(22, 36), draw.between(5, 30), {}};
      if (draw.between(1, 5) == 1) stock.available = draw.between(0, 3);
      order.stock.push_back(stock);
    }
  }
  for (int h = draw.between(0, 3); h > 0; --h) {
    OnHand hand{
        std::to_string(h), draw.between(0, sections - 1), draw.between(10, 30), draw.between(1, 2), 0, {}};
    if (draw.between(1, 3) == 1) hand.value = draw.between(1, 8);
    for (int d = draw.between(0, 2); d > 0; --d) {
      const int from = draw.between(0, static_cast<int>(hand.length));
      hand.defects.push_back({from, from + draw.between(1, 5)});
    }
    order.on_hand.push_back(hand);
  }
  for (int to = 0; to < sections; ++to) {
    for (int from = to + 1; from < sections; ++from) {
      if (draw.between(1, 2) == 1) order.rips.push_back({from, to, draw.between(0, 4)});
    }
  }
  order.saw.shortest_rip = std::max(0, draw.between(-10, 20));
  return order;
}

}  // namespace

TEST(CuttingAgainstCbc, TheReferenceRipsPartsOfBoardsWhereItMay) {
  // Boards of 10 by 100 for 50; strips are 4 wide and each costs a rip of 7; kerfs of 1, trims of 2. Two strips of 48 and
  // a board of 40: ripped whole, a strip of 96 does not hold 48, 1 and 48, so there is one board for the strips and one
  // for the 40. Crosscut at 50, one board gives both strips, and behind the kerf 47 are left.
  StickOrder order;
  order.sections = {{"strip", 4, 10}, {"board", 10, 10}};
  order.pieces = {{"A", 1, 40, 1}, {"B", 0, 48, 2}};
  order.stock = {{1, 100, 50, {}}};
  order.rips = {{1, 0, 7}};
  order.saw = {1, 1, 2, 0};
  order.ripping = Ripping::whole;
  const auto whole = tests::least_cost(order);
  ASSERT_TRUE(whole);
  EXPECT_EQ(whole->cost, 2 * 50 + 2 * 7);
  EXPECT_EQ(whole->bought, 2);
  order.ripping = Ripping::parts;
  const auto parts = tests::least_cost(order);
  ASSERT_TRUE(parts);
  EXPECT_EQ(parts->cost, 50 + 2 * 7);
  EXPECT_EQ(parts->bought, 1);
  // The rest of 47 is used up to its end, but a piece of 48 needs another board.
  order.pieces[0].length = 47;
  EXPECT_EQ(tests::least_cost(order)->cost, 50 + 2 * 7);
  order.pieces[0].length = 48;
  EXPECT_EQ(tests::least_cost(order)->cost, 2 * 50 + 2 * 7);
  // Nor is it ripped where the part must be longer than 49.
  order.pieces[0].length = 46;
  order.saw.shortest_rip = 49;
  EXPECT_EQ(tests::least_cost(order)->cost, 50 + 2 * 7);
  order.saw.shortest_rip = 50;
  EXPECT_EQ(tests::least_cost(order)->cost, 2 * 50 + 2 * 7);
  order.saw.shortest_rip = 0;
  // A board with a defect is not parted, though a piece would lie clear of it.
  order.pieces[0].length = 40;
  order.stock[0].available = 1;
  order.on_hand = {{"H", 1, 100, 1, 0, {}}};
  EXPECT_EQ(tests::least_cost(order)->cost, 2 * 7);
  order.on_hand[0].defects = {{96, 97}};
  EXPECT_EQ(tests::least_cost(order)->cost, 50 + 2 * 7);
}

TEST(CuttingAgainstCbc, HasTheSameLeastCostAndTheFewestBoards) {
  int impossible = 0;
  int ripped = 0;
  int in_part = 0;
  int saved = 0;  // by ripping parts
  int from_hand = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE(seed);
    const StickOrder order = small_order(seed);
    const StickPlan plan = plan_sticks(order);
    const auto least = tests::least_cost(order);
    if (!least) {
      EXPECT_EQ(plan.status, PlanStatus::impossible);
      EXPECT_FALSE(plan.problems.empty());
      ++impossible;
      continue;
    }
    ASSERT_EQ(plan.status, PlanStatus::optimal);
    EXPECT_EQ(plan.cost, least->cost);
    EXPECT_EQ(plan.bound, least->cost);
    StickOrder ripped_whole = order;
    ripped_whole.ripping = Ripping::whole;
    if (const auto whole = tests::least_cost(ripped_whole)) {
      EXPECT_EQ(plan.whole_rips_bound, whole->cost);
      saved += whole->cost > least->cost;
    }
    EXPECT_THAT(faults_in(order, plan), IsEmpty());
    EXPECT_TRUE(plan.fewest_boards);
    EXPECT_EQ(plan.bought, least->bought);
    const StickPlan by_hand = first_fit_decreasing(order);
    if (by_hand.status == PlanStatus::best_found) {
      EXPECT_THAT(faults_in(order, by_hand), IsEmpty());
      EXPECT_GE(by_hand.cost, plan.cost);
    }
    for (const Board& board : plan.boards) {
      ripped += board.sticks.size() > 1;
      in_part += board.ripped_to > 0;
      from_hand += !board.bought;
    }
  }
  // The orders are worth their name: all sorts of plans come out of them.
  EXPECT_GT(impossible, 5);
  EXPECT_LT(impossible, 100);
  EXPECT_GT(ripped, 30);
  EXPECT_GT(in_part, 20);
  EXPECT_GT(from_hand, 50);
  EXPECT_GT(saved, 10);
}
