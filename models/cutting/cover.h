// The integer programme behind every cutting plan, for sticks and sheets alike.
//
// Pieces are cut from blanks: a blank is one stick (or one sheet) ready to be cut into pieces, and blanks that are
// alike form a kind. A pattern is a set of pieces that fits one blank of a kind. Blanks come out of sources: a board
// bought, a board bought and ripped into several strips, a piece on hand with its clear lengths. The plan takes whole
// sources and cuts each blank by one pattern so that every demand is met at least cost.
//
//   minimise   sum cost(s) y(s)
//   such that  each item is cut at least as often as it is asked for,
//              the patterns on a kind are no more than the blanks of that kind (a blank may stand in for a smaller one),
//              the sources of a group together are no more than the group holds,
//              y, and how often each pattern is cut, are whole numbers.
//
// Patterns are far too many to list; a Pricer finds those that are worth having at given prices.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "models/cutting/work.h"

namespace models::cutting {

struct Supply {
  int kind = 0;
  int count = 1;
};

struct Source {
  std::int64_t cost = 0;         // 0 or more
  std::vector<Supply> supplies;  // the blanks one of it gives
  int group = -1;                // index into group_limit, or -1: as many as one likes
};

struct ItemCount {
  int item = 0;
  int count = 0;
  auto operator<=>(const ItemCount&) const = default;
};

struct Pattern {
  int kind = 0;
  std::vector<ItemCount> items;  // by item, ascending; no count is 0
  auto operator<=>(const Pattern&) const = default;
};

struct CoverProblem {
  std::vector<int> demand;        // by item
  std::vector<int> next_smaller;  // by kind: the kind whose patterns all fit this kind too, or -1
  std::vector<Source> sources;
  std::vector<int> group_limit;
  // Items and kinds that belong together (those of one section) share a number: no pattern on a kind holds items of
  // another family.
  std::vector<int> item_family;
  std::vector<int> kind_family;
  // Sums over the sources that are worth deciding on before the single ones: how many boards of one sort are bought, how
  // long they are together. Coefficients by source, 0 or more.
  std::vector<std::vector<int>> measures;
};

// Prices of items and kinds in whole ticks. Ticks are whole numbers held in doubles and small enough that no sum of
// them is ever rounded: what is proven with them is proven exactly.
struct Prices {
  std::vector<double> item;  // 0 or more
  std::vector<double> kind;  // 0 or more
};

struct Priced {
  std::vector<double> worth;      // by kind: no pattern's items are worth more; at least the kind's price
  std::vector<Pattern> patterns;  // some that are worth more than the kind's price, if there are any
};

class Pricer {
 public:
  virtual ~Pricer() = default;
  // Patterns with no more of an item than at_most says.
  virtual std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) = 0;
  virtual Priced price(const Prices& prices, const std::vector<int>& at_most) = 0;
  // All patterns (but those that lie within another one) worth at least the kind's price; nothing when there are more
  // than most.
  virtual std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                                   std::size_t most) = 0;
  [[nodiscard]] virtual std::int64_t steps() const = 0;
};

// What is minimised: the sources' cost, or another sum over them while the cost is held.
struct Objective {
  std::vector<std::int64_t> weight;       // by source, 0 or more
  std::optional<std::int64_t> most_cost;  // no plan may cost more
};

struct PatternUse {
  Pattern pattern;
  int count = 0;
};

struct CoverPlan {
  std::vector<int> sources;  // how many of each
  std::vector<PatternUse> patterns;
};

[[nodiscard]] std::int64_t value_of(const CoverPlan& plan, const std::vector<std::int64_t>& weight);

// Whether the plan meets every demand out of the blanks that its sources give, within all limits.
[[nodiscard]] bool holds(const CoverProblem& problem, const CoverPlan& plan);

struct CoverResult {
  std::optional<CoverPlan> plan;  // none when nothing was found
  std::int64_t value = 0;         // of the plan
  std::int64_t bound = 0;         // no plan has a lower value
  bool impossible = false;        // proven that there is no plan at all
  Work work;
};

}  // namespace models::cutting
