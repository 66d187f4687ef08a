// Whether given sources hold the pieces, by listing every pattern that could matter.
#include <algorithm>
#include <cmath>

#include "models/cutting/cutter.h"

namespace models::cutting {

namespace {

constexpr double whole = 1e-6;
constexpr std::size_t most_listed = 5'000;  // at first, and so many times more in the end
constexpr int most_nodes = 2'000;
constexpr int thorough_times = 6;

struct Range {
  int least = 0;
  int most = 0;
};

}  // namespace

// At any prices, what the sources' blanks can be worth less what the pieces are worth is all that the patterns of a plan on
// these sources may lack together. At good prices that is little, and few patterns are near enough to the best. The prices
// come from the relaxation that may leave sources unused; with all of them fixed there would be none.
std::optional<Cutter::Spare> Cutter::spare_of(const std::vector<int>& sources) {
  master_.aim_at(Aim::cost);
  master_.bound_sources(std::vector<double>(sources.size()), {sources.begin(), sources.end()});
  do {
    if (worked_out() || !master_.solve()) return std::nullopt;
  } while (enrich(part_.problem.demand));
  Spare of{master_.prices(ticks_), {}, {}, 0};
  of.kind_worth = pricer_.price(of.prices, part_.problem.demand).worth;
  of.source_worth = source_worths(of.kind_worth);
  for (std::size_t s = 0; s < sources.size(); ++s) of.spare += of.source_worth[s] * sources[s];
  for (std::size_t i = 0; i < of.prices.item.size(); ++i)
    of.spare -= of.prices.item[i] * part_.problem.demand[i];
  return of;
}

Fit Cutter::cut_exactly(const std::vector<int>& sources, bool thorough) {
  const int times = thorough ? thorough_times : 1;
  const std::optional<Spare> of = spare_of(sources);
  if (!of) return Fit::unknown;
  if (of->spare < 0) return Fit::no;
  const std::vector<double> most(sources.begin(), sources.end());
  Prices prices = of->prices;

  Blanks blanks(prices.kind.size());
  for (std::size_t s = 0; s < sources.size(); ++s) {
    for (const Supply& supply : part_.problem.sources[s].supplies) {
      blanks[static_cast<std::size_t>(supply.kind)] += std::int64_t{sources[s]} * supply.count;
    }
  }
  for (std::size_t k = 0; k < prices.kind.size(); ++k) {
    prices.kind[k] = blanks[k] > 0 ? std::max(0.0, of->kind_worth[k] - of->spare) : 0x1p60;
  }
  const auto listed =
      pricer_.list(prices, part_.problem.demand, most_listed * static_cast<std::size_t>(times));
  if (!listed) return Fit::unknown;

  Master exact(part_.problem);
  for (const Pattern& pattern : *listed) exact.add(pattern);
  exact.bound_sources(most, most);
  exact.aim_at(Aim::uncut);
  std::vector<std::vector<Range>> stack(1, std::vector<Range>(exact.patterns().size()));
  for (std::size_t p = 0; p < exact.patterns().size(); ++p) {
    stack[0][p].most = static_cast<int>(blanks[static_cast<std::size_t>(exact.patterns()[p].kind)]);
  }
  // In whole ticks: pieces that the blanks cannot hold, whatever patterns are taken within their ranges.
  const auto proves_uncut = [&](const std::vector<Range>& ranges) {
    const Prices at = exact.prices(uncut_ticks_);
    double left = 0;
    for (std::size_t i = 0; i < at.item.size(); ++i) left += at.item[i] * part_.problem.demand[i];
    for (std::size_t k = 0; k < blanks.size(); ++k) left -= at.kind[k] * static_cast<double>(blanks[k]);
    for (std::size_t p = 0; p < ranges.size(); ++p) {
      const Pattern& pattern = exact.patterns()[p];
      double over = -at.kind[static_cast<std::size_t>(pattern.kind)];
      for (const ItemCount& part : pattern.items)
        over += at.item[static_cast<std::size_t>(part.item)] * part.count;
      left -= over * (over > 0 ? ranges[p].most : ranges[p].least);
    }
    return left > 0;
  };
  bool all_proven = true;
  for (int nodes = 0; !stack.empty(); ++nodes) {
    if (nodes == most_nodes * times || worked_out()) return Fit::unknown;
    std::vector<Range> ranges = std::move(stack.back());
    stack.pop_back();
    for (std::size_t p = 0; p < ranges.size(); ++p) exact.bound_pattern(p, ranges[p].least, ranges[p].most);
    const std::int64_t before = exact.iterations();
    const bool solved = exact.solve();
    exact_iterations_ += exact.iterations() - before;
    if (!solved || exact.uncut() > whole) {
      all_proven = all_proven && solved && proves_uncut(ranges);
      continue;
    }
    const std::vector<double> uses = exact.uses();
    std::size_t part = uses.size();
    double furthest = whole;
    for (std::size_t p = 0; p < uses.size(); ++p) {
      const double fraction = uses[p] - std::floor(uses[p]);
      if (fraction > furthest && fraction < 1 - whole) {
        furthest = fraction;
        part = p;
      }
    }
    if (part == uses.size()) {
      for (std::size_t p = 0; p < uses.size(); ++p) {
        const int count = static_cast<int>(std::lround(uses[p]));
        if (count > 0) found_.push_back({exact.patterns()[p], count});
      }
      return Fit::yes;
    }
    const int below = static_cast<int>(std::floor(uses[part]));
    stack.push_back(ranges);
    stack.back()[part].most = below;
    ranges[part].least = below + 1;
    // Every blank can be cut by a pattern listed for its own kind, so more of them than blanks is no solution.
    const int kind = exact.patterns()[part].kind;
    std::int64_t asked = 0;
    for (std::size_t p = 0; p < ranges.size(); ++p) {
      if (exact.patterns()[p].kind == kind) asked += ranges[p].least;
    }
    if (asked <= blanks[static_cast<std::size_t>(kind)]) stack.push_back(std::move(ranges));
  }
  return all_proven ? Fit::no : Fit::unknown;
}

}  // namespace models::cutting
