// Prices patterns for sticks of which some sections have pieces that may meet tip to tip.
#pragma once

#include "models/cutting/nested_knapsack.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

class NestedPricer : public Pricer {
 public:
  // The problem must outlive the pricer.
  NestedPricer(const StickProblem& problem, Nanometres kerf);
  std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) override;
  Priced price(const Prices& prices, const std::vector<int>& at_most) override;
  std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                           std::size_t most) override;
  [[nodiscard]] std::int64_t steps() const override;

 private:
  struct Family {                        // one section whose pieces lean
    std::vector<int> items;              // by shape of the nesting
    std::vector<int> kinds;              // by length, ascending
    std::vector<Nanometres> twice_room;  // of kinds, kerf included
    NestedKnapsack knapsack;
  };
  [[nodiscard]] static std::vector<NestedKnapsack::Item> items_of(const Family& family, const Prices& prices,
                                                                  const std::vector<int>& at_most);
  [[nodiscard]] static std::vector<Room> rooms_of(const Family& family, const Prices& prices);
  [[nodiscard]] static Pattern pattern_of(const Family& family, const Filling& filling);
  // The prices with those of leaning sections out of the way of the plain pricer.
  [[nodiscard]] Prices of_plain(const Prices& prices, double leaning_kinds) const;

  StickPricer plain_;
  std::vector<Family> families_;
};

}  // namespace models::cutting
