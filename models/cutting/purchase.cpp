#include "models/cutting/purchase.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr std::size_t most_rows = 60;  // of cuts, before those without effect are set aside
constexpr std::size_t most_back = 10;  // that come back at once
constexpr double ticks = 0x1p44;       // to one unit of the objective

constexpr double endless = std::numeric_limits<double>::infinity();

double largest_of(const std::vector<std::int64_t>& weights) {
  double largest = 1;
  for (const std::int64_t weight : weights) largest = std::max(largest, static_cast<double>(weight));
  return largest;
}

std::vector<double> in_parts(const std::vector<std::int64_t>& weights, double whole) {
  std::vector<double> parts;
  for (const std::int64_t weight : weights) parts.push_back(static_cast<double>(weight) / whole);
  return parts;
}

Wide whole_ticks(double value) { return static_cast<Wide>(std::floor(value * ticks)); }

}  // namespace

Purchase::Purchase(const CoverProblem& problem, const Objective& objective)
    : problem_(problem),
      objective_(objective),
      lp_(in_parts(objective.weight, largest_of(objective.weight))),
      weight_scale_(largest_of(objective.weight)) {
  const std::size_t sources = problem.sources.size();
  for (std::size_t g = 0; g < problem.group_limit.size(); ++g) {
    std::vector<double> row(sources);
    for (std::size_t s = 0; s < sources; ++s)
      row[s] = problem.sources[s].group == static_cast<int>(g) ? 1 : 0;
    lp_.add_row(std::move(row), -endless, problem.group_limit[g]);
  }
  for (const Source& source : problem.sources)
    cost_scale_ = std::max(cost_scale_, static_cast<double>(source.cost));
  std::vector<double> costs;
  for (const Source& source : problem.sources)
    costs.push_back(static_cast<double>(source.cost) / cost_scale_);
  lp_.add_row(std::move(costs), -endless,
              objective.most_cost ? static_cast<double>(*objective.most_cost) / cost_scale_ : endless);
  measure_row_ = lp_.rows();
  for (const std::vector<int>& measure : problem.measures)
    lp_.add_row({measure.begin(), measure.end()}, 0, endless);
  cut_row_ = lp_.rows();
}

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
  std::vector<double> row;
  for (const std::int64_t c : cut.coefficient) row.push_back(static_cast<double>(c) / scale);
  lp_.add_row(std::move(row), static_cast<double>(cut.least) / scale, endless);
  rows_.push_back(index);
}

void Purchase::drop_idle_rows() {
  if (rows_.size() <= most_rows) return;
  std::vector<bool> gone(lp_.rows());
  std::vector<std::size_t> kept;
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    gone[cut_row_ + r] = lp_.slack(cut_row_ + r);
    if (!gone[cut_row_ + r]) kept.push_back(rows_[r]);
  }
  lp_.remove_rows(gone);
  rows_ = std::move(kept);
}

bool Purchase::put_back_violated() {
  std::vector<std::pair<double, std::size_t>> violated;
  std::vector<bool> in_row(cuts_.size());
  for (const std::size_t c : rows_) in_row[c] = true;
  for (std::size_t c = 0; c < cuts_.size(); ++c) {
    if (in_row[c]) continue;
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

std::int64_t Purchase::proven(const std::vector<double>& row, const PurchaseBounds& bounds,
                              bool with_weights) const {
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
    const Wide price = whole_ticks(row[measure_row_ + m] * unit) * Cut::whole_part;
    for (std::size_t s = 0; s < left.size(); ++s) left[s] -= price * problem_.measures[m][s];
    const std::size_t column = left.size() + m;
    sum += price * (price < 0 ? bounds.most[column] : bounds.least[column]);
  }
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const std::size_t c = rows_[r];
    const Wide price = whole_ticks(std::max(0.0, row[cut_row_ + r] * unit / scales_[c]));
    if (price == 0) continue;
    sum += price * cuts_[c].least;
    for (std::size_t s = 0; s < left.size(); ++s) left[s] -= price * cuts_[c].coefficient[s];
  }
  for (std::size_t s = 0; s < left.size(); ++s)
    sum += left[s] * (left[s] < 0 ? bounds.most[s] : bounds.least[s]);
  if (sum <= 0) return 0;
  return static_cast<std::int64_t>((sum - 1) / (static_cast<Wide>(ticks) * Cut::whole_part)) + 1;
}

Purchase::End Purchase::solve(const PurchaseBounds& bounds) {
  const std::size_t sources = problem_.sources.size();
  for (std::size_t c = 0; c < bounds.least.size(); ++c) {
    const auto least = static_cast<double>(bounds.least[c]);
    const auto most = static_cast<double>(bounds.most[c]);
    if (c < sources) {
      lp_.bound_column(c, least, most);
    } else {
      lp_.bound_row(measure_row_ + c - sources, least, most);
    }
  }
  drop_idle_rows();
  taken_.resize(sources);
  measured_.resize(problem_.measures.size());
  do {
    // The rows' weights add up to a contradiction, unless rounding has led the tableau astray.
    const auto shown = [&] { return proven(lp_.prices(), bounds, false) > 0; };
    Tableau::End end = lp_.solve();
    if (end == Tableau::End::gave_up || (end == Tableau::End::no_solution && !shown())) {
      lp_.start_over();
      end = lp_.solve();
    }
    if (end == Tableau::End::no_solution) return shown() ? End::no_solution : End::gave_up;
    if (end == Tableau::End::gave_up) return End::gave_up;
    // A hair beyond a bound is rounding.
    const auto within = [&](double value, std::size_t c) {
      return std::clamp(value, static_cast<double>(bounds.least[c]), static_cast<double>(bounds.most[c]));
    };
    for (std::size_t s = 0; s < sources; ++s) taken_[s] = within(lp_.column(s), s);
    for (std::size_t m = 0; m < measured_.size(); ++m)
      measured_[m] = within(lp_.row(measure_row_ + m), sources + m);
  } while (put_back_violated());
  value_ = 0;
  for (std::size_t s = 0; s < sources; ++s) value_ += static_cast<double>(objective_.weight[s]) * taken_[s];
  bound_ = proven(lp_.prices(), bounds, true);
  prices_.assign(cuts_.size(), 0);
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const double price = lp_.prices()[cut_row_ + r] * weight_scale_ / scales_[rows_[r]];
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
