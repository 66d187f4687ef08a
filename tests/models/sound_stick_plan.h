// A plan that has to be proven, and to hold against the independent checker.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"

namespace test {

inline models::cutting::StickPlan sound_plan(const models::cutting::StickOrder& order) {
  models::cutting::StickPlan plan = models::cutting::plan_sticks(order);
  EXPECT_THAT(plan.problems, testing::IsEmpty());
  EXPECT_EQ(plan.status, models::cutting::PlanStatus::optimal);
  EXPECT_EQ(plan.bound, plan.cost);
  EXPECT_THAT(faults_in(order, plan), testing::IsEmpty());
  return plan;
}

}  // namespace test
