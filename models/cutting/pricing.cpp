#include <algorithm>

#include "models/cutting/stick_problem.h"

namespace models::cutting {

StickPricer::StickPricer(const StickProblem& problem, Nanometres kerf) {
  int sections = 0;
  for (const StickItem& item : problem.items) sections = std::max(sections, item.section + 1);
  for (int section = 0; section < sections; ++section) {
    Family family;
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
      if (problem.items[i].section != section) continue;
      family.items.push_back(static_cast<int>(i));
      family.lengths.push_back(problem.items[i].length + kerf);
    }
    if (family.items.empty()) continue;
    for (std::size_t k = 0; k < problem.kinds.size(); ++k) {
      if (problem.kinds[k].section == section) family.kinds.push_back(static_cast<int>(k));
    }
    const auto length = [&](int k) { return problem.kinds[static_cast<std::size_t>(k)].length; };
    std::sort(family.kinds.begin(), family.kinds.end(), [&](int a, int b) { return length(a) < length(b); });
    for (int k : family.kinds) family.rooms.push_back(length(k) + kerf);
    families_.push_back(std::move(family));
  }
}

std::vector<KnapsackItem> StickPricer::knapsack_items(const Family& family, const Prices& prices,
                                                      const std::vector<int>& at_most) const {
  std::vector<KnapsackItem> items;
  for (std::size_t i = 0; i < family.items.size(); ++i) {
    const auto item = static_cast<std::size_t>(family.items[i]);
    items.push_back({family.lengths[i], prices.item[item], at_most[item]});
  }
  return items;
}

std::vector<Room> StickPricer::knapsack_rooms(const Family& family, const Prices& prices) const {
  std::vector<Room> rooms;
  for (std::size_t k = 0; k < family.kinds.size(); ++k) {
    rooms.push_back({family.rooms[k], prices.kind[static_cast<std::size_t>(family.kinds[k])]});
  }
  return rooms;
}

Pattern StickPricer::pattern_of(const Family& family, const Filling& filling) {
  Pattern pattern;
  pattern.kind = family.kinds[filling.room];
  for (std::size_t i = 0; i < filling.counts.size(); ++i) {
    if (filling.counts[i] > 0) pattern.items.push_back({family.items[i], filling.counts[i]});
  }
  return pattern;
}

Priced StickPricer::price(const Prices& prices, const std::vector<int>& at_most) {
  Priced priced;
  priced.worth = prices.kind;
  for (const Family& family : families_) {
    const auto fillings =
        knapsack_.best(knapsack_items(family, prices, at_most), knapsack_rooms(family, prices));
    for (std::size_t k = 0; k < family.kinds.size(); ++k) {
      priced.worth[static_cast<std::size_t>(family.kinds[k])] = knapsack_.worth()[k];
    }
    for (const Filling& filling : fillings) priced.patterns.push_back(pattern_of(family, filling));
  }
  return priced;
}

std::vector<Pattern> StickPricer::sample(const Prices& prices, const std::vector<int>& at_most) {
  std::vector<Pattern> patterns;
  for (const Family& family : families_) {
    for (const Filling& filling :
         knapsack_.sample(knapsack_items(family, prices, at_most), knapsack_rooms(family, prices))) {
      patterns.push_back(pattern_of(family, filling));
    }
  }
  return patterns;
}

std::optional<std::vector<Pattern>> StickPricer::list(const Prices& prices, const std::vector<int>& at_most,
                                                      std::size_t most) {
  std::vector<Pattern> patterns;
  for (const Family& family : families_) {
    const auto fillings =
        knapsack_.list(knapsack_items(family, prices, at_most), knapsack_rooms(family, prices), most);
    if (!fillings || patterns.size() + fillings->size() > most) return std::nullopt;
    for (const Filling& filling : *fillings) patterns.push_back(pattern_of(family, filling));
  }
  return patterns;
}

}  // namespace models::cutting
