#include "models/cutting/search_run.h"

#include <cmath>
#include <numeric>
#include <utility>

namespace models::cutting {

namespace {

constexpr double whole = 1e-6;             // a value this near to a whole number is taken for one
constexpr int asked_again = 4;             // at the end, whether undecided sources hold the pieces
constexpr std::int64_t plunge_every = 50;  // nodes

}  // namespace

Search::Run::Run(Search& search, const Objective& objective, std::int64_t most_nodes)
    : search_(search),
      problem_(search.problem_),
      objective_(objective),
      most_nodes_(most_nodes),
      purchase_(problem_, objective) {
  step_ = 0;
  for (std::int64_t weight : objective.weight) step_ = std::gcd(step_, weight);
  step_ = std::max<std::int64_t>(step_, 1);
  for (std::int64_t weight : objective.weight)
    objective_scale_ = std::max(objective_scale_, static_cast<double>(weight));
  gains_.resize(problem_.sources.size() + problem_.measures.size());
  for (const Cut& cut : search.learnt_) purchase_.add(cut);
  if (search.relaxes_) search.cutters_[0]->set_goal(objective);
}

void Search::Run::offer(const CoverPlan& plan) {
  const std::int64_t value = value_of(plan, objective_.weight);
  if (value >= value_ || !holds(problem_, plan)) return;
  if (objective_.most_cost && cost_of(plan.sources) > *objective_.most_cost) return;
  plan_ = plan;
  value_ = value;
}

CoverResult Search::Run::run() {
  Node root;
  root.bounds.least.assign(problem_.sources.size(), 0);
  root.bounds.most.assign(search_.most_.begin(), search_.most_.end());
  for (const std::vector<int>& measure : problem_.measures) {
    std::int64_t most = 0;
    for (std::size_t s = 0; s < measure.size(); ++s) most += std::int64_t{measure[s]} * search_.most_[s];
    root.bounds.least.push_back(0);
    root.bounds.most.push_back(most);
  }
  open_.insert(root);
  while (!worked_out()) {
    // Mostly the best node; now and then, straight on from one to the next of its branches until they end, for a plan
    // to measure others by.
    if (next_) {
      open_.erase(*next_);
      Node node = *std::exchange(next_, std::nullopt);
      if (node.bound < value_) explore(std::move(node));
      continue;
    }
    if (open_.empty()) break;
    Node node = *open_.begin();
    open_.erase(open_.begin());
    if (node.bound >= value_) continue;
    plunging_ = nodes_ % plunge_every == 0;
    explore(std::move(node));
  }
  ask_again();
  CoverResult result;
  std::int64_t bound = std::min(undecided_, value_);
  for (const Undecided& set : undecided_sets_) bound = std::min(bound, set.bound);
  for (const Node& node : open_) bound = std::min(bound, node.bound);
  result.impossible = bound == most_value;
  result.bound = result.impossible ? 0 : bound;
  result.plan = plan_;
  result.value = plan_ ? value_ : 0;
  result.work.nodes = nodes_;
  result.work.lp_iterations = purchase_.iterations();
  return result;
}

std::int64_t Search::Run::cost_of(const std::vector<int>& sources) const {
  std::int64_t cost = 0;
  for (std::size_t s = 0; s < sources.size(); ++s) cost += sources[s] * problem_.sources[s].cost;
  return cost;
}

bool Search::Run::worked_out() const {
  return nodes_ >= most_nodes_ ||
         purchase_.iterations() + search_.iterations() >= search_.limits_.lp_iterations ||
         search_.pricer_.steps() - search_.steps_before_ >= search_.limits_.pricing_steps ||
         (search_.relaxes_ && search_.cutters_[0]->worked_out());
}

void Search::Run::explore(Node node) {
  ++nodes_;
  if (search_.relaxes_)
    explore_relaxed(std::move(node));
  else
    explore_sources(std::move(node));
}

bool Search::Run::bound_by_sources(Node& node) {
  const Purchase::End end = purchase_.solve(node.bounds);
  if (end == Purchase::End::no_solution) return false;
  if (end == Purchase::End::gave_up) {
    branch_anywhere(node);
    return false;
  }
  node.bound = std::max(node.bound, rounded_up(purchase_.bound()));
  return node.bound < value_;
}

double Search::Run::learn_gain(const Choice& choice, bool up, double gain) {
  const double below = choice.at - std::floor(choice.at);
  gain = std::max(0.0, gain);
  gains_[choice.column].sum[up] += gain / (up ? 1 - below : below);
  ++gains_[choice.column].count[up];
  return gain;
}

void Search::Run::decide(Node node, const std::vector<int>& taken) {
  const Cutter* lacks = nullptr;
  const Fit fit = settle(taken, lacks);
  if (node.bound >= value_) return;
  // Not these sources, then, but others within the bounds.
  if (fit == Fit::unknown) undecided_sets_.push_back({node.bound, taken, lacks});
  if (fit != Fit::yes) {
    branch_from(node, taken, lacks->sources(), fit);
    return;
  }
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (node.bounds.least[s] == node.bounds.most[s]) continue;
    branch_on(node, s, taken[s]);
    return;
  }
  give_up(node);
}

Fit Search::Run::settle(const std::vector<int>& taken, const Cutter*& lacks) {
  CoverPlan plan;
  plan.sources = taken;
  Fit all = Fit::yes;
  for (const auto& cutter : search_.cutters_) {
    const Fit fit = cutter->fit(taken);
    if (fit != Fit::yes) lacks = cutter.get();
    if (fit == Fit::no) return fit;
    if (fit == Fit::unknown) all = fit;
    plan.patterns.insert(plan.patterns.end(), cutter->patterns().begin(), cutter->patterns().end());
  }
  if (all == Fit::yes) offer(plan);
  return all;
}

void Search::Run::ask_again() {
  std::stable_sort(undecided_sets_.begin(), undecided_sets_.end(),
                   [](const Undecided& a, const Undecided& b) { return a.bound < b.bound; });
  for (int time = 0; time < asked_again; ++time) {
    std::erase_if(undecided_sets_, [&](const Undecided& set) {
      if (set.bound >= value_) return true;
      if (worked_out()) return false;
      const Cutter* lacks = nullptr;
      return settle(set.taken, lacks) == Fit::no && lacks == set.lacks;
    });
  }
}

void Search::Run::add_node(const Node& parent, std::size_t column, std::int64_t least, std::int64_t most,
                           const std::optional<Branch>& by) {
  if (least > most) return;
  Node node{parent.bounds, parent.bound, parent.depth + 1, ++numbers_, by};
  node.bounds.least[column] = least;
  node.bounds.most[column] = most;
  if (plunging_) next_ = node;
  open_.insert(std::move(node));
}

void Search::Run::branch_on(const Node& node, std::size_t column, double at, std::optional<double> value) {
  const double below = std::floor(at + whole);
  const auto least = static_cast<std::int64_t>(below);
  const auto by = [&](bool up) {
    return value ? std::optional<Branch>({column, at, up, *value}) : std::nullopt;
  };
  if (at - below > whole) {
    add_node(node, column, node.bounds.least[column], least, by(false));
    add_node(node, column, least + 1, node.bounds.most[column], by(true));
  } else {
    add_node(node, column, node.bounds.least[column], least - 1);
    add_node(node, column, least + 1, node.bounds.most[column]);
    add_node(node, column, least, least);
  }
}

// Other sources of the family. Where these do not hold its pieces, fewer do not: some must be taken more often. Where
// it is not known, fewer are tried too: they may be easier to fill.
void Search::Run::branch_from(Node node, const std::vector<int>& taken, const std::vector<int>& sources,
                              Fit fit) {
  for (const int source : sources) {
    const auto s = static_cast<std::size_t>(source);
    if (fit == Fit::unknown) {
      add_node(node, s, node.bounds.least[s], taken[s] - 1);
      node.bounds.least[s] = std::max<std::int64_t>(node.bounds.least[s], taken[s]);
    }
    add_node(node, s, taken[s] + 1, node.bounds.most[s]);
    node.bounds.most[s] = std::min<std::int64_t>(node.bounds.most[s], taken[s]);
  }
}

void Search::Run::branch_anywhere(const Node& node) {
  for (std::size_t s = 0; s < problem_.sources.size(); ++s) {
    if (node.bounds.least[s] == node.bounds.most[s]) continue;
    branch_on(node, s, static_cast<double>((node.bounds.least[s] + node.bounds.most[s]) / 2) + 0.5);
    return;
  }
  give_up(node);
}

}  // namespace models::cutting
