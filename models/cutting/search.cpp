#include "models/cutting/search.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "models/cutting/search_run.h"

namespace models::cutting {

bool Search::Node::operator<(const Node& other) const {
  if (likely() != other.likely()) return likely() < other.likely();
  if (depth != other.depth) return depth > other.depth;
  return number > other.number;
}

Search::Search(const CoverProblem& problem, Pricer& pricer, const Limits& limits, std::vector<Cut> known,
               Fitter* fitter)
    : problem_(problem),
      pricer_(pricer),
      limits_(limits),
      learnt_(std::move(known)),
      steps_before_(pricer.steps()) {
  const std::set<int> families(problem.item_family.begin(), problem.item_family.end());
  for (int family : families)
    cutters_.push_back(std::make_unique<Cutter>(problem, family, pricer, limits_, fitter));
  relaxes_ = fitter != nullptr && cutters_.size() == 1;
  const int pieces = std::accumulate(problem.demand.begin(), problem.demand.end(), 0);
  for (const Source& source : problem.sources) {
    most_.push_back(source.group < 0
                        ? pieces
                        : std::min(pieces, problem.group_limit[static_cast<std::size_t>(source.group)]));
  }
}

std::int64_t Search::iterations() const {
  std::int64_t sum = 0;
  for (const auto& cutter : cutters_) sum += cutter->iterations();
  return sum;
}

std::vector<Pattern> Search::relaxed_patterns() {
  std::vector<Pattern> patterns;
  for (const auto& cutter : cutters_) {
    const std::vector<Pattern> of_family = cutter->relaxed_patterns();
    patterns.insert(patterns.end(), of_family.begin(), of_family.end());
  }
  return patterns;
}

void Search::add(const std::vector<Pattern>& patterns) {
  for (const Pattern& pattern : patterns)
    for (const auto& cutter : cutters_) cutter->add(pattern);
}

bool Search::learn(const std::vector<double>& taken, double depth, Purchase& purchase) {
  bool news = false;
  for (const auto& cutter : cutters_) {
    for (const Cut& cut : cutter->lacking(taken, depth)) {
      if (violation(cut, taken) < 1e-9) continue;
      if (!purchase.add(cut)) continue;
      learnt_.push_back(cut);
      news = true;
    }
  }
  return news;
}

CoverResult Search::minimise(const Objective& objective, const std::optional<CoverPlan>& start,
                             std::int64_t most_nodes) {
  const std::int64_t iterations_before = iterations();
  const std::int64_t steps_before = pricer_.steps();
  Run run(*this, objective, most_nodes);
  if (start) {
    run.offer(*start);
    for (const PatternUse& use : start->patterns) add({use.pattern});
  }
  CoverResult result = run.run();
  result.work.lp_iterations += iterations() - iterations_before;
  result.work.pricing_steps = pricer_.steps() - steps_before;
  return result;
}

std::int64_t value_of(const CoverPlan& plan, const std::vector<std::int64_t>& weight) {
  std::int64_t value = 0;
  for (std::size_t s = 0; s < plan.sources.size(); ++s) value += plan.sources[s] * weight[s];
  return value;
}

bool holds(const CoverProblem& problem, const CoverPlan& plan) {
  std::vector<std::int64_t> cut(problem.demand.size());
  std::vector<std::int64_t> blanks(problem.next_smaller.size());
  std::vector<std::int64_t> of_group(problem.group_limit.size());
  for (std::size_t s = 0; s < plan.sources.size(); ++s) {
    if (plan.sources[s] < 0) return false;
    for (const Supply& supply : problem.sources[s].supplies) {
      blanks[static_cast<std::size_t>(supply.kind)] += std::int64_t{plan.sources[s]} * supply.count;
    }
    if (problem.sources[s].group >= 0)
      of_group[static_cast<std::size_t>(problem.sources[s].group)] += plan.sources[s];
  }
  for (std::size_t g = 0; g < of_group.size(); ++g) {
    if (of_group[g] > problem.group_limit[g]) return false;
  }
  for (const PatternUse& use : plan.patterns) {
    blanks[static_cast<std::size_t>(use.pattern.kind)] -= use.count;
    for (const ItemCount& part : use.pattern.items) {
      cut[static_cast<std::size_t>(part.item)] += std::int64_t{use.count} * part.count;
    }
  }
  for (std::size_t i = 0; i < cut.size(); ++i) {
    if (cut[i] < problem.demand[i]) return false;
  }
  // Blanks that are missing of a kind are taken from larger ones: spare blanks are handed down from kind to kind, each
  // kind after all that lead to it.
  std::vector<int> above(blanks.size());
  for (int next : problem.next_smaller) {
    if (next >= 0) ++above[static_cast<std::size_t>(next)];
  }
  std::vector<std::size_t> ready;
  for (std::size_t k = 0; k < above.size(); ++k) {
    if (above[k] == 0) ready.push_back(k);
  }
  while (!ready.empty()) {
    const std::size_t k = ready.back();
    ready.pop_back();
    if (blanks[k] < 0) return false;
    const int next = problem.next_smaller[k];
    if (next < 0) continue;
    blanks[static_cast<std::size_t>(next)] += blanks[k];
    if (--above[static_cast<std::size_t>(next)] == 0) ready.push_back(static_cast<std::size_t>(next));
  }
  return true;
}

}  // namespace models::cutting
