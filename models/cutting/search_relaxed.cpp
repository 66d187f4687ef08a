#include <algorithm>
#include <cmath>

#include "models/cutting/search_run.h"

namespace models::cutting {

namespace {

constexpr double whole = 1e-5;       // a value this near to a whole number is taken for one
constexpr double hair = 1e-6;        // of the dearest source
constexpr int deep = 2;              // nodes: what is above is worked out to the end
constexpr int most_tries = 1;        // of branches at one node
constexpr double least_gain = 1e-3;  // that tells branches apart

}  // namespace

std::vector<Search::Run::Choice> Search::Run::fractional(const std::vector<double>& taken) const {
  std::vector<Choice> choices;
  const auto look = [&](std::size_t column, double at) {
    if (std::abs(at - std::round(at)) > whole) choices.push_back({column, at});
  };
  // Sums first: a whole one settles much at once.
  for (std::size_t m = 0; m < problem_.measures.size(); ++m) {
    double sum = 0;
    for (std::size_t s = 0; s < taken.size(); ++s) sum += problem_.measures[m][s] * taken[s];
    look(taken.size() + m, sum);
  }
  if (!choices.empty()) return choices;
  for (std::size_t s = 0; s < taken.size(); ++s) look(s, taken[s]);
  return choices;
}

// The choice whose branches promise the highest values: by what was gained before for each part of a whole that a column
// was moved, or, where that is not known, by what the patterns known so far cost then.
Search::Run::Choice Search::Run::best_relaxed(std::vector<Choice> choices, const Node& node, double value) {
  const auto below = [](const Choice& choice) { return choice.at - std::floor(choice.at); };
  std::stable_sort(choices.begin(), choices.end(), [&](const Choice& a, const Choice& b) {
    return std::abs(below(a) - 0.5) < std::abs(below(b) - 0.5);
  });
  Choice best = choices.front();
  double best_score = -1;
  int tries = 0;
  for (const Choice& choice : choices) {
    const Gains& gains = gains_[choice.column];
    double gain[2] = {gains.mean(0) * below(choice), gains.mean(1) * (1 - below(choice))};
    if (std::min(gains.count[0], gains.count[1]) < 1 && tries < most_tries && !worked_out()) {
      ++tries;
      for (const int up : {0, 1}) {
        PurchaseBounds bounds = node.bounds;
        const auto least = static_cast<std::int64_t>(std::floor(choice.at));
        (up ? bounds.least : bounds.most)[choice.column] = least + up;
        const auto tried = search_.cutters_[0]->value_within(bounds.least, bounds.most);
        gain[up] = std::clamp(tried.value_or(value + objective_scale_) - value, 0.0, objective_scale_);
      }
    }
    const double score = std::max(gain[0], least_gain) * std::max(gain[1], least_gain);
    if (score <= best_score) continue;
    best = choice;
    best_score = score;
  }
  return best;
}

void Search::Run::explore_relaxed(Node node) {
  Cutter& cutter = *search_.cutters_[0];
  // A node of this value is done with. The first ones are worked out to the end: their bounds are what is known if the
  // rest takes too long.
  const bool done_with = node.depth > deep && value_ != most_value;
  const double enough = done_with ? static_cast<double>(value_ - step_) + hair * objective_scale_ : 0;
  Cutter::Relaxed relaxed;
  do {
    if (!bound_by_sources(node)) return;
    relaxed = cutter.relax(node.bounds.least, node.bounds.most, enough);
    if (relaxed.taken.empty()) {
      if (worked_out())
        give_up(node);
      else
        branch_anywhere(node);
      return;
    }
    if (relaxed.cut && purchase_.add(*relaxed.cut)) search_.learnt_.push_back(*relaxed.cut);
  } while (relaxed.more);
  if (relaxed.cut && !bound_by_sources(node)) return;
  if (node.by) learn_gain({node.by->column, node.by->at}, node.by->up, relaxed.value - node.by->value);
  if (worked_out()) {
    give_up(node);
    return;
  }
  const std::vector<Choice> choices = fractional(relaxed.taken);
  if (!choices.empty()) {
    const Choice best = best_relaxed(choices, node, relaxed.value);
    branch_on(node, best.column, best.at, relaxed.value);
    return;
  }
  std::vector<int> taken;
  for (const double y : relaxed.taken) taken.push_back(static_cast<int>(std::lround(y)));
  // Some pieces may have been left uncut, at their price.
  if (search_.learn({taken.begin(), taken.end()}, 0.5, purchase_)) {
    explore_relaxed(std::move(node));
    return;
  }
  decide(std::move(node), taken);
}

}  // namespace models::cutting
