// One family's part of a cover problem.
#pragma once

#include <vector>

#include "models/cutting/cover.h"

namespace models::cutting {

struct Part {
  CoverProblem problem;  // groups and measures are of the sources that the part has a share in
  std::vector<int> items, kinds, sources;  // their numbers in the whole
};

[[nodiscard]] Part part_of(const CoverProblem& whole, int family);

// The whole problem's pricer, asked for one part alone.
class PartPricer : public Pricer {
 public:
  PartPricer(Pricer& whole, const Part& part, const CoverProblem& problem);
  std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) override;
  Priced price(const Prices& prices, const std::vector<int>& at_most) override;
  std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                           std::size_t most) override;
  [[nodiscard]] std::int64_t steps() const override { return whole_.steps(); }

  // The part's prices in the whole's numbers; other items are worth nothing.
  [[nodiscard]] Prices spread(const Prices& prices, double other_kinds) const;

 private:
  [[nodiscard]] std::vector<int> spread(const std::vector<int>& at_most) const;
  [[nodiscard]] std::vector<Pattern> gather(const std::vector<Pattern>& patterns) const;

  Pricer& whole_;
  const Part& part_;
  std::vector<int> item_here_, kind_here_;  // by number in the whole: in the part, or -1
};

// The pattern with the numbers of the whole.
[[nodiscard]] Pattern in_whole(const Part& part, Pattern pattern);

}  // namespace models::cutting
