#include "models/cutting/nested_pricer.h"

#include <algorithm>

namespace models::cutting {

namespace {

constexpr double beyond_all = 0x1p60;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

NestedPricer::NestedPricer(const StickProblem& problem, Nanometres kerf) : plain_(problem, kerf) {
  for (const auto& [section, nesting] : problem.nestings) {
    Family family{std::vector<int>(nesting->shapes().size()), {}, {}, NestedKnapsack(*nesting)};
    for (std::size_t i = 0; i < problem.items.size(); ++i)
      if (problem.items[i].section == section)
        family.items[nesting->index_of(problem.items[i].shape)] = static_cast<int>(i);
    for (std::size_t k = 0; k < problem.kinds.size(); ++k)
      if (problem.kinds[k].section == section) family.kinds.push_back(static_cast<int>(k));
    std::sort(family.kinds.begin(), family.kinds.end(),
              [&](int a, int b) { return problem.kinds[at(a)].length < problem.kinds[at(b)].length; });
    for (const int k : family.kinds) family.twice_room.push_back(2 * (problem.kinds[at(k)].length + kerf));
    families_.push_back(std::move(family));
  }
}

std::vector<NestedKnapsack::Item> NestedPricer::items_of(const Family& family, const Prices& prices,
                                                         const std::vector<int>& at_most) {
  std::vector<NestedKnapsack::Item> items;
  for (const int i : family.items) items.push_back({prices.item[at(i)], at_most[at(i)]});
  return items;
}

std::vector<Room> NestedPricer::rooms_of(const Family& family, const Prices& prices) {
  std::vector<Room> rooms;
  for (std::size_t k = 0; k < family.kinds.size(); ++k)
    rooms.push_back({family.twice_room[k], prices.kind[at(family.kinds[k])]});
  return rooms;
}

Pattern NestedPricer::pattern_of(const Family& family, const Filling& filling) {
  Pattern pattern;
  pattern.kind = family.kinds[filling.room];
  for (std::size_t i = 0; i < filling.counts.size(); ++i)
    if (filling.counts[i] > 0) pattern.items.push_back({family.items[i], filling.counts[i]});
  std::sort(pattern.items.begin(), pattern.items.end());
  return pattern;
}

Prices NestedPricer::of_plain(const Prices& prices, double leaning_kinds) const {
  Prices plain = prices;
  for (const Family& family : families_) {
    for (const int i : family.items) plain.item[at(i)] = 0;
    for (const int k : family.kinds) plain.kind[at(k)] = leaning_kinds;
  }
  return plain;
}

Priced NestedPricer::price(const Prices& prices, const std::vector<int>& at_most) {
  Priced priced = plain_.price(of_plain(prices, 0), at_most);
  for (Family& family : families_) {
    const auto fillings = family.knapsack.best(items_of(family, prices, at_most), rooms_of(family, prices));
    for (std::size_t k = 0; k < family.kinds.size(); ++k)
      priced.worth[at(family.kinds[k])] = family.knapsack.worth()[k];
    for (const Filling& filling : fillings) priced.patterns.push_back(pattern_of(family, filling));
  }
  return priced;
}

std::vector<Pattern> NestedPricer::sample(const Prices& prices, const std::vector<int>& at_most) {
  std::vector<Pattern> patterns = plain_.sample(of_plain(prices, 0), at_most);
  for (Family& family : families_)
    for (const Filling& filling :
         family.knapsack.sample(items_of(family, prices, at_most), rooms_of(family, prices)))
      patterns.push_back(pattern_of(family, filling));
  return patterns;
}

std::optional<std::vector<Pattern>> NestedPricer::list(const Prices& prices, const std::vector<int>& at_most,
                                                       std::size_t most) {
  auto patterns = plain_.list(of_plain(prices, beyond_all), at_most, most);
  for (Family& family : families_) {
    if (!patterns) return std::nullopt;
    const auto fillings =
        family.knapsack.list(items_of(family, prices, at_most), rooms_of(family, prices), most);
    if (!fillings || patterns->size() + fillings->size() > most) return std::nullopt;
    for (const Filling& filling : *fillings) patterns->push_back(pattern_of(family, filling));
  }
  return patterns;
}

std::int64_t NestedPricer::steps() const {
  std::int64_t steps = plain_.steps();
  for (const Family& family : families_) steps += family.knapsack.steps();
  return steps;
}

}  // namespace models::cutting
