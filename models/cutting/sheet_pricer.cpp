#include "models/cutting/sheet_pricer.h"

#include <algorithm>
#include <numeric>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr Wide area_units = Wide{1} << 50;  // of the largest sheet

double worth_of(const Pattern& pattern, const Prices& prices, const std::vector<int>& at_most) {
  double worth = 0;
  for (const ItemCount& part : pattern.items) {
    const auto item = static_cast<std::size_t>(part.item);
    worth += prices.item[item] * std::min(part.count, at_most[item]);
  }
  return worth;
}

}  // namespace

SheetPricer::SheetPricer(const SheetProblem& problem, std::int64_t most_pairs)
    : problem_(problem), sets_(problem, most_pairs), table_(problem) {
  if (sets_.complete()) full_ = sets_.full_patterns();
  steps_ = sets_.pairs();
  // A piece with a kerf on its right and above it lies within a sheet with the same: no two of them overlap.
  const auto with_kerf = [&](Nanometres x, Nanometres y) {
    return static_cast<Wide>(x + problem.kerf) * (y + problem.kerf);
  };
  Wide largest = 1;
  for (const SheetKind& kind : problem.kinds) largest = std::max(largest, with_kerf(kind.x, kind.y));
  const Wide unit = largest / area_units + 1;
  // Rounded down, the pieces of a sheet still add up to no more than it.
  for (const SheetItem& item : problem.items) {
    item_area_.push_back(
        std::max<std::int64_t>(1, static_cast<std::int64_t>(with_kerf(item.x, item.y) / unit)));
  }
  for (const SheetKind& kind : problem.kinds) {
    kind_area_.push_back(static_cast<std::int64_t>(with_kerf(kind.x, kind.y) / unit));
  }
  kinds_by_area_.resize(kind_area_.size());
  std::iota(kinds_by_area_.begin(), kinds_by_area_.end(), std::size_t{0});
  std::stable_sort(kinds_by_area_.begin(), kinds_by_area_.end(),
                   [&](std::size_t a, std::size_t b) { return kind_area_[a] < kind_area_[b]; });
}

Block SheetPricer::block(const Pattern& pattern) const {
  const auto known = blocks_.find(pattern);
  if (known != blocks_.end()) return known->second;
  const auto fuller = fuller_.find(pattern);
  const Block whole = sets_.block(fuller == fuller_.end() ? pattern : fuller->second);
  std::vector<int> left(problem_.items.size());
  for (const ItemCount& part : pattern.items) left[static_cast<std::size_t>(part.item)] = part.count;
  return take(whole, left, problem_.kerf).value();  // a pattern holds a piece
}

std::vector<Pattern> SheetPricer::sample(const Prices& prices, const std::vector<int>& at_most) {
  if (sets_.complete()) return {};
  return price_by_table(prices, at_most).patterns;
}

Priced SheetPricer::price(const Prices& prices, const std::vector<int>& at_most) {
  return sets_.complete() ? price_listed(prices, at_most) : price_by_table(prices, at_most);
}

Priced SheetPricer::price_listed(const Prices& prices, const std::vector<int>& at_most) {
  Priced priced;
  priced.worth = prices.kind;
  std::vector<const Pattern*> best(prices.kind.size());
  for (const Pattern& pattern : full_) {
    const auto kind = static_cast<std::size_t>(pattern.kind);
    const double worth = worth_of(pattern, prices, at_most);
    if (worth <= priced.worth[kind]) continue;
    priced.worth[kind] = worth;
    best[kind] = &pattern;
  }
  steps_ += static_cast<std::int64_t>(full_.size());
  for (const Pattern* pattern : best) {
    if (pattern == nullptr) continue;
    Pattern part{pattern->kind, {}};
    for (const ItemCount& item : pattern->items) {
      const int count = std::min(item.count, at_most[static_cast<std::size_t>(item.item)]);
      if (count > 0) part.items.push_back({item.item, count});
    }
    if (part != *pattern) fuller_.try_emplace(part, *pattern);
    priced.patterns.push_back(std::move(part));
  }
  return priced;
}

std::vector<double> SheetPricer::area_worths(const Prices& prices, const std::vector<int>& at_most) {
  std::vector<KnapsackItem> items;
  for (std::size_t i = 0; i < item_area_.size(); ++i)
    items.push_back({item_area_[i], prices.item[i], at_most[i]});
  std::vector<Room> rooms;
  for (std::size_t k : kinds_by_area_) rooms.push_back({kind_area_[k], prices.kind[k]});
  (void)areas_.best(items, rooms);
  std::vector<double> worths(kind_area_.size());
  for (std::size_t r = 0; r < kinds_by_area_.size(); ++r) worths[kinds_by_area_[r]] = areas_.worth()[r];
  return worths;
}

Priced SheetPricer::price_by_table(const Prices& prices, const std::vector<int>& at_most) {
  Priced priced;
  priced.worth = area_worths(prices, at_most);
  std::vector<double> worth = prices.item;
  for (std::size_t i = 0; i < worth.size(); ++i) {
    if (at_most[i] == 0) worth[i] = 0;
  }
  table_.fill(worth);
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
    const double tabled = table_.worth(k);
    if (table_.exact()) priced.worth[k] = std::max(prices.kind[k], std::min(priced.worth[k], tabled));
    if (tabled <= prices.kind[k]) continue;
    std::vector<int> left = at_most;
    const auto block = take(table_.block(k), left, problem_.kerf);
    if (!block) continue;
    Pattern pattern{static_cast<int>(k), pieces_of(*block)};
    if (worth_of(pattern, prices, at_most) <= prices.kind[k]) continue;
    remember(pattern, *block);
    priced.patterns.push_back(std::move(pattern));
  }
  return priced;
}

std::optional<std::vector<Pattern>> SheetPricer::list(const Prices& prices, const std::vector<int>& at_most,
                                                      std::size_t most) {
  if (!sets_.complete()) return std::nullopt;
  std::vector<Pattern> patterns;
  steps_ += static_cast<std::int64_t>(full_.size());
  for (const Pattern& pattern : full_) {
    if (worth_of(pattern, prices, at_most) < prices.kind[static_cast<std::size_t>(pattern.kind)]) continue;
    patterns.push_back(pattern);
    if (patterns.size() > most) return std::nullopt;
  }
  return patterns;
}

}  // namespace models::cutting
