#include "models/cutting/part.h"

#include <map>

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

Part part_of(const CoverProblem& whole, int family) {
  Part part;
  std::map<int, int> kind_here;
  for (std::size_t i = 0; i < whole.demand.size(); ++i) {
    if (whole.item_family[i] != family) continue;
    part.items.push_back(static_cast<int>(i));
    part.problem.demand.push_back(whole.demand[i]);
  }
  for (std::size_t k = 0; k < whole.kind_family.size(); ++k) {
    if (whole.kind_family[k] != family) continue;
    kind_here[static_cast<int>(k)] = static_cast<int>(part.kinds.size());
    part.kinds.push_back(static_cast<int>(k));
  }
  part.problem.item_family.assign(part.items.size(), family);
  part.problem.kind_family.assign(part.kinds.size(), family);
  for (int k : part.kinds) {
    const auto next = kind_here.find(whole.next_smaller[at(k)]);
    part.problem.next_smaller.push_back(next == kind_here.end() ? -1 : next->second);
  }
  std::map<int, int> group_here;
  for (std::size_t s = 0; s < whole.sources.size(); ++s) {
    Source source{whole.sources[s].cost, {}, whole.sources[s].group};
    for (const Supply& supply : whole.sources[s].supplies) {
      const auto kind = kind_here.find(supply.kind);
      if (kind != kind_here.end()) source.supplies.push_back({kind->second, supply.count});
    }
    if (source.supplies.empty()) continue;
    if (source.group >= 0) {
      const auto [group, is_new] =
          group_here.try_emplace(source.group, static_cast<int>(part.problem.group_limit.size()));
      if (is_new) part.problem.group_limit.push_back(whole.group_limit[at(source.group)]);
      source.group = group->second;
    }
    part.sources.push_back(static_cast<int>(s));
    part.problem.sources.push_back(std::move(source));
  }
  for (const std::vector<int>& measure : whole.measures) {
    part.problem.measures.emplace_back();
    for (int s : part.sources) part.problem.measures.back().push_back(measure[at(s)]);
  }
  return part;
}

PartPricer::PartPricer(Pricer& whole, const Part& part, const CoverProblem& problem)
    : whole_(whole),
      part_(part),
      item_here_(problem.demand.size(), -1),
      kind_here_(problem.next_smaller.size(), -1) {
  for (std::size_t i = 0; i < part.items.size(); ++i) item_here_[at(part.items[i])] = static_cast<int>(i);
  for (std::size_t k = 0; k < part.kinds.size(); ++k) kind_here_[at(part.kinds[k])] = static_cast<int>(k);
}

Priced PartPricer::price(const Prices& prices, const std::vector<int>& at_most) {
  const Priced all = whole_.price(spread(prices, 0), spread(at_most));
  Priced priced;
  for (int k : part_.kinds) priced.worth.push_back(all.worth[at(k)]);
  priced.patterns = gather(all.patterns);
  return priced;
}

std::vector<Pattern> PartPricer::sample(const Prices& prices, const std::vector<int>& at_most) {
  return gather(whole_.sample(spread(prices, 0), spread(at_most)));
}

std::optional<std::vector<Pattern>> PartPricer::list(const Prices& prices, const std::vector<int>& at_most,
                                                     std::size_t most) {
  const auto all = whole_.list(spread(prices, 0x1p60), spread(at_most), most);
  if (!all) return std::nullopt;
  return gather(*all);
}

Prices PartPricer::spread(const Prices& prices, double other_kinds) const {
  Prices all{std::vector<double>(item_here_.size()), std::vector<double>(kind_here_.size(), other_kinds)};
  for (std::size_t i = 0; i < part_.items.size(); ++i) all.item[at(part_.items[i])] = prices.item[i];
  for (std::size_t k = 0; k < part_.kinds.size(); ++k) all.kind[at(part_.kinds[k])] = prices.kind[k];
  return all;
}

std::vector<int> PartPricer::spread(const std::vector<int>& at_most) const {
  std::vector<int> all(item_here_.size());
  for (std::size_t i = 0; i < part_.items.size(); ++i) all[at(part_.items[i])] = at_most[i];
  return all;
}

std::vector<Pattern> PartPricer::gather(const std::vector<Pattern>& patterns) const {
  std::vector<Pattern> mine;
  for (Pattern pattern : patterns) {
    pattern.kind = kind_here_[at(pattern.kind)];
    if (pattern.kind < 0) continue;
    for (ItemCount& part : pattern.items) part.item = item_here_[at(part.item)];
    mine.push_back(std::move(pattern));
  }
  return mine;
}

Pattern in_whole(const Part& part, Pattern pattern) {
  pattern.kind = part.kinds[at(pattern.kind)];
  for (ItemCount& item : pattern.items) item.item = part.items[at(item.item)];
  return pattern;
}

}  // namespace models::cutting
