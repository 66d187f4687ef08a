#include "models/cutting/search.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace models::cutting {

namespace {

constexpr double whole = 1e-6;         // a value this near to a whole number is taken for one
constexpr int root_rounds = 40;        // of cuts; further down they take more time than they save
constexpr double root_depth = 0.9995;  // of cuts there: the rest would cost more than it tells
constexpr std::size_t most_cuts = 400;
constexpr int asked_again = 4;             // at the end, whether undecided sources hold the pieces
constexpr int reliable = 3;                // gains known each way
constexpr int most_tries = 8;              // of branches at one node
constexpr double most_gain = 1;            // of a branch, in parts of the dearest source
constexpr std::int64_t plunge_every = 50;  // nodes
constexpr std::int64_t most_value = std::numeric_limits<std::int64_t>::max();

}  // namespace

bool Search::Node::operator<(const Node& other) const {
  if (bound != other.bound) return bound < other.bound;
  if (depth != other.depth) return depth > other.depth;
  return number > other.number;
}

// One minimisation.
class Search::Run {
 public:
  Run(Search& search, const Objective& objective, std::int64_t most_nodes)
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
  }

  void offer(const CoverPlan& plan) {
    const std::int64_t value = value_of(plan, objective_.weight);
    if (value >= value_ || !holds(problem_, plan)) return;
    if (objective_.most_cost && cost_of(plan.sources) > *objective_.most_cost) return;
    plan_ = plan;
    value_ = value;
  }

  CoverResult run() {
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
      if (node.bound >= value_) break;
      plunging_ = nodes_ % plunge_every == 0;
      explore(std::move(node));
    }
    ask_again();
    CoverResult result;
    std::int64_t bound = std::min(undecided_, value_);
    for (const Undecided& set : undecided_sets_) bound = std::min(bound, set.bound);
    if (!open_.empty()) bound = std::min(bound, open_.begin()->bound);
    result.impossible = bound == most_value;
    result.bound = result.impossible ? 0 : bound;
    result.plan = plan_;
    result.value = plan_ ? value_ : 0;
    result.work.nodes = nodes_;
    result.work.lp_iterations = purchase_.iterations();
    return result;
  }

 private:
  [[nodiscard]] std::int64_t rounded_up(std::int64_t value) const {
    return (value + step_ - 1) / step_ * step_;
  }
  [[nodiscard]] std::int64_t cost_of(const std::vector<int>& sources) const {
    std::int64_t cost = 0;
    for (std::size_t s = 0; s < sources.size(); ++s) cost += sources[s] * problem_.sources[s].cost;
    return cost;
  }
  [[nodiscard]] bool worked_out() const {
    return nodes_ >= most_nodes_ ||
           purchase_.iterations() + search_.iterations() >= search_.limits_.lp_iterations ||
           search_.pricer_.steps() - search_.steps_before_ >= search_.limits_.pricing_steps;
  }

  struct Choice {
    std::size_t column = 0;  // a source, or after them a measure
    double at = 0;
  };
  [[nodiscard]] std::vector<Choice> fractional() const {
    std::vector<Choice> choices;
    const auto look = [&](const std::vector<double>& values, std::size_t first) {
      for (std::size_t i = 0; i < values.size(); ++i) {
        if (std::abs(values[i] - std::round(values[i])) > whole) choices.push_back({first + i, values[i]});
      }
    };
    // Sums first: a whole one settles much at once.
    look(purchase_.measured(), problem_.sources.size());
    if (choices.empty()) look(purchase_.taken(), 0);
    return choices;
  }

  // The choice whose branches promise the highest bounds: by what was gained before for each part of a whole that a
  // column was moved, or, while too little is known of that, by trying.
  Choice best_of(const std::vector<Choice>& choices, const Node& node) {
    const double value = purchase_.value();
    std::vector<Choice> unknown_first = choices;
    const auto known = [&](const Choice& c) {
      return std::min({gains_[c.column].count[0], gains_[c.column].count[1], reliable});
    };
    std::stable_sort(unknown_first.begin(), unknown_first.end(), [&](const Choice& a, const Choice& b) {
      if (known(a) != known(b)) return known(a) < known(b);
      return std::abs(a.at - std::floor(a.at) - 0.5) < std::abs(b.at - std::floor(b.at) - 0.5);
    });
    Choice best = unknown_first.front();
    double best_score = -1;
    int tries = 0;
    for (const Choice& choice : unknown_first) {
      const double below = choice.at - std::floor(choice.at);
      double gain[2] = {gains_[choice.column].mean(0) * below, gains_[choice.column].mean(1) * (1 - below)};
      if (known(choice) < reliable && tries < most_tries && !worked_out()) {
        ++tries;
        for (const int up : {0, 1}) gain[up] = try_branch(node, choice, up == 1, value);
      }
      const double least_gain = 1e-6;
      const double score = std::max(gain[0], least_gain) * std::max(gain[1], least_gain);
      if (score <= best_score) continue;
      best = choice;
      best_score = score;
    }
    return best;
  }

  double try_branch(const Node& node, const Choice& choice, bool up, double value) {
    PurchaseBounds bounds = node.bounds;
    const auto below = static_cast<std::int64_t>(std::floor(choice.at));
    (up ? bounds.least : bounds.most)[choice.column] = below + (up ? 1 : 0);
    const Purchase::End end = purchase_.solve(bounds);
    if (end == Purchase::End::gave_up) return 0;
    // A branch that ends here is worth more than any that goes on.
    if (end == Purchase::End::no_solution || rounded_up(purchase_.bound()) >= value_)
      return most_gain * objective_scale_;
    return learn_gain(choice, up, purchase_.value() - value);
  }

  double learn_gain(const Choice& choice, bool up, double gain) {
    const double below = choice.at - std::floor(choice.at);
    gain = std::max(0.0, gain);
    gains_[choice.column].sum[up] += gain / (up ? 1 - below : below);
    ++gains_[choice.column].count[up];
    return gain;
  }

  bool round_off() {
    std::vector<Cut> cuts;
    const std::vector<double>& taken = purchase_.taken();
    const auto round = [&](const Cut& base) {
      if (std::any_of(base.coefficient.begin(), base.coefficient.end(), [](std::int64_t c) { return c < 0; }))
        return;
      for (Cut& cut : rounding_cuts(base, search_.most_, taken)) cuts.push_back(std::move(cut));
    };
    for (const Cut& base : search_.learnt_) round(base);
    round(purchase_.sum_of_cuts());
    std::stable_sort(cuts.begin(), cuts.end(),
                     [&](const Cut& a, const Cut& b) { return violation(a, taken) > violation(b, taken); });
    int added = 0;
    for (const Cut& cut : cuts) {
      if (added == 5) break;
      if (purchase_.add(cut)) ++added;
    }
    return added > 0;
  }

  void explore(Node node) {
    ++nodes_;
    for (int round = node.depth == 0 ? root_rounds : 0;;) {
      const Purchase::End end = purchase_.solve(node.bounds);
      if (end == Purchase::End::no_solution) return;
      if (end == Purchase::End::gave_up) {
        branch_anywhere(node);
        return;
      }
      node.bound = std::max(node.bound, rounded_up(purchase_.bound()));
      if (node.bound >= value_) return;
      if (const auto choices = fractional(); !choices.empty()) {
        if (!worked_out() && round-- > 0) {
          if (purchase_.cuts().size() < most_cuts && round_off()) continue;
          if (node.depth == 0 && search_.learn(purchase_.taken(), root_depth, purchase_)) continue;
        }
        const Choice choice = best_of(choices, node);
        branch_on(node, choice.column, choice.at);
        return;
      }
      if (worked_out()) {
        undecided_ = std::min(undecided_, node.bound);
        return;
      }
      std::vector<int> taken;
      for (double y : purchase_.taken()) taken.push_back(static_cast<int>(std::lround(y)));
      if (search_.learn({taken.begin(), taken.end()}, 0.5, purchase_)) continue;
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
      undecided_ = std::min(undecided_, node.bound);
      return;
    }
  }

  // Where the pieces do not fit, or none knows, `lacks` is the family whose pieces these are.
  Fit settle(const std::vector<int>& taken, const Cutter*& lacks) {
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

  void add_node(const Node& parent, std::size_t column, std::int64_t least, std::int64_t most) {
    if (least > most) return;
    Node node{parent.bounds, parent.bound, parent.depth + 1, ++numbers_};
    node.bounds.least[column] = least;
    node.bounds.most[column] = most;
    if (plunging_) next_ = node;
    open_.insert(std::move(node));
  }

  void branch_on(const Node& node, std::size_t column, double at) {
    const double below = std::floor(at + whole);
    const auto value = static_cast<std::int64_t>(below);
    if (at - below > whole) {
      add_node(node, column, node.bounds.least[column], value);
      add_node(node, column, value + 1, node.bounds.most[column]);
    } else {
      add_node(node, column, node.bounds.least[column], value - 1);
      add_node(node, column, value + 1, node.bounds.most[column]);
      add_node(node, column, value, value);
    }
  }

  // Other sources of the family. Where these do not hold its pieces, fewer do not: some must be taken more often. Where
  // it is not known, fewer are tried too: they may be easier to fill.
  void branch_from(Node node, const std::vector<int>& taken, const std::vector<int>& sources, Fit fit) {
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

  void branch_anywhere(const Node& node) {
    for (std::size_t s = 0; s < problem_.sources.size(); ++s) {
      if (node.bounds.least[s] == node.bounds.most[s]) continue;
      branch_on(node, s, static_cast<double>((node.bounds.least[s] + node.bounds.most[s]) / 2) + 0.5);
      return;
    }
    undecided_ = std::min(undecided_, node.bound);
  }

  // Sources of which it is not known whether they hold the pieces of a family, whatever else is taken.
  struct Undecided {
    std::int64_t bound = 0;
    std::vector<int> taken;
    const Cutter* lacks = nullptr;
  };

  void ask_again() {
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

  Search& search_;
  const CoverProblem& problem_;
  const Objective& objective_;
  std::int64_t most_nodes_;
  Purchase purchase_;
  struct Gains {  // of a column moved down and up, for each part of a whole
    double sum[2] = {0, 0};
    int count[2] = {0, 0};
    [[nodiscard]] double mean(int way) const { return count[way] > 0 ? sum[way] / count[way] : 0; }
  };
  std::vector<Gains> gains_;  // by column
  double objective_scale_ = 1;
  std::int64_t step_ = 1;  // every plan's value is a multiple of it
  std::int64_t nodes_ = 0;
  std::int64_t numbers_ = 0;
  std::set<Node> open_;
  bool plunging_ = false;
  std::optional<Node> next_;             // of a plunge; in open_ too
  std::int64_t undecided_ = most_value;  // least bound of nodes given up
  std::vector<Undecided> undecided_sets_;
  std::optional<CoverPlan> plan_;
  std::int64_t value_ = most_value;  // of the plan
};

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
