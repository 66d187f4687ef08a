// How often plans of mitred pieces are proven, how long that takes, and what meeting tip to tip is worth.
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <random>
#include <string>

#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"

namespace {

using namespace models::cutting;

struct Case {
  int slopes;  // angles apart from their sense
  int marks;
  int most;           // pieces of a mark
  bool all_may_turn;  // else half of the marks must not lie face down
};

// 1x4 of 8, 10, 12 and 16 ft in 1/64 in; two thirds of all ends slope, both ways.
StickOrder order_of(const Case& of, unsigned seed) {
  std::mt19937 random(seed);
  const auto below = [&](unsigned n) { return static_cast<Nanometres>(random() % n); };
  const Nanometres leans[] = {59'266'667, 88'900'000, 41'000'000};  // 33.7, 45 and 24.8 degrees
  StickOrder order;
  order.limits = {20'000, 200'000, 200'000'000};  // as the program's
  order.sections = {{"1x4", 88'900'000, 19'050'000}};
  order.saw = {3'175'000, 3'175'000, 6'350'000, 0};
  for (int m = 0; m < of.marks; ++m) {
    Piece piece{"P" + std::to_string(m), 0, 396'875 * (800 + below(3500)),
                1 + static_cast<int>(below(static_cast<unsigned>(of.most)))};
    for (Nanometres* lean : {&piece.left_lean, &piece.right_lean})
      if (below(3) != 0) *lean = leans[below(static_cast<unsigned>(of.slopes))] * (below(2) == 0 ? 1 : -1);
    piece.may_turn_over = of.all_may_turn || below(2) == 0;
    order.pieces.push_back(piece);
  }
  for (const int feet : {8, 10, 12, 16})
    order.stock.push_back({0, feet * 304'800'000LL, feet * 55 + below(60), {}});
  return order;
}

void run(const Case& of) {
  constexpr int rounds = 20;
  int proven = 0;
  double sum = 0, longest = 0, gap = 0, dearer = 0;
  for (unsigned seed = 1; seed <= rounds; ++seed) {
    StickOrder order = order_of(of, seed);
    const std::clock_t start = std::clock();
    const StickPlan plan = plan_sticks(order);
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    for (const std::string& fault : faults_in(order, plan)) std::printf("WRONG: %s\n", fault.c_str());
    proven += plan.status == PlanStatus::optimal ? 1 : 0;
    sum += seconds;
    longest = std::max(longest, seconds);
    gap = std::max(gap, 1 - static_cast<double>(plan.bound) / static_cast<double>(plan.cost));
    for (Piece& piece : order.pieces) piece.left_lean = piece.right_lean = 0;
    dearer += static_cast<double>(plan_sticks(order).cost) / static_cast<double>(plan.cost) - 1;
  }
  std::printf("| %d | %d | 1-%d | %s | %d of %d | %.2f | %.2f | %.1f %% | +%.1f %% |\n", of.slopes, of.marks,
              of.most, of.all_may_turn ? "all" : "half", proven, rounds, sum / rounds, longest, gap * 100,
              dearer / rounds * 100);
}

}  // namespace

int main() {
  std::printf(
      "| angles | marks | of each | may turn over | proven | mean s | max s | gap at most | by long points "
      "|\n");
  for (const Case& of : {Case{1, 10, 4, true}, Case{1, 20, 6, true}, Case{1, 30, 10, false},
                         Case{2, 20, 6, true}, Case{2, 20, 6, false}, Case{3, 20, 4, false}})
    run(of);
}
