// From an order of sticks to cover problems, one for each group of sections that ripping ties together, and back.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <vector>

#include "models/cutting/cover.h"
#include "models/cutting/cuts.h"
#include "models/cutting/knapsack.h"
#include "models/cutting/nesting.h"
#include "models/cutting/rips.h"
#include "models/cutting/sticks.h"

namespace models::cutting {

// A shape of one section, asked for by one or more marks.
struct StickItem {
  int section = 0;
  Nanometres length = 0;
  Shape shape;
  Nanometres saved = 0;  // at most, where its ends meet others: half of what each joint saves, rounded up
};

// A clear stretch of a section's blanks.
struct StickKind {
  int section = 0;
  Nanometres length = 0;
  // Layouts of the problem, one of which its left part may be ripped by; the rest stays whole.
  std::vector<int> rips;
  // Where `to` is not 0, some of each blank is ripped: from its left end up to a crosscut that is somewhere here, its
  // kerf counted with the strips.
  Stretch crosscut;
};

// What a source of the cover problem stands for.
struct StickSource {
  bool bought = true;
  int source = 0;                   // index into stock or on_hand
  std::optional<RipLayout> ripped;  // over its whole length
  Money work = 0;                   // of ripping, in what it costs
};

struct StickProblem {
  CoverProblem cover;
  std::vector<StickItem> items;
  std::vector<StickKind> kinds;
  std::vector<RipLayout> layouts;
  std::vector<StickSource> sources;
  std::vector<Money> board_cost;  // by source, as plans give it: money, or cubic millimetres rounded up
  double unit = 1;                // of the cover's costs, in those
  std::map<int, std::shared_ptr<Nesting>> nestings;  // by section that has pieces which may meet tip to tip
};

// The clear stretches of a piece on hand, between its trimmed ends and its defects.
[[nodiscard]] std::vector<Stretch> clear_stretches(Nanometres length, const std::vector<Stretch>& defects,
                                                   const StickOrder& order, int section);

// Sections that are asked for, by what ripping ties together, with those that they may be ripped from.
[[nodiscard]] std::vector<std::set<int>> tied_sections(const StickOrder& order);

// Whether some board on sale of a section that is asked for, or that one asked for may be ripped from, has no price.
[[nodiscard]] bool lacks_prices(const StickOrder& order);

// What one board costs: its price or, rounded up, its volume in cubic millimetres.
[[nodiscard]] Money cost_of(const StickOrder& order, const Stock& stock, bool by_volume);

// The shapes are by piece of the order. Where boards may be ripped in part, all sections of a problem are one family: a
// pattern then holds pieces of the strips and of the rest.
[[nodiscard]] std::vector<StickProblem> stick_problems(const StickOrder& order,
                                                       const std::vector<Shape>& shapes, bool by_volume,
                                                       Ripping ripping);

// Whether some board of the problem can be ripped in part with pieces for the rest.
[[nodiscard]] bool may_rip_parts(const StickProblem& problem);

// What the boards of any plan must meet because of lengths alone: of each section, the blanks are together as long as
// its pieces, each with a kerf, less what they can save by meeting.
[[nodiscard]] std::vector<Cut> length_cuts(const StickProblem& problem, Nanometres kerf);

// Prices patterns for sticks: a knapsack for each section.
class StickPricer : public Pricer {
 public:
  StickPricer(const StickProblem& problem, Nanometres kerf);
  std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) override;
  Priced price(const Prices& prices, const std::vector<int>& at_most) override;
  std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                           std::size_t most) override;
  [[nodiscard]] std::int64_t steps() const override { return knapsack_.steps(); }

 private:
  struct Family {  // one section
    std::vector<int> items;
    std::vector<int> kinds;           // by length, ascending
    std::vector<Nanometres> lengths;  // of items, kerf included
    std::vector<Nanometres> rooms;    // of kinds, kerf included
  };
  [[nodiscard]] std::vector<KnapsackItem> knapsack_items(const Family& family, const Prices& prices,
                                                         const std::vector<int>& at_most) const;
  [[nodiscard]] std::vector<Room> knapsack_rooms(const Family& family, const Prices& prices) const;
  [[nodiscard]] static Pattern pattern_of(const Family& family, const Filling& filling);

  std::vector<Family> families_;
  Knapsack knapsack_;
};

// A plan to begin with: the source that holds most for its cost, filled with the longest pieces first, again and
// again. Nothing when the sources run out.
[[nodiscard]] std::optional<CoverPlan> fill_best_first(const StickProblem& problem,
                                                       const std::vector<Section>& sections, Nanometres kerf);

}  // namespace models::cutting
