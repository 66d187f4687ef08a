#include "models/cutting/purchase.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <ClpSimplex.hpp>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr std::size_t most_rows = 60;  // of cuts, before those without effect are set aside
constexpr std::size_t most_back = 10;  // that come back at once
constexpr double ticks = 0x1p44;       // to one unit of the objective

Wide whole_ticks(double value) { return static_cast<Wide>(std::floor(value * ticks)); }

}  // namespace

struct Purchase::Simplex {
  ClpSimplex model;
};

Purchase::Purchase(const CoverProblem& problem, const Objective& objective)
    : problem_(problem), objective_(objective), lp_(std::make_unique<Simplex>()) {
  ClpSimplex& model = lp_->model;
  model.setLogLevel(0);
  model.scaling(0);
  model.setPerturbation(100);
  const int groups = static_cast<int>(problem.group_limit.size());
  measure_row_ = groups + 1;
  cut_row_ = measure_row_ + static_cast<int>(problem.measures.size());
  model.resize(cut_row_, 0);
  for (int g = 0; g < groups; ++g) {
    model.setRowBounds(g, -COIN_DBL_MAX, problem.group_limit[static_cast<std::size_t>(g)]);
  }
  for (std::int64_t weight : objective.weight)
    weight_scale_ = std::max(weight_scale_, static_cast<double>(weight));
  for (const Source& source : problem.sources)
    cost_scale_ = std::max(cost_scale_, static_cast<double>(source.cost));
  const auto cap =
      objective.most_cost ? static_cast<double>(*objective.most_cost) / cost_scale_ : COIN_DBL_MAX;
  model.setRowBounds(groups, -COIN_DBL_MAX, cap);
  for (std::size_t s = 0; s < problem.sources.size(); ++s) {
    const Source& source = problem.sources[s];
    std::vector<int> row{groups};
    std::vector<double> value{static_cast<double>(source.cost) / cost_scale_};
    if (source.group >= 0) {
      row.push_back(source.group);
      value.push_back(1);
    }
    for (std::size_t m = 0; m < problem.measures.size(); ++m) {
      if (problem.measures[m][s] == 0) continue;
      row.push_back(measure_row_ + static_cast<int>(m));
      value.push_back(problem.measures[m][s]);
    }
    model.addColumn(static_cast<int>(row.size()), row.data(), value.data(), 0, COIN_DBL_MAX,
                    static_cast<double>(objective.weight[s]) / weight_scale_);
  }
  for (int m = measure_row_; m < cut_row_; ++m) {
    const double value = -1;
    model.setRowBounds(m, 0, 0);
    model.addColumn(1, &m, &value, 0, COIN_DBL_MAX, 0);
  }
  // What the rows lack, for nodes without a solution: one column that eases limits and cuts, and two for each measure.
  // They stand at nothing otherwise.
  std::vector<int> limits(static_cast<std::size_t>(measure_row_));
  std::iota(limits.begin(), limits.end(), 0);
  const std::vector<double> eased(limits.size(), -1);
  first_lack_ = model.numberColumns();
  model.addColumn(measure_row_, limits.data(), eased.data(), 0, 0, 0);
  for (int m = measure_row_; m < cut_row_; ++m) {
    for (const double value : {1.0, -1.0}) model.addColumn(1, &m, &value, 0, 0, 0);
  }
}

Purchase::~Purchase() = default;

bool Purchase::add(const Cut& cut) {
  if (std::find(cuts_.begin(), cuts_.end(), cut) != cuts_.end()) return false;
  cuts_.push_back(cut);
  double largest = 1;
  for (const std::int64_t c : cut.coefficient) largest = std::max(largest, std::abs(static_cast<double>(c)));
  scales_.push_back(largest / Cut::whole_part);
  put_in_row(cuts_.size() - 1);
  return true;
}

void Purchase::put_in_row(std::size_t index) {
  const Cut& cut = cuts_[index];
  const double scale = scales_[index] * Cut::whole_part;  // rows of one size are easier on the simplex method
  std::vector<int> column{first_lack_};
  std::vector<double> value{1};
  for (std::size_t s = 0; s < cut.coefficient.size(); ++s) {
    if (cut.coefficient[s] == 0) continue;
    column.push_back(static_cast<int>(s));
    value.push_back(static_cast<double>(cut.coefficient[s]) / scale);
  }
  lp_->model.addRow(static_cast<int>(column.size()), column.data(), value.data(),
                    static_cast<double>(cut.least) / scale, COIN_DBL_MAX);
  rows_.push_back(index);
  rows_moved_ = true;
}

void Purchase::drop_idle_rows() {
  // Before the first solve nothing is known of what a row does.
  if (rows_.size() <= most_rows || !lp_->model.statusExists()) return;
  std::vector<int> gone;
  std::vector<std::size_t> kept;
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const int row = cut_row_ + static_cast<int>(r);
    if (lp_->model.getRowStatus(row) == ClpSimplex::basic) {
      gone.push_back(row);
    } else {
      kept.push_back(rows_[r]);
    }
  }
  lp_->model.deleteRows(static_cast<int>(gone.size()), gone.data());
  rows_ = std::move(kept);
  rows_moved_ = true;
}

bool Purchase::put_back_violated() {
  std::vector<std::pair<double, std::size_t>> violated;
  for (std::size_t c = 0; c < cuts_.size(); ++c) {
    if (std::find(rows_.begin(), rows_.end(), c) != rows_.end()) continue;
    double lack = static_cast<double>(cuts_[c].least);
    for (std::size_t s = 0; s < taken_.size(); ++s)
      lack -= static_cast<double>(cuts_[c].coefficient[s]) * taken_[s];
    lack /= scales_[c] * Cut::whole_part;
    if (lack > 1e-6) violated.emplace_back(-lack, c);
  }
  std::sort(violated.begin(), violated.end());
  for (std::size_t v = 0; v < std::min(violated.size(), most_back); ++v) put_in_row(violated[v].second);
  return !violated.empty();
}

std::int64_t Purchase::proven(const double* row, const PurchaseBounds& bounds, bool with_weights) const {
  // For any prices of the limits (0 or less) and the cuts (0 or more),
  //   sum weight(s) y(s) >= sum price(row) side(row) + sum over s of (weight(s) - what its entries are priced at) y(s),
  // and the right side is least when each y(s) stands at the end of its range that its coefficient asks for. In ticks
  // times parts of a whole, nothing is rounded but the prices.
  const auto groups = problem_.group_limit.size();
  const double unit = with_weights ? weight_scale_ : 1;
  Wide sum = 0;
  std::vector<Wide> left(problem_.sources.size());
  std::vector<Wide> group_price;
  for (std::size_t g = 0; g < groups; ++g) {
    group_price.push_back(whole_ticks(std::min(0.0, row[g] * unit)) * Cut::whole_part);
    sum += group_price[g] * problem_.group_limit[g];
  }
  Wide cost_price = 0;
  if (objective_.most_cost) {
    cost_price = whole_ticks(std::min(0.0, row[groups] * unit / cost_scale_)) * Cut::whole_part;
    sum += cost_price * *objective_.most_cost;
  }
  for (std::size_t s = 0; s < left.size(); ++s) {
    const Source& source = problem_.sources[s];
    if (with_weights) left[s] = static_cast<Wide>(ticks) * Cut::whole_part * objective_.weight[s];
    left[s] -= cost_price * source.cost;
    if (source.group >= 0) left[s] -= group_price[static_cast<std::size_t>(source.group)];
  }
  for (std::size_t m = 0; m < problem_.measures.size(); ++m) {
    const Wide price = whole_ticks(row[static_cast<std::size_t>(measure_row_) + m] * unit) * Cut::whole_part;
    for (std::size_t s = 0; s < left.size(); ++s) left[s] -= price * problem_.measures[m][s];
    const std::size_t column = left.size() + m;
    sum += price * (price < 0 ? bounds.most[column] : bounds.least[column]);
  }
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const std::size_t c = rows_[r];
    const Wide price =
        whole_ticks(std::max(0.0, row[static_cast<std::size_t>(cut_row_) + r] * unit / scales_[c]));
    if (price == 0) continue;
    sum += price * cuts_[c].least;
    for (std::size_t s = 0; s < left.size(); ++s) left[s] -= price * cuts_[c].coefficient[s];
  }
  for (std::size_t s = 0; s < left.size(); ++s)
    sum += left[s] * (left[s] < 0 ? bounds.most[s] : bounds.least[s]);
  if (sum <= 0) return 0;
  return static_cast<std::int64_t>((sum - 1) / (static_cast<Wide>(ticks) * Cut::whole_part)) + 1;
}

bool Purchase::proves_lack(const PurchaseBounds& bounds) {
  // The least that the limits would have to be eased; its dual values add up to a contradiction.
  ClpSimplex& model = lp_->model;
  const auto weigh = [&](bool lack) {
    for (std::size_t s = 0; s < objective_.weight.size(); ++s) {
      model.setObjectiveCoefficient(static_cast<int>(s),
                                    lack ? 0 : static_cast<double>(objective_.weight[s]) / weight_scale_);
    }
    for (int column = first_lack_; column < model.numberColumns(); ++column) {
      model.setObjectiveCoefficient(column, lack ? 1 : 0);
      model.setColumnBounds(column, 0, lack ? COIN_DBL_MAX : 0);
    }
  };
  weigh(true);
  model.primal();
  iterations_ += model.numberIterations();
  const bool proof = model.status() == 0 && proven(model.dualRowSolution(), bounds, false) > 0;
  weigh(false);
  rows_moved_ = true;
  return proof;
}

Purchase::End Purchase::solve(const PurchaseBounds& bounds) {
  ClpSimplex& model = lp_->model;
  for (std::size_t s = 0; s < bounds.least.size(); ++s) {
    model.setColumnBounds(static_cast<int>(s), static_cast<double>(bounds.least[s]),
                          static_cast<double>(bounds.most[s]));
  }
  drop_idle_rows();
  for (;;) {
    // The dual method keeps its factors from one solve to the next, unless rows have come or gone.
    model.dual(0, rows_moved_ ? 1 : 7);
    rows_moved_ = false;
    iterations_ += model.numberIterations();
    if (model.status() > 1) {
      model.primal();
      rows_moved_ = true;
      iterations_ += model.numberIterations();
    }
    if (model.status() == 1) return proves_lack(bounds) ? End::no_solution : End::gave_up;
    if (model.status() != 0) return End::gave_up;
    const double* y = model.primalColumnSolution();
    taken_.assign(y, y + problem_.sources.size());
    measured_.assign(y + problem_.sources.size(), y + first_lack_);
    if (!put_back_violated()) break;
  }
  value_ = model.objectiveValue() * weight_scale_;
  const double* row = model.dualRowSolution();
  bound_ = proven(row, bounds, true);
  prices_.assign(cuts_.size(), 0);
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const double price = row[static_cast<std::size_t>(cut_row_) + r] * weight_scale_ / scales_[rows_[r]];
    prices_[rows_[r]] = std::max(0.0, price);
  }
  return End::solved;
}

Cut Purchase::sum_of_cuts() const {
  Cut sum;
  sum.coefficient.assign(taken_.size(), 0);
  for (std::size_t c = 0; c < cuts_.size(); ++c) {
    // Prices in parts of 2^-10: any price gives a valid sum.
    const auto price = static_cast<Wide>(std::floor(prices_[c] * 1024));
    if (price == 0) continue;
    const Wide least = price * cuts_[c].least;
    sum.least += static_cast<std::int64_t>(least >= 0 ? least / 1024 : least / 1024 - 1);
    for (std::size_t s = 0; s < taken_.size(); ++s) {
      const Wide share = price * cuts_[c].coefficient[s];
      sum.coefficient[s] += static_cast<std::int64_t>(share > 0 ? (share + 1023) / 1024 : share / 1024);
    }
  }
  return sum;
}

}  // namespace models::cutting
