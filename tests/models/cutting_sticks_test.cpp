// Plans worked out by hand.
#include <limits>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/first_fit.h"
#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"
#include "tests/models/sound_stick_plan.h"

using namespace models::cutting;
using test::sound_plan;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

namespace {

constexpr Nanometres inch = 25'400'000;
constexpr Nanometres foot = 12 * inch;
constexpr Nanometres mm = 1'000'000;
constexpr int two_by_two = 0;
constexpr int two_by_four = 1;

// Surfaced two-by-fours and two-by-twos, sawn with an eighth of an inch.
StickOrder order_in_inches() {
  StickOrder order;
  order.sections = {{"2x2", inch * 3 / 2, inch * 3 / 2}, {"2x4", inch * 7 / 2, inch * 3 / 2}};
  order.saw = {inch / 8, inch / 8, 0, 0};
  return order;
}

}  // namespace

TEST(Sticks, TheLastPieceNeedsNoKerf) {
  // Four pieces with three kerfs between them: 4 x 23 29/32 + 3/8 = 96 in.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, inch * 765 / 32, 4}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  EXPECT_EQ(sound_plan(order).bought, 1);
  order.pieces[0].length += inch / 128;  // 96 1/32 in
  EXPECT_EQ(sound_plan(order).bought, 2);
}

TEST(Sticks, BothEndsAreTrimmed) {
  StickOrder order = order_in_inches();
  order.saw.end_trim = inch / 2;
  order.pieces = {{"A", two_by_four, 95 * inch, 1}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.boards.at(0).sticks.at(0).pieces.at(0).at, inch / 2);
  EXPECT_THAT(plan.boards[0].sticks[0].leftovers, IsEmpty());
  order.pieces[0].length += 1;
  EXPECT_EQ(plan_sticks(order).status, PlanStatus::impossible);
}

TEST(Sticks, BuysTheLengthsThatCostLeast) {
  // Five 4 ft pieces, no kerf: 8 ft holds two for 5.00, 12 ft three for 7.00, 16 ft four for 11.00.
  // Two and three: 12.00; the best of the others: 3 x 5.00.
  StickOrder order = order_in_inches();
  order.saw = {};
  order.pieces = {{"A", two_by_four, 4 * foot, 5}};
  order.stock = {{two_by_four, 8 * foot, 500, {}},
                 {two_by_four, 12 * foot, 700, {}},
                 {two_by_four, 16 * foot, 1100, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 1200);
  EXPECT_EQ(plan.bought, 2);
  EXPECT_TRUE(plan.fewest_boards);
}

TEST(Sticks, OfEqualCostsTheFewestBoardsAreBought) {
  // Four 4 ft pieces: two 8 ft boards or one 16 ft board, both for 10.00.
  StickOrder order = order_in_inches();
  order.saw = {};
  order.pieces = {{"A", two_by_four, 4 * foot, 4}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}, {two_by_four, 16 * foot, 1000, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 1000);
  EXPECT_EQ(plan.bought, 1);
}

TEST(Sticks, RipsWhereThatIsCheaper) {
  // A 2x4 gives two 2x2 strips: 1 1/2 + 1/8 + 1 1/2 = 3 1/8 in of 3 1/2. Two cuts free two strips, as the second one ends
  // before the edge. Three full-length 2x2: two boards at 4.00 and four cuts at 0.25 make 9.00; bought, 3 x 3.50 = 10.50;
  // one ripped and one bought: 4.50 + 3.50 = 8.00.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_two, 8 * foot, 3}};
  order.stock = {{two_by_two, 8 * foot, 350, {}}, {two_by_four, 8 * foot, 400, {}}};
  order.rips = {{two_by_four, two_by_two, 25}};
  StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 800);
  EXPECT_EQ(plan.bought, 2);
  // With 2x2 dear, two boards are ripped, and the third strip needs one cut: 8.00 + 0.75.
  order.stock[0].price = 600;
  plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 875);
  // Where the cuts cost nothing, the odd strip is left over whole.
  order.rips[0].work = 0;
  plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 800);
  ASSERT_EQ(plan.boards.size(), 2u);
  int strips = 0;
  int spare = 0;
  for (const Board& board : plan.boards) {
    EXPECT_EQ(board.sticks.at(1).across, inch * 13 / 8);
    EXPECT_EQ(board.leftover_width, inch / 4);  // 3 1/2 - 3 1/8 - 1/8
    for (const Stick& stick : board.sticks) {
      ++strips;
      spare += stick.pieces.empty();
    }
  }
  EXPECT_EQ(strips, 4);
  EXPECT_EQ(spare, 1);
  EXPECT_EQ(plan.longest_leftover, 8 * foot);
}

TEST(Sticks, EdgeTrimsTakeAwayAStrip) {
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_two, 8 * foot, 2}};
  order.stock = {{two_by_four, 8 * foot, 400, {}}};
  order.rips = {{two_by_four, two_by_two, 0}};
  EXPECT_EQ(sound_plan(order).bought, 1);
  order.saw.edge_trim = inch / 4;  // 3 in are left: one strip
  EXPECT_EQ(sound_plan(order).bought, 2);
}

TEST(Sticks, StripsOfSeveralSectionsComeOutOfOneBoard) {
  // A 2x6 of 5 1/2 in gives 3 1/2 + 1/8 + 1 1/2 = 5 1/8 in: one of each.
  StickOrder order = order_in_inches();
  order.sections.push_back({"2x6", inch * 11 / 2, inch * 3 / 2});
  order.pieces = {{"A", two_by_two, 90 * inch, 2}, {"B", two_by_four, 90 * inch, 2}};
  order.stock = {{2, 8 * foot, 700, {}}, {two_by_four, 8 * foot, 600, {}}, {two_by_two, 8 * foot, 400, {}}};
  order.rips = {{2, two_by_two, 0}, {2, two_by_four, 0}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 1400);
  EXPECT_EQ(plan.bought, 2);
}

TEST(Sticks, PiecesOnHandAreUsedWhereTheyPay) {
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 40 * inch, 2}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  order.on_hand = {{"offcut", two_by_four, 41 * inch, 2, 0, {}}};
  StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 0);
  EXPECT_EQ(plan.bought, 0);
  order.on_hand[0].value = 300;  // two of them are dearer than a new board
  plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 500);
  EXPECT_EQ(plan.bought, 1);
}

TEST(Sticks, NoPieceTouchesADefect) {
  // 100 in with a knot from 40 to 42 in: 40 in before it, 58 behind.
  StickOrder order = order_in_inches();
  order.on_hand = {{"old board", two_by_four, 100 * inch, 1, 0, {{40 * inch, 42 * inch}}}};
  order.pieces = {{"A", two_by_four, 40 * inch, 1}, {"B", two_by_four, 58 * inch, 1}};
  const StickPlan plan = sound_plan(order);
  ASSERT_EQ(plan.boards.size(), 1u);
  const Stick& stick = plan.boards[0].sticks.at(0);
  ASSERT_EQ(stick.pieces.size(), 2u);
  EXPECT_EQ(stick.pieces[0].piece, 0);
  EXPECT_EQ(stick.pieces[0].at, 0);
  EXPECT_EQ(stick.pieces[1].at, 42 * inch);
  order.pieces[1].length = 59 * inch;
  EXPECT_EQ(plan_sticks(order).status, PlanStatus::impossible);
}

TEST(Sticks, WithoutPricesTheLeastVolumeIsBought) {
  // Three 900 mm pieces of 38 x 89: 2.7 m hold them, of 2.4 m there would have to be two.
  StickOrder order;
  order.sections = {{"38x89", 89 * mm, 38 * mm}};
  order.pieces = {{"A", 0, 900 * mm, 3}};
  order.stock = {{0, 2400 * mm, {}, {}}, {0, 2700 * mm, 1, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_TRUE(plan.by_volume);
  EXPECT_EQ(plan.cost, 38 * 89 * 2700);
}

TEST(Sticks, AMissingPriceOfNoAccountLeavesPricesInForce) {
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 4 * foot, 1}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}, {two_by_two, 8 * foot, {}, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_FALSE(plan.by_volume);
  EXPECT_EQ(plan.cost, 500);
}

TEST(Sticks, LimitedBoardsGoToThePiecesThatNeedThem) {
  // The one cheap 12 ft board must take the 10 ft piece.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 10 * foot, 1}, {"B", two_by_four, 7 * foot, 1}};
  order.stock = {{two_by_four, 12 * foot, 100, 1}, {two_by_four, 8 * foot, 500, {}}};
  EXPECT_EQ(sound_plan(order).cost, 600);
  order.pieces[0].count = 2;
  const StickPlan plan = plan_sticks(order);
  EXPECT_EQ(plan.status, PlanStatus::impossible);
  EXPECT_THAT(plan.problems, ElementsAre(HasSubstr("do not hold all pieces")));
}

TEST(Sticks, EqualLengthsShareABoardWhereThatCostsNothing) {
  // Two boards for four pieces of 40 in and four of 7 in: 2 x 40 + 2 x 7 on each, or so that the stop stands at 40, 7,
  // 7 and 40: the second board begins where the first ended.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 40 * inch, 4}, {"B", two_by_four, 7 * inch, 4}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.bought, 2);
  EXPECT_EQ(plan.set_ups, 3);
}

TEST(Sticks, LeftoversGrowTogether) {
  // Six 20 in pieces need two 8 ft boards. Three and three leave 36 in on each; four and two leave 56.
  StickOrder order = order_in_inches();
  order.saw = {};
  order.pieces = {{"A", two_by_four, 20 * inch, 6}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  const StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.bought, 2);
  EXPECT_EQ(plan.longest_leftover, 56 * inch);
}

TEST(Sticks, TheSameOrderGivesTheSamePlan) {
  StickOrder order = order_in_inches();
  for (int i = 0; i < 30; ++i)
    order.pieces.push_back({std::to_string(i), i % 2, (20 + 7 * i % 53) * inch / 2, 1 + i % 4});
  order.stock = {
      {0, 8 * foot, 300, {}}, {0, 10 * foot, 410, {}}, {1, 8 * foot, 450, {}}, {1, 12 * foot, 700, {}}};
  order.rips = {{1, 0, 15}};
  const StickPlan a = sound_plan(order);
  const StickPlan b = sound_plan(order);
  ASSERT_EQ(a.boards.size(), b.boards.size());
  for (std::size_t i = 0; i < a.boards.size(); ++i) {
    ASSERT_EQ(a.boards[i].source, b.boards[i].source);
    ASSERT_EQ(a.boards[i].sticks.size(), b.boards[i].sticks.size());
    for (std::size_t s = 0; s < a.boards[i].sticks.size(); ++s) {
      const auto& x = a.boards[i].sticks[s].pieces;
      const auto& y = b.boards[i].sticks[s].pieces;
      ASSERT_EQ(x.size(), y.size());
      for (std::size_t p = 0; p < x.size(); ++p) {
        EXPECT_EQ(x[p].piece, y[p].piece);
        EXPECT_EQ(x[p].at, y[p].at);
      }
    }
  }
  EXPECT_EQ(a.work.nodes, b.work.nodes);
  EXPECT_EQ(a.work.lp_iterations, b.work.lp_iterations);
}

TEST(Sticks, APlanComesWithABoundHoweverLittleWorkIsAllowed) {
  StickOrder order = order_in_inches();
  for (int i = 0; i < 40; ++i)
    order.pieces.push_back({std::to_string(i), 1, (150 + 61 * i % 397) * inch / 8, 2 + i % 3});
  order.stock = {{1, 8 * foot, 450, {}}, {1, 10 * foot, 590, {}}, {1, 12 * foot, 660, {}}};
  const StickPlan best = sound_plan(order);
  for (const std::int64_t work : {0, 1, 10, 100, 1'000}) {
    order.limits = {work, work, work * 100};
    const StickPlan plan = plan_sticks(order);
    EXPECT_THAT(plan.status, testing::AnyOf(PlanStatus::best_found, PlanStatus::optimal));
    EXPECT_THAT(faults_in(order, plan), IsEmpty());
    EXPECT_GE(plan.cost, best.cost);
    EXPECT_LE(plan.bound, best.cost);
  }
}

TEST(Sticks, WhatDoesNotFitIsNamed) {
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 9 * foot, 1}, {"B", two_by_two, 1 * foot, 1}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  const StickPlan plan = plan_sticks(order);
  EXPECT_EQ(plan.status, PlanStatus::impossible);
  EXPECT_THAT(plan.problems,
              ElementsAre(HasSubstr("piece A is longer"), HasSubstr("piece B: no board gives 2x2")));
}

TEST(Sticks, NothingAskedForIsAPlanOfNothing) {
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_four, 9 * foot, 0}};
  const StickPlan plan = sound_plan(order);
  EXPECT_THAT(plan.boards, IsEmpty());
  EXPECT_EQ(plan.cost, 0);
  EXPECT_EQ(sound_plan(StickOrder{}).cost, 0);
}

TEST(Sticks, APartIsRippedWhereItAndTheRestAreAllThereIs) {
  // Two strips of 10 in side by side, a crosscut of 1/8 and 84 in: 94-1/8 in.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_two, 10 * inch, 2}, {"B", two_by_four, 84 * inch, 1}};
  order.rips = {{two_by_four, two_by_two, 0}};
  order.stock = {{two_by_four, 94 * inch + inch / 8, 400, {}}};
  EXPECT_EQ(sound_plan(order).cost, 400);
  order.stock[0].length += 1;
  EXPECT_EQ(sound_plan(order).cost, 400);
  order.stock[0].length -= 2;
  EXPECT_EQ(sound_plan(order).cost, 800);
}

TEST(Sticks, NoBoardIsRippedThatIsTooShort) {
  // Strips of 10 in out of boards of 12 in and of 11 in.
  StickOrder order = order_in_inches();
  order.pieces = {{"A", two_by_two, 10 * inch, 2}};
  order.rips = {{two_by_four, two_by_two, 0}};
  order.stock = {{two_by_four, 12 * inch, 400, {}}, {two_by_four, 11 * inch, 300, {}}};
  EXPECT_EQ(sound_plan(order).cost, 300);
  order.saw.shortest_rip = 12 * inch;
  EXPECT_EQ(sound_plan(order).cost, 400);
  order.saw.shortest_rip += 1;
  const StickPlan plan = plan_sticks(order);
  EXPECT_EQ(plan.status, PlanStatus::impossible);
  EXPECT_THAT(plan.problems, ElementsAre(HasSubstr("piece A: no board gives 2x2")));
}

TEST(Sticks, HostileNumbersAreRefused) {
  StickOrder sound = order_in_inches();
  sound.pieces = {{"A", two_by_four, 4 * foot, 1}};
  sound.stock = {{two_by_four, 8 * foot, 500, {}}};
  sound.on_hand = {{"H", two_by_four, 3 * foot, 1, 0, {{foot, 2 * foot}}}};
  sound.rips = {{two_by_four, two_by_two, 0}};
  sound_plan(sound);
  const auto refused = [&](const auto& spoil) {
    for (const std::int64_t bad : {std::numeric_limits<std::int64_t>::min(), std::int64_t{-1},
                                   std::numeric_limits<std::int64_t>::max()}) {
      StickOrder order = sound;
      spoil(order, bad);
      const StickPlan plan = plan_sticks(order);
      EXPECT_EQ(plan.status, PlanStatus::refused);
      EXPECT_FALSE(plan.problems.empty());
      EXPECT_THAT(plan.boards, IsEmpty());
      EXPECT_EQ(first_fit_decreasing(order).status, PlanStatus::refused);
    }
  };
  refused([](StickOrder& o, std::int64_t bad) { o.sections[0].width = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.sections[1].thickness = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.pieces[0].length = bad; });
  refused([](StickOrder& o, std::int64_t bad) {
    o.pieces[0].section = static_cast<int>(bad == 0 ? 7 : bad | 8);
  });
  refused([](StickOrder& o, std::int64_t bad) { o.stock[0].length = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.stock[0].price = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.on_hand[0].length = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.on_hand[0].value = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.on_hand[0].defects[0].from = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.rips[0].work = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.saw.kerf = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.saw.rip_kerf = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.saw.end_trim = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.saw.edge_trim = bad; });
  refused([](StickOrder& o, std::int64_t bad) { o.saw.shortest_rip = bad; });
  for (const int bad : {std::numeric_limits<int>::min(), -1}) {
    StickOrder order = sound;
    order.pieces[0].count = bad;
    EXPECT_EQ(plan_sticks(order).status, PlanStatus::refused);
    order = sound;
    order.stock[0].available = bad;
    EXPECT_EQ(plan_sticks(order).status, PlanStatus::refused);
    order = sound;
    order.on_hand[0].count = bad;
    EXPECT_EQ(plan_sticks(order).status, PlanStatus::refused);
  }
  StickOrder order = sound;
  order.pieces[0].count = std::numeric_limits<int>::max();
  EXPECT_THAT(plan_sticks(order).problems, ElementsAre(HasSubstr("20,000 pieces")));
  order = sound;
  order.sections[0].width = 1;  // a board would give a million strips
  order.saw.rip_kerf = 0;
  EXPECT_THAT(plan_sticks(order).problems, ElementsAre(HasSubstr("too many ways to rip")));
  order = sound;
  order.sections[0].thickness += 1;
  EXPECT_THAT(plan_sticks(order).problems, ElementsAre(HasSubstr("2x2 cannot be ripped from 2x4")));
}

TEST(Sticks, TheLargestNumbersAllowedAddUp) {
  StickOrder order;
  order.sections = {{"beam", 2'000 * mm, 2'000 * mm}};
  order.pieces = {{"A", 0, 100'000 * mm, 10'000}, {"B", 0, 50'000 * mm, 10'000}};
  order.stock = {{0, 100'000 * mm, 1'000'000'000, {}}};
  StickPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 15'000 * Money{1'000'000'000});
  order.stock[0].price.reset();
  plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 15'000 * Money{400'000'000'000});  // 2 x 2 x 100 m
}

TEST(Sticks, TrimsLongerThanTheBoardLeaveNothing) {
  StickOrder order = order_in_inches();
  order.saw.end_trim = 6 * foot;
  order.pieces = {{"A", two_by_four, inch, 1}};
  order.stock = {{two_by_four, 8 * foot, 500, {}}};
  EXPECT_EQ(plan_sticks(order).status, PlanStatus::impossible);
  order.saw.end_trim = 0;
  order.saw.kerf = 6 * foot;  // a kerf wider than the pieces is odd, but one piece needs none
  EXPECT_EQ(sound_plan(order).bought, 1);
}

TEST(FirstFit, FillsTheFirstBoardWithRoomLongestFirst) {
  // 6, 5, 4, 3, 3, 3 ft in boards of 12 ft: 6 + 5, 4 + 3 + 3, 3. Two boards hold them: 6 + 3 + 3 and 5 + 4 + 3.
  StickOrder order = order_in_inches();
  order.saw = {};
  order.pieces = {{"A", 1, 6 * foot, 1}, {"B", 1, 5 * foot, 1}, {"C", 1, 4 * foot, 1}, {"D", 1, 3 * foot, 3}};
  order.stock = {{1, 12 * foot, 700, {}}};
  const StickPlan by_hand = first_fit_decreasing(order);
  EXPECT_EQ(by_hand.status, PlanStatus::best_found);
  EXPECT_EQ(by_hand.bought, 3);
  EXPECT_EQ(by_hand.cost, 2100);
  EXPECT_THAT(faults_in(order, by_hand), IsEmpty());
  EXPECT_EQ(sound_plan(order).bought, 2);
}

TEST(FirstFit, SwapsABoardForTheCheapestThatHoldsItsPieces) {
  StickOrder order = order_in_inches();
  order.saw = {};
  order.pieces = {{"A", 1, 6 * foot, 3}};
  order.stock = {{1, 12 * foot, 700, {}}, {1, 8 * foot, 400, {}}};
  const StickPlan by_hand = first_fit_decreasing(order);
  EXPECT_EQ(by_hand.cost, 1100);
  EXPECT_THAT(faults_in(order, by_hand), IsEmpty());
}
