// Prices patterns for sheets, and remembers how each one lies.
#pragma once

#include <map>
#include <memory>

#include "models/cutting/knapsack.h"
#include "models/cutting/sheet_problem.h"
#include "models/cutting/sheet_sets.h"
#include "models/cutting/sheet_table.h"

namespace models::cutting {

// Where all sets of pieces that fit a sheet can be listed, pricing is to look through them. Where there are too many,
// patterns come from the table, cut down to the pieces asked for; what a sheet can be worth is then the less of what
// the table says and what the pieces' areas allow, which is never too little.
class SheetPricer : public Pricer {
 public:
  // Lists sets until so many pairs of boxes were looked at.
  SheetPricer(const SheetProblem& problem, std::int64_t most_pairs);

  [[nodiscard]] bool lists_all() const { return sets_.complete(); }
  void remember(const Pattern& pattern, const Block& block) { blocks_.try_emplace(pattern, block); }
  // A block of just the pieces of a pattern that was priced, listed or remembered.
  [[nodiscard]] Block block(const Pattern& pattern) const;

  std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) override;
  Priced price(const Prices& prices, const std::vector<int>& at_most) override;
  std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                           std::size_t most) override;
  [[nodiscard]] std::int64_t steps() const override { return steps_ + table_.steps() + areas_.steps(); }

 private:
  Priced price_listed(const Prices& prices, const std::vector<int>& at_most);
  Priced price_by_table(const Prices& prices, const std::vector<int>& at_most);
  [[nodiscard]] std::vector<double> area_worths(const Prices& prices, const std::vector<int>& at_most);

  const SheetProblem& problem_;
  SheetSets sets_;
  std::vector<Pattern> full_;          // by kind, when all are listed
  std::map<Pattern, Pattern> fuller_;  // of a pattern cut down from a full one
  SheetTable table_;
  Knapsack areas_;
  std::vector<std::int64_t> item_area_, kind_area_;  // with a kerf on two sides, in units of their own
  std::vector<std::size_t> kinds_by_area_;
  std::map<Pattern, Block> blocks_;
  std::int64_t steps_ = 0;
};

}  // namespace models::cutting
