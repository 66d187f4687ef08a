// Boards that are crosscut once so that their left part alone is ripped.
#include <functional>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/board_uses.h"
#include "models/cutting/board_worths.h"
#include "models/cutting/crosscut_places.h"
#include "models/cutting/master.h"
#include "models/cutting/part_fitter.h"
#include "models/cutting/profile.h"
#include "models/cutting/sticks.h"
#include "models/cutting/uses_relaxation.h"
#include "models/cutting/verify.h"

using namespace models::cutting;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

namespace {

// Boards of 10 by 100 for 50, strips 4 wide of which two come out of one, each by a rip of 7; kerfs of 1, trims of 2.
StickOrder two_strips_and_a_board(Nanometres board) {
  StickOrder order;
  order.sections = {{"strip", 4, 10}, {"board", 10, 10}};
  order.pieces = {{"A", 1, board, 1}, {"B", 0, 48, 2}};
  order.stock = {{1, 100, 50, {}}};
  order.rips = {{1, 0, 7}};
  order.saw = {1, 1, 2, 0, 0};
  return order;
}

// Two such boards and two pairs of strips, of which nothing may be lost.
StickOrder two_boards_full(Nanometres one, Nanometres other) {
  StickOrder order = two_strips_and_a_board(one);
  order.pieces = {{"A", 1, one, 1}, {"B", 1, other, 1}, {"C", 0, 29, 2}, {"D", 0, 59, 2}};
  return order;
}

StickProblem problem_of(const StickOrder& order) {
  return stick_problems(order, shapes_of(order).planned, false, Ripping::parts).at(0);
}

struct Answer {
  Fit fit = Fit::unknown;
  std::vector<Nanometres> ripped;  // by board: how much of it, a kerf behind
};

// Whether so many of each source hold all pieces.
Answer answer(const StickOrder& order, const std::vector<int>& taken) {
  const StickProblem problem = problem_of(order);
  RippingPricer pricer(problem, order.saw);
  PartFitter fitter(problem, pricer, order.saw, {100, 10'000, 1'000'000});
  std::vector<PatternUse> patterns;
  Answer given{fitter.fit(taken, patterns), {}};
  for (const PatternUse& use : patterns)
    given.ripped.push_back(pricer.ripped_length(pricer.lying(use.pattern)));
  return given;
}

}  // namespace

TEST(PartRips, OneBoardGivesStripsAndARestThatStaysWhole) {
  // Clear are 96. Two strips of 48 side by side, a kerf of 1, and 47 are left for a piece as wide as the board. Ripped
  // whole, one strip holds 48 and 47 at most, so that the strips take one board and the piece another.
  const StickOrder order = two_strips_and_a_board(47);
  const StickPlan plan = plan_sticks(order);
  ASSERT_EQ(plan.status, PlanStatus::optimal);
  EXPECT_EQ(plan.cost, 50 + 2 * 7);
  EXPECT_EQ(plan.whole_rips_bound, 2 * 50 + 2 * 7);
  ASSERT_EQ(plan.boards.size(), 1U);
  const Board& board = plan.boards[0];
  EXPECT_EQ(board.ripped_to, 2 + 48);
  EXPECT_EQ(board.leftover_width, 0);  // two strips of 4 and two kerfs of 1 are all of 10
  ASSERT_EQ(board.sticks.size(), 3U);
  ASSERT_EQ(board.sticks[2].pieces.size(), 1U);
  EXPECT_EQ(board.sticks[2].section, 1);
  EXPECT_EQ(board.sticks[2].pieces[0].at, 2 + 48 + 1);
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
}

TEST(PartRips, AreNotMadeWhereTheyDoNotFitOrMustNotBe) {
  EXPECT_EQ(plan_sticks(two_strips_and_a_board(48)).cost, 2 * 50 + 2 * 7);
  StickOrder whole = two_strips_and_a_board(47);
  whole.ripping = Ripping::whole;
  EXPECT_EQ(plan_sticks(whole).cost, 2 * 50 + 2 * 7);
}

TEST(PartRips, APlanMayExistWithThemAlone) {
  // One board is all that can be had.
  StickOrder order = two_strips_and_a_board(40);
  order.stock[0].available = 1;
  const StickPlan plan = plan_sticks(order);
  EXPECT_EQ(plan.status, PlanStatus::optimal);
  EXPECT_EQ(plan.cost, 50 + 2 * 7);
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
  order.ripping = Ripping::whole;
  EXPECT_EQ(plan_sticks(order).status, PlanStatus::impossible);
}

TEST(BoardUses, AreAllWaysOfABoardWithRoomForAPieceOnEitherSideOfItsCrosscut) {
  const StickOrder order = two_strips_and_a_board(40);
  const StickProblem problem = problem_of(order);
  const BoardUses made = board_uses(problem, ways_to_use(problem, order.saw), order.saw);
  // As they are, and where work for one strip or for two is paid: as they are, ripped all along or ripped in part.
  ASSERT_EQ(problem.cover.sources.size(), 3U);
  ASSERT_EQ(made.uses.size(), 1U + 3 + 3);
  EXPECT_EQ(made.uses[0].rip, -1);
  EXPECT_EQ(problem.layouts.at(2 - 1).strips.size(), 2U);
  EXPECT_THAT(made.problem.cover.measures,
              ElementsAre(ElementsAre(1, 0, 0, 0, 0, 0, 0), ElementsAre(0, 1, 1, 1, 0, 0, 0),
                          ElementsAre(0, 0, 0, 0, 1, 1, 1)));
  EXPECT_TRUE(made.uses[6].part);
  // Clear are 96: a strip of 48 and a kerf before it, 40 of the board behind.
  const Stretch range = crosscut_range(problem, problem.kinds.back(), made.uses[6].rip,
                                       shortest_pieces(problem, order.saw.kerf), order.saw);
  EXPECT_EQ(range.from, 48 + 1);
  EXPECT_EQ(range.to, 96 - 40);
}

TEST(PartFitter, TellsWhetherOneBoardHoldsAllPieces) {
  const Answer fits = answer(two_strips_and_a_board(47), {0, 0, 1});
  EXPECT_EQ(fits.fit, Fit::yes);
  EXPECT_THAT(fits.ripped, ElementsAre(48 + 1));
  EXPECT_EQ(answer(two_strips_and_a_board(48), {0, 0, 1}).fit, Fit::no);
}

TEST(PartFitter, CrosscutsEachBoardWhereItsPiecesNeedIt) {
  // Clear are 96, with a kerf 97. Strips of 29 and a kerf leave 67: 66 and a kerf. Strips of 59 leave 37: 36 and a kerf.
  const Answer fits = answer(two_boards_full(66, 36), {0, 0, 2});
  EXPECT_EQ(fits.fit, Fit::yes);
  EXPECT_THAT(fits.ripped, UnorderedElementsAre(30, 60));
}

TEST(PartFitter, ProvesThatPiecesDoNotFitThoughTheyTakeNoMoreWood) {
  // As much in all, but 42 and a kerf fit beside no strip of 59, and side by side no two pairs are shorter.
  EXPECT_EQ(answer(two_boards_full(60, 42), {0, 0, 2}).fit, Fit::no);
}

TEST(UsesRelaxation, KnowsWhereBoardsMayBeCrosscut) {
  const StickOrder order = two_strips_and_a_board(40);
  const StickProblem problem = problem_of(order);
  const Limits limits{100, 10'000, 1'000'000};
  UsesRelaxation relaxed(problem, ways_to_use(problem, order.saw), order.saw, limits);
  const std::vector<int> used{0, 0, 0, 0, 0, 0, 1};  // one board, in part ripped into two strips
  ASSERT_EQ(relaxed.solve({{0, 0, 0, 0, 0, 0, 1}, {0, 0, 0, 0, 0, 0, 1}}, {0, 0, 1}, false),
            UsesRelaxation::End::solved);
  // From behind two strips of 48 to before a piece of 40, in the 96 that are clear; with kerfs.
  const LikelyPlaces likely = likely_places(relaxed, used);
  ASSERT_EQ(likely.boards.size(), 1U);
  EXPECT_TRUE(likely.exact);
  EXPECT_EQ(likely.boards[0].place, (48 + 1 + 97 - 41) / 2);
  std::vector<Stretch> ranges;
  for (const BoardUse& use : narrower_uses(relaxed, used, 1)) ranges.push_back(use.crosscut);
  EXPECT_THAT(ranges, ElementsAre(Stretch{49, 52}, Stretch{53, 56}));
}

TEST(BoardWorths, TellWhatCannotBe) {
  BoardWorths worths({{0, -1, false, {}, 0}, {0, 0, false, {}, 0}});  // a board as it is, or ripped
  worths.add({10, 6}, 19);
  EXPECT_FALSE(worths.lack({{0, 0}, {2, 2}}, {2}));  // 10 + 10
  EXPECT_TRUE(worths.lack({{0, 0}, {1, 2}}, {2}));   // 10 + 6
  EXPECT_TRUE(worths.lack({{0, 1}, {2, 2}}, {2}));
  EXPECT_FALSE(worths.lack({{0, 1}, {2, 2}}, {3}));  // 6 + 10 + 10
}

TEST(Master, ForgetsNothingThatItHasNotTriedYet) {
  CoverProblem problem;
  problem.demand = {6};
  problem.item_family = {0};
  problem.next_smaller = {-1};
  problem.kind_family = {0};
  problem.sources = {{10, {{0, 1}}, -1}};
  Master master(problem);
  for (int count = 1; count <= 3; ++count) master.add({0, {{0, count}}});
  master.forget_idle(1);
  EXPECT_EQ(master.patterns().size(), 3U);
  ASSERT_TRUE(master.solve());
  EXPECT_NEAR(master.value(), 20, 1e-6);  // two boards of three pieces
  master.forget_idle(1);
  EXPECT_THAT(master.patterns(), ElementsAre(Pattern{0, {{0, 3}}}));
  ASSERT_TRUE(master.solve());
  EXPECT_NEAR(master.value(), 20, 1e-6);
}

TEST(Profile, KnowsTheBestOfEveryLength) {
  // Against all sets of pieces that there are.
  std::mt19937 engine(7);
  const auto between = [&](int least, int most) {
    return least + static_cast<int>(engine() % static_cast<unsigned>(most - least + 1));
  };
  for (int round = 0; round < 50; ++round) {
    SCOPED_TRACE(round);
    std::vector<Profile::Item> items;
    const int few = 5, many = 8;  // sets are looked at one by one, or lengths
    for (int i = 0; i < (round % 2 == 0 ? few : many); ++i)
      items.push_back({between(3, 30), static_cast<double>(between(0, 40)), between(0, 3)});
    const Nanometres longest = between(20, 90);
    Profile profile(nullptr);
    profile.fill(items, longest);
    std::vector<double> best(static_cast<std::size_t>(longest) + 1);
    const std::function<void(std::size_t, Nanometres, double)> go = [&](std::size_t i, Nanometres length,
                                                                        double worth) {
      if (length > longest) return;
      if (i == items.size()) {
        auto& known = best[static_cast<std::size_t>(length)];
        known = std::max(known, worth);
        return;
      }
      for (int n = 0; n <= items[i].most; ++n)
        go(i + 1, length + n * items[i].twice_length, worth + n * items[i].worth);
    };
    go(0, 0, 0);
    std::size_t step = 0;
    double most = 0;
    for (Nanometres length = 0; length <= longest; ++length) {
      most = std::max(most, best[static_cast<std::size_t>(length)]);
      while (step + 1 < profile.steps().size() && profile.steps()[step + 1].twice_length <= length) ++step;
      ASSERT_EQ(profile.steps()[step].worth, most) << length;
    }
    for (const Profile::Step& of : profile.steps()) {
      const std::vector<int> counts = profile.counts(of);
      Nanometres length = 0;
      double worth = 0;
      for (std::size_t i = 0; i < items.size(); ++i) {
        length += counts[i] * items[i].twice_length;
        worth += counts[i] * items[i].worth;
      }
      EXPECT_EQ(length, of.twice_length);
      EXPECT_EQ(worth, of.worth);
    }
  }
}
