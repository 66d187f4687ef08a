// How short a board, or a part of one, may be ripped. By hand: boards of 96 in, 1/4 in trimmed off either end, leave
// 95-1/2 in; a crosscut takes 1/8 in.
#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cut_plan.h"
#include "models/cutting/verify.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

using cutting::PlanStatus;

CutPlan plan_of(const std::string& stock, const std::string& sticks) {
  const ReadResult read = read_design(
      "<coop units='in'><stock>" + stock + "</stock><extra>" + sticks + "</extra></coop>", "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  const Building building = build(read.design);
  CutPlan plan = cut_plan(read.design, building, scene(building));
  EXPECT_THAT(cutting::faults_in(plan.sticks.order, plan.plan), testing::IsEmpty());
  return plan;
}

std::string saw(const std::string& shortest_rip) {
  return shortest_rip.empty() ? "" : "<saw shortest-rip='" + shortest_rip + "'/>";
}

// Two strips of 10 in side by side, and 84 in of the board they are ripped from.
std::string two_short_strips_and_a_long_stick(const std::string& strip, const std::string& board) {
  return "<stick name='s' lumber='" + strip + "' length='10in'/><stick name='s' lumber='" + strip +
         "' length='10in' y='10in'/><stick name='l' lumber='" + board + "' length='84in' y='20in'/>";
}

CutPlan with_shortest_rip(const std::string& shortest) {
  return plan_of(saw(shortest) + "<sold lumber='2x4' length='8ft' price='4'/>",
                 two_short_strips_and_a_long_stick("2x2", "2x4"));
}

TEST(ShortestRip, APartIsRippedWhereItIsLongEnough) {
  // 10 + 1/8 + 84 = 94-1/8 in: one board, crosscut 10 in from its trimmed end.
  const CutPlan plan = with_shortest_rip("6in");
  EXPECT_EQ(plan.plan.status, PlanStatus::optimal);
  EXPECT_EQ(plan.plan.cost, 400);
  ASSERT_EQ(plan.plan.boards.size(), 1U);
  EXPECT_EQ(plan.plan.boards[0].ripped_to, nanometres(geometry::inches(10.25)));
  // Without it a second board is ripped.
  EXPECT_EQ(plan.plan.whole_rips_bound, 800);
}

TEST(ShortestRip, AShorterPartIsNot) {
  // 12 + 1/8 + 84 = 96-1/8 in: the rest would be too short. 12 in are common practice.
  const CutPlan plan = with_shortest_rip("");
  EXPECT_EQ(plan.plan.status, PlanStatus::optimal);
  EXPECT_EQ(plan.plan.cost, 800);
  EXPECT_EQ(plan.plan.boards.size(), 2U);
  EXPECT_EQ(with_shortest_rip("12in").plan.cost, 800);
}

TEST(ShortestRip, APartIsCutOffLongerThanItsStripsWhereTheRestAllowsIt) {
  // 11-3/8 + 1/8 + 84 = 95-1/2 in: all there is.
  const CutPlan plan = with_shortest_rip("11-3/8in");
  EXPECT_EQ(plan.plan.cost, 400);
  ASSERT_EQ(plan.plan.boards.size(), 1U);
  EXPECT_EQ(plan.plan.boards[0].ripped_to, nanometres(geometry::inches(0.25 + 11.375)));
  EXPECT_EQ(with_shortest_rip("11-7/16in").plan.cost, 800);
}

TEST(ShortestRip, AShortBoardAtHandIsNotRippedAtAll) {
  // 12-1/2 in less its ends are 12; two strips of 10 in come out of it for nothing.
  const auto cost = [](const std::string& spare, const std::string& shortest) {
    return plan_of(saw(shortest) + "<sold lumber='2x4' length='8ft' price='4'/><spare lumber='2x4' length='" +
                       spare + "'/>",
                   "<stick name='s' lumber='2x2' length='10in'/>"
                   "<stick name='s' lumber='2x2' length='10in' y='10in'/>")
        .plan.cost;
  };
  EXPECT_EQ(cost("12-1/2in", ""), 0);
  EXPECT_EQ(cost("12-7/16in", ""), 400);
  EXPECT_EQ(cost("12-7/16in", "11in"), 0);
}

TEST(ShortestRip, WhatIsSoldTooShortToRipOffersNoStrips) {
  // Of 2x2 nothing is said, and 2x4 comes in 12 in: less its ends that is under 12 in. So 2x2 is taken to be on sale.
  const std::string strip = "<stick name='s' lumber='2x2' length='10in'/>";
  const std::string short_boards = "<sold lumber='2x4' length='12in' price='1'/>";
  const CutPlan plan = plan_of(short_boards, strip);
  EXPECT_THAT(plan.problems, testing::IsEmpty());
  EXPECT_THAT(plan.sticks.usual, testing::ElementsAre("2x2"));
  EXPECT_THAT(plan_of(saw("6in") + short_boards, strip).sticks.usual, testing::IsEmpty());
  // Where it is on sale, too short, the strip alone is left out.
  const std::string all_short = short_boards + "<sold lumber='2x2' length='8in' price='1'/>";
  const std::string both = strip + "<stick name='l' lumber='2x4' length='11in' y='10in'/>";
  const CutPlan without = plan_of(all_short, both);
  EXPECT_THAT(without.problems,
              testing::ElementsAre(testing::HasSubstr("is longer than any board of 2x2 that is on sale")));
  EXPECT_EQ(without.plan.cost, 100);
  const CutPlan with = plan_of(saw("6in") + all_short, both);
  EXPECT_THAT(with.problems, testing::IsEmpty());
  EXPECT_EQ(with.plan.cost, 200);
}

TEST(ShortestRip, WhatWholeRipsCostIsToldApartForWoodWithoutPrices) {
  // One board of 2x4 at 4.00 and one of 1x4, of no known price, where parts are ripped; else two of each.
  const CutPlan plan = plan_of(
      saw("6in") + "<sold lumber='2x4' length='8ft' price='4'/><sold lumber='1x4' length='8ft'/>",
      two_short_strips_and_a_long_stick("2x2", "2x4") +
          "<stick name='s' lumber='1x2' length='10in' y='30in'/><stick name='s' lumber='1x2' length='10in' "
          "y='40in'/><stick name='l' lumber='1x4' length='84in' y='50in'/>");
  EXPECT_EQ(plan.plan.cost, 400);
  EXPECT_EQ(plan.plan.bound, 400);
  EXPECT_EQ(plan.plan.whole_rips_bound, 800);
  ASSERT_TRUE(plan.least_wood);
  // 3/4 x 3-1/2 x 96 in, rounded up to whole mm3.
  const auto board = static_cast<Money>(std::ceil(0.75 * 3.5 * 96 * 16387.064));
  EXPECT_EQ(plan.least_wood->volume, board);
  EXPECT_EQ(plan.least_wood->bound, board);
  EXPECT_EQ(plan.least_wood->whole_rips_bound, 2 * board);
}

}  // namespace
}  // namespace models
