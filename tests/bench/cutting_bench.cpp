// How fast shop-sized cutting plans are proven, and what they save.
//   cutting_bench [CASES [SEED]]  cases of each sort (25), drawn from this seed on (0): other cases than those that the
//                             search was last looked at with
//   cutting_bench FILE...     published one-dimensional instances: a name, the length of the stock, the number of lengths
//                             and one number more, then length and count; lines that begin with # are left out
// A case is two sections, the wider of which may be ripped into two of the narrower, 20-60 lengths, 4-6 lengths on sale
// and 0-10 pieces on hand, some of them with a defect. All are planned twice: with boards that are ripped whole or not at
// all, and with parts of boards ripped too. Times are of the processor, on one thread.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <random>
#include <sstream>
#include <string>

#include "models/cutting/first_fit.h"
#include "models/cutting/sticks.h"
#include "models/cutting/verify.h"

namespace {

using namespace models::cutting;

class Draw {  // the standard's distributions differ between libraries, its engines do not
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  std::int64_t between(std::int64_t least, std::int64_t most) {
    return least + static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(most - least + 1));
  }

 private:
  std::mt19937_64 engine_;
};

struct Sort {
  Ripping ripping = Ripping::parts;
  bool metric = false;
  bool linear = false;  // prices in proportion to length
  int least_pieces = 100;
  int most_pieces = 400;
};

StickOrder shop_case(const Sort& sort, unsigned seed) {
  Draw draw(seed);
  StickOrder order;
  const Nanometres step = sort.metric ? 100'000 : 396'875;  // 0.1 mm or 1/64 in
  const Nanometres mm = 1'000'000;
  const Nanometres foot = 304'800'000;
  if (sort.metric) {
    order.sections = {{"38x38", 38 * mm, 38 * mm}, {"38x89", 89 * mm, 38 * mm}};
    order.saw = {3'200'000, 3'200'000, draw.between(0, 2) * 5 * mm, 0};
  } else {
    order.sections = {{"2x2", 38'100'000, 38'100'000}, {"2x4", 88'900'000, 38'100'000}};
    order.saw = {3'175'000, 3'175'000, draw.between(0, 2) * 6'350'000, 0};
  }
  const auto marks = draw.between(20, 60);
  const auto pieces = draw.between(sort.least_pieces, sort.most_pieces);
  for (std::int64_t m = 0; m < marks; ++m) {
    const std::int64_t shortest = sort.metric ? 1'500 : 380;  // steps: 150 mm, 6 in
    const std::int64_t longest = sort.metric ? 18'000 : 4'800;
    // Short pieces are the more common ones.
    const std::int64_t a = draw.between(shortest, longest);
    const std::int64_t b = draw.between(shortest, longest);
    order.pieces.push_back(
        {std::to_string(m + 1), draw.between(1, 100) <= 55 ? 0 : 1, step * std::min(a, b), 1});
  }
  for (std::int64_t p = marks; p < pieces; ++p)
    ++order.pieces[static_cast<std::size_t>(draw.between(0, marks - 1))].count;
  const auto lengths = draw.between(4, 6);
  for (int section = 0; section < 2; ++section) {
    const std::int64_t per_unit = section == 0 ? draw.between(80, 120) : draw.between(110, 170);
    for (std::int64_t l = 0; l < lengths; ++l) {
      const std::int64_t units = 4 + l;  // of two feet or 0.6 m
      const std::int64_t percent = sort.linear ? 100 : draw.between(88, 118) + l;
      order.stock.push_back(
          {section, units * (sort.metric ? 600 * mm : 2 * foot), units * per_unit * percent / 100, {}});
    }
  }
  order.rips = {{1, 0, draw.between(0, 40)}};
  order.ripping = sort.ripping;
  order.saw.shortest_rip = 300 * mm;
  const auto on_hand = draw.between(0, 10);
  for (std::int64_t h = 0; h < on_hand; ++h) {
    OnHand hand;
    hand.label = std::to_string(h + 1);
    hand.section = static_cast<int>(draw.between(0, 1));
    hand.length = step * (sort.metric ? draw.between(4'000, 24'000) : draw.between(1'000, 6'000));
    if (draw.between(1, 5) == 1) hand.defects = {{hand.length / 3, hand.length / 3 + 20 * step}};
    order.on_hand.push_back(hand);
  }
  return order;
}

double seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

double percent_over(Money cost, Money least) {
  return 100.0 * static_cast<double>(cost - least) / static_cast<double>(least);
}

void run(const char* name, const Sort& sort, int cases, unsigned first_seed) {
  int proven = 0, under_1 = 0, under_5 = 0, fewest = 0, in_part = 0;
  double total = 0, longest = 0, gap = 0, by_hand = 0, buying = 0;
  for (int c = 0; c < cases; ++c) {
    const unsigned seed = first_seed + static_cast<unsigned>(c);
    const StickOrder order = shop_case(sort, seed);
    const double start = seconds();
    const StickPlan plan = plan_sticks(order);
    const double took = seconds() - start;
    for (const std::string& fault : faults_in(order, plan)) std::printf("seed %u: %s\n", seed, fault.c_str());
    const bool optimal = plan.status == PlanStatus::optimal;
    if (!optimal || took > 2) {
      std::printf("seed %u: %.2f s, cost %lld, bound %lld, %lld nodes, %lld pivots, %lld M steps\n", seed,
                  took, static_cast<long long>(plan.cost), static_cast<long long>(plan.bound),
                  static_cast<long long>(plan.work.nodes), static_cast<long long>(plan.work.lp_iterations),
                  static_cast<long long>(plan.work.pricing_steps / 1'000'000));
    }
    proven += optimal;
    under_1 += optimal && took < 1;
    under_5 += optimal && took < 5;
    fewest += plan.fewest_boards;
    in_part += std::any_of(plan.boards.begin(), plan.boards.end(),
                           [](const Board& board) { return board.ripped_to > 0; });
    total += took;
    longest = std::max(longest, took);
    gap = std::max(gap, percent_over(plan.cost, plan.bound));
    StickOrder only_buying = order;
    only_buying.rips.clear();
    only_buying.on_hand.clear();
    const StickPlan bought = plan_sticks(only_buying);
    buying += percent_over(bought.cost, plan.cost);
    by_hand += percent_over(first_fit_decreasing(order).cost, plan.cost);
  }
  std::printf("%-28s %4d %7d %6d %6d %7d %7d %7.2f %7.2f %8.3f %+9.1f %+9.1f\n", name, cases, proven, under_1,
              under_5, fewest, in_part, total / cases, longest, gap, by_hand / cases, buying / cases);
  std::fflush(stdout);
}

void run_published(const char* file) {
  std::ifstream in(file);
  std::stringstream numbers;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] != '#') numbers << line << ' ';
  }
  std::string name;
  Nanometres capacity = 0;
  int lengths = 0, best = 0, all = 0, proven = 0;
  double total = 0, longest = 0;
  while (numbers >> name >> capacity >> lengths >> best) {
    StickOrder order;
    order.sections = {{"stick", 1, 1}};
    order.stock = {{0, capacity, 1, {}}};
    for (int i = 0; i < lengths; ++i) {
      Piece piece;
      numbers >> piece.length >> piece.count;
      order.pieces.push_back(piece);
    }
    const double start = seconds();
    const StickPlan plan = plan_sticks(order);
    const double took = seconds() - start;
    ++all;
    proven += plan.status == PlanStatus::optimal;
    total += took;
    longest = std::max(longest, took);
    if (took > 1 || plan.status != PlanStatus::optimal) {
      std::printf("%s: %lld, bound %lld, %.2f s\n", name.c_str(), static_cast<long long>(plan.cost),
                  static_cast<long long>(plan.bound), took);
    }
  }
  std::printf("%s: %d of %d proven, mean %.2f s, max %.2f s\n", file, proven, all, total / std::max(1, all),
              longest);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 1 && std::atoi(argv[1]) == 0) {
    for (int a = 1; a < argc; ++a) run_published(argv[a]);
    return 0;
  }
  const int cases = argc > 1 ? std::max(1, std::atoi(argv[1])) : 25;
  const unsigned seed = argc > 2 ? static_cast<unsigned>(std::max(0, std::atoi(argv[2]))) : 0;
  for (const Ripping ripping : {Ripping::whole, Ripping::parts}) {
    std::printf(ripping == Ripping::whole ? "boards ripped whole or not at all\n"
                                          : "parts of boards ripped too\n");
    std::printf("%-28s %4s %7s %6s %6s %7s %7s %7s %7s %8s %9s %9s\n", "", "all", "proven", "< 1 s", "< 5 s",
                "fewest", "in part", "mean s", "max s", "gap %", "by hand %", "buying %");
    run("1/64 in, any prices", {ripping, false, false, 100, 400}, cases, seed + 1);
    run("1/64 in, prices by length", {ripping, false, true, 100, 400}, cases, seed + 1'001);
    run("0.1 mm, any prices", {ripping, true, false, 100, 400}, cases, seed + 2'001);
    run("0.1 mm, prices by length", {ripping, true, true, 100, 400}, cases, seed + 3'001);
    run("1/64 in, 2,000 pieces", {ripping, false, false, 2'000, 2'000}, std::max(1, cases / 5), seed + 4'001);
    run("0.1 mm, by length, 2,000", {ripping, true, true, 2'000, 2'000}, std::max(1, cases / 5),
        seed + 5'001);
  }
}
