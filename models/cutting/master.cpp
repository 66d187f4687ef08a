#include "models/cutting/master.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <ClpSimplex.hpp>

namespace models::cutting {

struct Master::Simplex {
  ClpSimplex model;
};

Master::Master(const CoverProblem& problem) : problem_(problem), lp_(std::make_unique<Simplex>()) {
  const int items = static_cast<int>(problem.demand.size());
  const int kinds = static_cast<int>(problem.next_smaller.size());
  const int groups = static_cast<int>(problem.group_limit.size());
  kind_row_ = items;
  group_row_ = kind_row_ + kinds;
  measure_row_ = group_row_ + groups;
  const int measures = static_cast<int>(problem.measures.size());
  cost_row_ = measure_row_ + measures;
  for (const Source& source : problem.sources) scale_ = std::max(scale_, static_cast<double>(source.cost));
  piece_price_ = uncut_price * scale_;

  ClpSimplex& model = lp_->model;
  model.setLogLevel(0);
  model.scaling(0);            // all numbers are small counts
  model.setPerturbation(100);  // off
  model.resize(cost_row_ + 1, 0);
  const double inf = COIN_DBL_MAX;
  for (int i = 0; i < items; ++i) model.setRowBounds(i, problem.demand[static_cast<std::size_t>(i)], inf);
  for (int k = 0; k < kinds; ++k) model.setRowBounds(kind_row_ + k, 0, inf);
  for (int g = 0; g < groups; ++g) {
    model.setRowBounds(group_row_ + g, -inf, problem.group_limit[static_cast<std::size_t>(g)]);
  }
  for (int m = 0; m < measures; ++m) model.setRowBounds(measure_row_ + m, -inf, inf);
  model.setRowBounds(cost_row_, -inf, inf);
  for (std::size_t s = 0; s < problem.sources.size(); ++s) {
    const Source& source = problem.sources[s];
    std::vector<int> row;
    std::vector<double> value;
    for (const Supply& supply : source.supplies) {
      row.push_back(kind_row_ + supply.kind);
      value.push_back(supply.count);
    }
    if (source.group >= 0) {
      row.push_back(group_row_ + source.group);
      value.push_back(1);
    }
    for (int m = 0; m < measures; ++m) {
      const int measured = problem.measures[static_cast<std::size_t>(m)][s];
      if (measured == 0) continue;
      row.push_back(measure_row_ + m);
      value.push_back(measured);
    }
    if (source.cost > 0) {
      row.push_back(cost_row_);
      value.push_back(static_cast<double>(source.cost) / scale_);
    }
    model.addColumn(static_cast<int>(row.size()), row.data(), value.data(), 0, inf,
                    static_cast<double>(source.cost) / scale_);
  }
  first_step_ = static_cast<int>(problem.sources.size());
  for (int k = 0; k < kinds; ++k) {
    const int next = problem.next_smaller[static_cast<std::size_t>(k)];
    if (next < 0) continue;
    const int row[] = {kind_row_ + k, kind_row_ + next};
    const double value[] = {-1, 1};
    model.addColumn(2, row, value, 0, inf, 0);
  }
  first_uncut_ = model.numberColumns();
  for (int i = 0; i < items; ++i) {
    const double one = 1;
    model.addColumn(1, &i, &one, 0, inf, piece_price_ / scale_);
  }
  first_pattern_ = model.numberColumns();
}

Master::~Master() = default;

bool Master::add(const Pattern& pattern) {
  const auto place =
      std::lower_bound(sorted_.begin(), sorted_.end(), pattern,
                       [&](std::size_t index, const Pattern& wanted) { return patterns_[index] < wanted; });
  if (place != sorted_.end() && patterns_[*place] == pattern) return false;
  sorted_.insert(place, patterns_.size());
  patterns_.push_back(pattern);

  std::vector<int> row;
  std::vector<double> value;
  for (const ItemCount& part : pattern.items) {
    row.push_back(part.item);
    value.push_back(part.count);
  }
  row.push_back(kind_row_ + pattern.kind);
  value.push_back(-1);
  lp_->model.addColumn(static_cast<int>(row.size()), row.data(), value.data(), 0, COIN_DBL_MAX, 0);
  columns_came_ = true;
  return true;
}

void Master::forget_idle(std::size_t most) {
  if (patterns_.size() <= most || fresh_) return;
  fresh_ = true;
  const double* reduced = lp_->model.dualColumnSolution();
  std::vector<std::size_t> order(patterns_.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto rank = [&](std::size_t p) {
    const int column = first_pattern_ + static_cast<int>(p);
    return lp_->model.getColumnStatus(column) == ClpSimplex::basic ? -1.0 : std::abs(reduced[column]);
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  std::vector<int> gone;
  for (std::size_t i = most / 2; i < order.size(); ++i) {
    if (rank(order[i]) >= 0) gone.push_back(first_pattern_ + static_cast<int>(order[i]));
  }
  std::sort(gone.begin(), gone.end());
  lp_->model.deleteColumns(static_cast<int>(gone.size()), gone.data());
  for (auto column = gone.rbegin(); column != gone.rend(); ++column) {
    patterns_.erase(patterns_.begin() + (*column - first_pattern_));
  }
  sorted_.resize(patterns_.size());
  std::iota(sorted_.begin(), sorted_.end(), std::size_t{0});
  std::sort(sorted_.begin(), sorted_.end(),
            [&](std::size_t a, std::size_t b) { return patterns_[a] < patterns_[b]; });
}

void Master::bound_sources(const std::vector<double>& least, const std::vector<double>& most) {
  for (std::size_t s = 0; s < least.size(); ++s) {
    lp_->model.setColumnBounds(static_cast<int>(s), least[s], most[s]);
  }
}

void Master::bound_measures(const std::vector<double>& least, const std::vector<double>& most) {
  for (std::size_t m = 0; m < least.size(); ++m)
    lp_->model.setRowBounds(measure_row_ + static_cast<int>(m), least[m], most[m]);
}

void Master::free_measures() {
  for (std::size_t m = 0; m < problem_.measures.size(); ++m)
    lp_->model.setRowBounds(measure_row_ + static_cast<int>(m), -COIN_DBL_MAX, COIN_DBL_MAX);
}

void Master::bound_pattern(std::size_t pattern, int least, int most) {
  lp_->model.setColumnBounds(first_pattern_ + static_cast<int>(pattern), least,
                             most >= unbounded ? COIN_DBL_MAX : most);
}

void Master::free_patterns() {
  for (std::size_t p = 0; p < patterns_.size(); ++p) bound_pattern(p, 0, unbounded);
}

void Master::set_goal(const Objective& goal, double piece_price) {
  goal_uncut_price_ = piece_price;
  goal_ = goal;
  goal_scale_ = 1;
  for (const std::int64_t weight : goal.weight)
    goal_scale_ = std::max(goal_scale_, static_cast<double>(weight));
  if (aim_ == Aim::goal) aim_at(Aim::cost);
}

void Master::aim_at(Aim aim) {
  if (aim == aim_) return;
  aim_ = aim;
  columns_came_ = true;
  for (int c = 0; c < first_step_; ++c) {
    const auto s = static_cast<std::size_t>(c);
    double weight = 0;
    if (aim == Aim::cost) weight = static_cast<double>(problem_.sources[s].cost) / scale_;
    if (aim == Aim::goal) weight = static_cast<double>(goal_.weight[s]) / goal_scale_;
    lp_->model.setObjectiveCoefficient(c, weight);
  }
  const double piece_price = aim == Aim::uncut ? 1 : aim == Aim::goal ? goal_uncut_price_ : uncut_price;
  for (int c = first_uncut_; c < first_pattern_; ++c) lp_->model.setObjectiveCoefficient(c, piece_price);
  const bool held = aim == Aim::goal && goal_.most_cost;
  lp_->model.setRowBounds(cost_row_, -COIN_DBL_MAX,
                          held ? static_cast<double>(*goal_.most_cost) / scale_ : COIN_DBL_MAX);
}

double Master::unit() const { return aim_ == Aim::cost ? scale_ : aim_ == Aim::goal ? goal_scale_ : 1; }

bool Master::solve() {
  ClpSimplex& model = lp_->model;
  // A pivot among many rows is so much more work.
  const std::int64_t weight = 1 + model.numberRows() / 100;
  // New columns leave the basis primal feasible, moved bounds leave it dual feasible. Either method finishes whatever
  // it starts from; the choice only saves pivots.
  if (columns_came_) {
    model.primal();
  } else {
    model.dual();
  }
  iterations_ += weight * model.numberIterations();
  if (model.status() > 1) {
    model.primal();
    iterations_ += weight * model.numberIterations();
  }
  columns_came_ = false;
  fresh_ = false;
  return model.status() == 0;
}

double Master::value() const { return lp_->model.objectiveValue() * unit(); }

double Master::uncut() const {
  const double* x = lp_->model.primalColumnSolution();
  return std::accumulate(x + first_uncut_, x + first_pattern_, 0.0);
}

std::vector<double> Master::sources() const {
  const double* x = lp_->model.primalColumnSolution();
  return {x, x + first_step_};
}

std::vector<double> Master::uses() const {
  const double* x = lp_->model.primalColumnSolution() + first_pattern_;
  return {x, x + patterns_.size()};
}

Prices Master::prices(double ticks) const {
  const double* row = lp_->model.dualRowSolution();
  const double unit = ticks * this->unit();
  Prices prices;
  for (int i = 0; i < kind_row_; ++i) prices.item.push_back(std::floor(std::max(0.0, row[i] * unit)));
  for (int k = kind_row_; k < group_row_; ++k)
    prices.kind.push_back(std::floor(std::max(0.0, row[k] * unit)));
  return prices;
}

}  // namespace models::cutting
