// Published instances of the one-dimensional cutting stock problem; each file in data/cutting names its source.
#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"

using namespace models::cutting;
using testing::IsEmpty;

namespace {

void expect_optima(const std::string& file, int instances) {
  std::ifstream in(PROJECT_DIR "/tests/data/cutting/" + file);
  std::string line;
  int found = 0;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream head(line);
    std::string name;
    Nanometres capacity = 0;
    int lengths = 0;
    int optimum = 0;
    ASSERT_TRUE(head >> name >> capacity >> lengths >> optimum) << line;
    SCOPED_TRACE(name);
    StickOrder order;
    order.sections = {{"stick", 1, 1}};
    order.stock = {{0, capacity, 1, {}}};
    for (int i = 0; i < lengths; ++i) {
      ASSERT_TRUE(std::getline(in, line));
      std::istringstream row(line);
      Piece piece;
      ASSERT_TRUE(row >> piece.length >> piece.count);
      piece.mark = std::to_string(i);
      order.pieces.push_back(piece);
    }
    const StickPlan plan = plan_sticks(order);
    EXPECT_EQ(plan.status, PlanStatus::optimal);
    EXPECT_EQ(plan.cost, optimum);
    EXPECT_EQ(plan.bound, optimum);
    EXPECT_THAT(faults_in(order, plan), IsEmpty());
    ++found;
  }
  EXPECT_EQ(found, instances);
}

}  // namespace

TEST(PublishedCutting, Falkenauer) { expect_optima("falkenauer.txt", 9); }

TEST(PublishedCutting, Scholl) { expect_optima("scholl.txt", 2); }

TEST(PublishedCutting, WaescherAndGau) { expect_optima("waescher.txt", 17); }
