// The checker finds what is wrong with a plan that was sound.
#include <limits>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/verify.h"

using namespace models::cutting;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

namespace {

// Boards of 10 by 100 that are cut whole or ripped into strips of 4; kerfs of 1, trims of 2.
StickOrder order_of_two() {
  StickOrder order;
  order.sections = {{"strip", 4, 10}, {"board", 10, 10}};
  order.pieces = {{"A", 1, 40, 2}, {"B", 0, 96, 2}, {"C", 1, 20, 1}};
  order.stock = {{1, 100, 50, {}}};
  order.on_hand = {{"H", 1, 60, 1, 3, {{10, 12}}}};
  order.rips = {{1, 0, 7}};
  order.saw = {1, 1, 2, 0};
  return order;
}

// By hand: a board with both A, a board ripped into two B, C from the piece on hand behind its defect.
StickPlan plan_of_two() {
  StickPlan plan;
  plan.status = PlanStatus::best_found;
  plan.boards = {
      {true, 0, 50, {{1, 0, {{0, 2}, {0, 43}}, {{84, 98}}}}, 0},
      {true, 0, 64, {{0, 0, {{1, 2}}, {}}, {0, 5, {{1, 2}}, {}}}, 0},
      {false, 0, 3, {{1, 0, {{2, 12}}, {{2, 10}, {33, 58}}}}, 0},
  };
  plan.cost = 117;
  plan.bought = 2;
  plan.set_ups = 3;
  plan.longest_leftover = 25;
  return plan;
}

template <typename Spoil>
std::vector<std::string> faults_after(const Spoil& spoil) {
  StickPlan plan = plan_of_two();
  spoil(plan);
  return faults_in(order_of_two(), plan);
}

}  // namespace

TEST(Verify, ASoundPlanHasNoFaults) { EXPECT_THAT(faults_in(order_of_two(), plan_of_two()), IsEmpty()); }

TEST(Verify, FindsPiecesThatDoNotFit) {
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].pieces[1].at = 42; }),
              Contains(HasSubstr("A overlaps the piece before it, its kerf")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].pieces[0].at = 1; }),
              Contains(HasSubstr("the trimmed end")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].pieces[1].at = 59; }),
              Contains(HasSubstr("A runs past the end")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[2].sticks[0].pieces[0].at = 11; }),
              Contains(HasSubstr("C touches a defect")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].sticks[0].pieces[0].piece = 0; }),
              Contains(HasSubstr("A is cut from the wrong section")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].leftovers[0].from = 82; }),
              Contains(HasSubstr("a leftover overlaps a piece")));
}

TEST(Verify, FindsStripsThatDoNotFit) {
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].sticks[1].across = 4; }),
              Contains(HasSubstr("strips overlap")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].sticks[1].across = 7; }),
              Contains(HasSubstr("strips are wider than it is")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].leftover_width = 1; }),
              Contains(HasSubstr("the strip left over has another width")));
  StickOrder order = order_of_two();
  order.rips.clear();
  EXPECT_THAT(faults_in(order, plan_of_two()), Contains(HasSubstr("no rule to rip strip")));
  order = order_of_two();
  order.saw.edge_trim = 1;
  EXPECT_THAT(faults_in(order, plan_of_two()), Contains(HasSubstr("strips")));
}

namespace {

// The same boards, from which two strips of 48 and a piece of 40 are wanted.
StickOrder order_of_part() {
  StickOrder order = order_of_two();
  order.pieces = {{"A", 1, 40, 1}, {"B", 0, 48, 2}};
  order.on_hand = {{"H", 1, 100, 1, 50, {{94, 95}}}};
  return order;
}

// By hand: crosscut at 50, the strips run from the trim of 2 to there and are one B each; two rips are 14. The rest begins
// a kerf behind, at 51, and ends at 98: A, and behind its kerf 6.
StickPlan plan_of_part() {
  StickPlan plan;
  plan.status = PlanStatus::best_found;
  plan.boards = {
      {true, 0, 64, {{0, 0, {{1, 2}}, {}}, {0, 5, {{1, 2}}, {}}, {1, 0, {{0, 51}}, {{92, 98}}}}, 50, 0}};
  plan.cost = 64;
  plan.bought = 1;
  plan.set_ups = 2;
  plan.longest_leftover = 6;
  return plan;
}

template <typename Spoil>
std::vector<std::string> part_faults_after(const Spoil& spoil) {
  StickPlan plan = plan_of_part();
  spoil(plan.boards[0]);
  return faults_in(order_of_part(), plan);
}

}  // namespace

TEST(Verify, ABoardMayBeRippedInPart) {
  EXPECT_THAT(faults_in(order_of_part(), plan_of_part()), IsEmpty());
  // A rest that nothing is cut from is left over whole: 98 - 51.
  StickOrder order = order_of_part();
  order.pieces[0].count = 0;
  StickPlan plan = plan_of_part();
  plan.boards[0].sticks[2] = {1, 0, {}, {{51, 98}}};
  plan.set_ups = 1;
  plan.longest_leftover = 47;
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
}

TEST(Verify, FindsPiecesThatDoNotFitAPartRippedBoard) {
  EXPECT_THAT(part_faults_after([](Board& b) { b.ripped_to = 49; }),
              testing::ElementsAre(HasSubstr("B runs past the end"), HasSubstr("B runs past the end")));
  EXPECT_THAT(
      part_faults_after([](Board& b) { b.ripped_to = 51; }),
      testing::ElementsAre(HasSubstr("A overlaps the piece before it, its kerf, the trimmed end or the "
                                     "crosscut")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.sticks[0].pieces[0].at = 1; }),
              testing::ElementsAre(HasSubstr("B overlaps the piece before it")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.sticks[2].pieces[0].at = 59; }),
              testing::Contains(HasSubstr("A runs past the end")));
  EXPECT_THAT(part_faults_after([](Board& b) {
                b.sticks[1].leftovers = {{50, 51}};
              }),
              testing::ElementsAre(HasSubstr("a leftover lies outside it")));
  EXPECT_THAT(part_faults_after([](Board& b) {
                b.sticks[2].leftovers = {{50, 51}, {92, 98}};
              }),
              testing::ElementsAre(HasSubstr("a leftover lies outside it")));
}

TEST(Verify, FindsWhatIsWrongWithTheRest) {
  EXPECT_THAT(part_faults_after([](Board& b) { std::swap(b.sticks[1], b.sticks[2]); }),
              Contains(HasSubstr("its rest does not come last")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.sticks.pop_back(); }),
              Contains(HasSubstr("its rest does not come last")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.sticks[2].across = 1; }),
              testing::ElementsAre(HasSubstr("its rest does not lie at its edge")));
  // Two rests: the first would have to be a strip.
  EXPECT_THAT(part_faults_after([](Board& b) {
                b.sticks.push_back({1, 0, {}, {}});
              }),
              Contains(HasSubstr("no rule to rip board from it")));
  // Ripped whole, a board has no rest.
  EXPECT_THAT(part_faults_after([](Board& b) { b.ripped_to = 0; }),
              Contains(HasSubstr("no rule to rip board from it")));
}

TEST(Verify, FindsCrosscutsThatDivideNothing) {
  EXPECT_THAT(part_faults_after([](Board& b) { b.ripped_to = 2; }),
              Contains(HasSubstr("its crosscut leaves nothing to rip")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.ripped_to = 97; }),
              Contains(HasSubstr("its crosscut leaves no rest")));
  for (const Nanometres bad : {Nanometres{-1}, Nanometres{101}, std::numeric_limits<Nanometres>::max()}) {
    EXPECT_THAT(part_faults_after([&](Board& b) { b.ripped_to = bad; }),
                Contains(HasSubstr("lies beyond the board")));
  }
  // Nothing but the rest.
  EXPECT_THAT(part_faults_after([](Board& b) {
                b.sticks.erase(b.sticks.begin(), b.sticks.begin() + 2);
                b.cost = 50;
              }),
              Contains(HasSubstr("it is crosscut to be ripped, but no strip comes out of it")));
  StickPlan plan = plan_of_two();
  plan.boards[0].ripped_to = 50;
  EXPECT_THAT(faults_in(order_of_two(), plan),
              Contains(HasSubstr("it is crosscut to be ripped, but no strip comes out of it")));
}

TEST(Verify, FindsRipsThatMustNotBe) {
  // From the trim of 2 to the crosscut at 50 there are 48; a board that is ripped whole has 96.
  StickOrder order = order_of_part();
  order.saw.shortest_rip = 48;
  EXPECT_THAT(faults_in(order, plan_of_part()), IsEmpty());
  order.saw.shortest_rip = 49;
  EXPECT_THAT(faults_in(order, plan_of_part()),
              testing::ElementsAre(HasSubstr("board 1: it is too short to be ripped safely")));
  StickOrder whole = order_of_two();
  whole.saw.shortest_rip = 96;
  EXPECT_THAT(faults_in(whole, plan_of_two()), IsEmpty());
  whole.saw.shortest_rip = 97;
  EXPECT_THAT(faults_in(whole, plan_of_two()),
              testing::ElementsAre(HasSubstr("board 2: it is too short to be ripped safely")));
  order = order_of_part();
  order.ripping = Ripping::whole;
  EXPECT_THAT(faults_in(order, plan_of_part()),
              testing::ElementsAre(HasSubstr("it is ripped in part, which it must not")));
  whole = order_of_two();
  whole.ripping = Ripping::whole;
  EXPECT_THAT(faults_in(whole, plan_of_two()), IsEmpty());
}

TEST(Verify, APartRippedBoardHasNoDefectsAndPaysForEveryRip) {
  // The board on hand is as long and counts 50 too; its defect lies behind A, where no piece touches it.
  StickPlan plan = plan_of_part();
  plan.boards[0].bought = false;
  plan.boards[0].sticks[2].leftovers = {};
  plan.bought = 0;
  plan.longest_leftover = 0;
  EXPECT_THAT(faults_in(order_of_part(), plan),
              testing::ElementsAre(HasSubstr("it is ripped in part, though it has defects")));
  StickOrder order = order_of_part();
  order.on_hand[0].defects.clear();
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
  EXPECT_THAT(part_faults_after([](Board& b) { b.cost = 57; }), Contains(HasSubstr("work of ripping")));
  EXPECT_THAT(part_faults_after([](Board& b) { b.leftover_width = 1; }),
              testing::ElementsAre(HasSubstr("the strip left over has another width")));
}

TEST(Verify, FindsWrongCountsAndMoney) {
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].sticks[1].pieces.clear(); }),
              Contains(HasSubstr("B is cut 1 times, not 2")));
  EXPECT_THAT(faults_after([](StickPlan& p) {
                p.boards[0].sticks[0].pieces.push_back({2, 84});
              }),
              Contains(HasSubstr("C runs past the end")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards.push_back(p.boards[2]); }),
              Contains(HasSubstr("used more often than it can be had")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[1].cost = 57; }),
              Contains(HasSubstr("work of ripping")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.cost = 116; }),
              Contains(HasSubstr("not the sum of its boards")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.bought = 3; }),
              Contains(HasSubstr("another number of boards")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.set_ups = 2; }), Contains(HasSubstr("the stop is set")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.longest_leftover = 26; }),
              Contains(HasSubstr("longest leftover")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.bound = 118; }),
              Contains(HasSubstr("bound lies above its cost")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.status = PlanStatus::optimal; }),
              Contains(HasSubstr("without a bound")));
}

TEST(Verify, NumbersFromNowhereAreFaultsToo) {
  constexpr std::int64_t huge = std::numeric_limits<std::int64_t>::max();
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].source = 9; }),
              Contains(HasSubstr("comes from nowhere")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[2].source = -1; }),
              Contains(HasSubstr("comes from nowhere")));
  for (const std::int64_t bad : {huge, -huge}) {
    EXPECT_THAT(faults_after([&](StickPlan& p) { p.boards[0].sticks[0].pieces[0].at = bad; }),
                Contains(HasSubstr("lies beyond the board")));
    EXPECT_THAT(faults_after([&](StickPlan& p) { p.boards[1].sticks[0].across = bad; }),
                Contains(HasSubstr("lies beyond the board")));
    EXPECT_THAT(faults_after([&](StickPlan& p) { p.boards[0].cost = bad; }),
                Contains(HasSubstr("lies beyond the board")));
  }
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].section = 5; }),
              Contains(HasSubstr("lies beyond the board")));
  EXPECT_THAT(faults_after([](StickPlan& p) { p.boards[0].sticks[0].pieces[0].piece = 77; }),
              Contains(HasSubstr("none of the order's")));
}

namespace {

// Parallelograms of 100 that lean 30 over a width of 40, with a kerf of 4: 5 along a slanted cut (3-4-5). By hand: the
// second begins 100 + 5 - 30 = 75 behind the first.
StickOrder order_of_slopes() {
  StickOrder order;
  order.sections = {{"board", 40, 10}};
  order.pieces = {{"A", 0, 100, 2, 30, 30, false}, {"B", 0, 100, 1, 30, -30, false}};
  order.stock = {{0, 300, 50, {}}};
  order.saw = {4, 4, 0, 0};
  return order;
}

// A and A tip to tip, then B turned end for end: it leans -30 and 30, so its long points keep a kerf.
StickPlan plan_of_slopes() {
  StickPlan plan;
  plan.status = PlanStatus::best_found;
  plan.boards = {{true, 0, 50, {{0, 0, {{0, 0}, {0, 75}, {1, 179, true}}, {{284, 300}}}}, 0}};
  plan.cost = 50;
  plan.bought = 1;
  plan.set_ups = 1;
  plan.longest_leftover = 16;
  return plan;
}

template <typename Spoil>
std::vector<std::string> slope_faults_after(const Spoil& spoil) {
  StickPlan plan = plan_of_slopes();
  spoil(plan.boards[0].sticks[0].pieces);
  return faults_in(order_of_slopes(), plan);
}

}  // namespace

TEST(Verify, EndsOfOneSlopeMayMeet) {
  EXPECT_THAT(faults_in(order_of_slopes(), plan_of_slopes()), IsEmpty());
}

TEST(Verify, FindsSlopesThatOverlap) {
  using Pieces = std::vector<CutPiece>;
  EXPECT_THAT(slope_faults_after([](Pieces& p) { p[1].at = 74; }),
              Contains(HasSubstr("A overlaps the piece before")));
  EXPECT_THAT(slope_faults_after([](Pieces& p) { p[2].at = 178; }),
              Contains(HasSubstr("B overlaps the piece before")));
  // As drawn, B's left end has the slope of A's right end, and it may lie as near as A does.
  EXPECT_THAT(slope_faults_after([](Pieces& p) { p[2] = {1, 150, false}; }), IsEmpty());
  EXPECT_THAT(slope_faults_after([](Pieces& p) {
                p[2] = {1, 149, false};
              }),
              Contains(HasSubstr("B overlaps")));
  // Between A and A there are 5; turned over, the second leans the other way.
  EXPECT_THAT(slope_faults_after([](Pieces& p) { p[1].face_down = true; }),
              testing::AllOf(Contains(HasSubstr("A overlaps")),
                             Contains(HasSubstr("lies face down, which it must not"))));
  // Half a turn leaves a parallelogram's lean as it is.
  EXPECT_THAT(slope_faults_after([](Pieces& p) { p[1].turned = true; }), IsEmpty());
}
