#include <algorithm>
#include <map>
#include <numeric>

#include "models/cutting/stick_problem.h"

namespace models::cutting {

namespace {

// Fills one blank with the longest pieces that still fit, and takes them off what remains.
std::vector<ItemCount> fill(const StickProblem& problem, int kind, Nanometres kerf,
                            const std::vector<int>& longest_first, std::vector<int>& remaining) {
  const StickKind& blank = problem.kinds[static_cast<std::size_t>(kind)];
  Nanometres room = blank.length + kerf;
  std::vector<ItemCount> items;
  for (int i : longest_first) {
    const StickItem& item = problem.items[static_cast<std::size_t>(i)];
    if (item.section != blank.section) continue;
    int& left = remaining[static_cast<std::size_t>(i)];
    const auto count = static_cast<int>(std::min<Nanometres>(left, room / (item.length + kerf)));
    if (count == 0) continue;
    left -= count;
    room -= count * (item.length + kerf);
    items.push_back({i, count});
  }
  std::sort(items.begin(), items.end());
  return items;
}

}  // namespace

std::optional<CoverPlan> fill_best_first(const StickProblem& problem, const std::vector<Section>& sections,
                                         Nanometres kerf) {
  const CoverProblem& cover = problem.cover;
  std::vector<int> longest_first(problem.items.size());
  std::iota(longest_first.begin(), longest_first.end(), 0);
  std::stable_sort(longest_first.begin(), longest_first.end(), [&](int a, int b) {
    return problem.items[static_cast<std::size_t>(a)].length >
           problem.items[static_cast<std::size_t>(b)].length;
  });
  const auto weight = [&](const ItemCount& part) {
    const StickItem& item = problem.items[static_cast<std::size_t>(part.item)];
    return static_cast<double>(part.count) * static_cast<double>(item.length) *
           static_cast<double>(sections[static_cast<std::size_t>(item.section)].width);
  };
  std::vector<int> remaining = cover.demand;
  std::vector<int> of_group = cover.group_limit;
  CoverPlan plan;
  plan.sources.assign(cover.sources.size(), 0);
  std::map<std::pair<int, std::vector<ItemCount>>, int> uses;
  while (std::any_of(remaining.begin(), remaining.end(), [](int left) { return left > 0; })) {
    std::size_t best = cover.sources.size();
    double best_rate = 0;
    double best_weight = 0;
    std::vector<Pattern> best_patterns;
    std::vector<int> best_left;
    for (std::size_t s = 0; s < cover.sources.size(); ++s) {
      const Source& source = cover.sources[s];
      if (source.group >= 0 && of_group[static_cast<std::size_t>(source.group)] == 0) continue;
      std::vector<int> left = remaining;
      std::vector<Pattern> patterns;
      double held = 0;
      for (const Supply& supply : source.supplies) {
        for (int n = 0; n < supply.count; ++n) {
          Pattern pattern;
          pattern.kind = supply.kind;
          pattern.items = fill(problem, supply.kind, kerf, longest_first, left);
          for (const ItemCount& part : pattern.items) held += weight(part);
          if (!pattern.items.empty()) patterns.push_back(std::move(pattern));
        }
      }
      if (held == 0) continue;
      const double rate = static_cast<double>(source.cost) / held;
      if (best == cover.sources.size() || rate < best_rate || (rate == best_rate && held > best_weight)) {
        best = s;
        best_rate = rate;
        best_weight = held;
        best_patterns = std::move(patterns);
        best_left = std::move(left);
      }
    }
    if (best == cover.sources.size()) return std::nullopt;
    // The same again as often as nothing runs out.
    int times = 1;
    if (cover.sources[best].group < 0) {
      times = std::numeric_limits<int>::max();
      std::vector<int> took = remaining;
      for (std::size_t i = 0; i < took.size(); ++i) took[i] -= best_left[i];
      for (std::size_t i = 0; i < took.size(); ++i) {
        if (took[i] > 0) times = std::min(times, remaining[i] / took[i]);
      }
      for (std::size_t i = 0; i < took.size(); ++i) remaining[i] -= times * took[i];
    } else {
      remaining = best_left;
      --of_group[static_cast<std::size_t>(cover.sources[best].group)];
    }
    plan.sources[best] += times;
    for (const Pattern& pattern : best_patterns) uses[{pattern.kind, pattern.items}] += times;
  }
  for (const auto& [pattern, count] : uses) {
    Pattern kept;
    kept.kind = pattern.first;
    kept.items = pattern.second;
    plan.patterns.push_back({kept, count});
  }
  return plan;
}

}  // namespace models::cutting
