// Whole houses as they are written for a flock: what they are cut from. Such orders mix hundreds of pieces of dozens of
// lengths, and keep the relaxations of the search at work for long.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cut_plan.h"
#include "models/cutting/verify.h"
#include "models/design_start.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

class FlockPlan : public testing::TestWithParam<StartChoices> {};
INSTANTIATE_TEST_SUITE_P(
    Birds, FlockPlan,
    testing::Values(StartChoices{11, BodySize::medium, Units::in, RoofKind::single_slope},
                    StartChoices{28, BodySize::medium, Units::in, RoofKind::single_slope},
                    StartChoices{29, BodySize::medium, Units::mm, RoofKind::single_slope},
                    StartChoices{33, BodySize::medium, Units::mm, RoofKind::single_slope},
                    StartChoices{37, BodySize::medium, Units::mm, RoofKind::gable}),
    [](const auto& flock) { return std::to_string(flock.param.birds); });

TEST_P(FlockPlan, HoldsAllPiecesNearItsBound) {
  const ReadResult read = read_design(start_design(GetParam()), "flock.xml");
  ASSERT_THAT(test::printed(read.problems), testing::IsEmpty());
  const Building building = build(read.design);
  const CutPlan plan = cut_plan(read.design, building, scene(building));
  EXPECT_THAT(plan.problems, testing::IsEmpty());
  EXPECT_THAT(cutting::faults_in(plan.sticks.order, plan.plan), testing::IsEmpty());
  EXPECT_LE(plan.plan.bound, plan.plan.cost);
  EXPECT_LE(plan.plan.bound, plan.plan.whole_rips_bound);
  EXPECT_LT(static_cast<double>(plan.plan.cost), 1.01 * static_cast<double>(plan.plan.bound));
  ASSERT_TRUE(plan.by_hand);
  EXPECT_LE(plan.plan.cost, plan.by_hand->cost);
}

}  // namespace
}  // namespace models
