#include <algorithm>
#include <cmath>

#include "models/cutting/search_run.h"

namespace models::cutting {

namespace {

constexpr double whole = 1e-6;         // a value this near to a whole number is taken for one
constexpr int root_rounds = 40;        // of cuts; further down they take more time than they save
constexpr double root_depth = 0.9995;  // of cuts there: the rest would cost more than it tells
constexpr std::size_t most_cuts = 400;
constexpr int reliable = 3;      // gains known each way
constexpr int most_tries = 8;    // of branches at one node
constexpr double most_gain = 1;  // of a branch, in parts of the dearest source

}  // namespace

std::vector<Search::Run::Choice> Search::Run::fractional() const {
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
Search::Run::Choice Search::Run::best_of(const std::vector<Choice>& choices, const Node& node) {
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

double Search::Run::try_branch(const Node& node, const Choice& choice, bool up, double value) {
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

bool Search::Run::round_off() {
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

void Search::Run::explore_sources(Node node) {
  for (int round = node.depth == 0 ? root_rounds : 0;;) {
    if (!bound_by_sources(node)) return;
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
      give_up(node);
      return;
    }
    std::vector<int> taken;
    for (double y : purchase_.taken()) taken.push_back(static_cast<int>(std::lround(y)));
    if (search_.learn({taken.begin(), taken.end()}, 0.5, purchase_)) continue;
    decide(std::move(node), taken);
    return;
  }
}

}  // namespace models::cutting
