#include "models/cutting/tableau.h"

#include <algorithm>
#include <cmath>

namespace models::cutting {

namespace {

constexpr double violated = 1e-9;            // sums and columns may miss their bounds by so much
constexpr double least_pivot = 1e-9;         // entries below are taken for nothing
constexpr double cheaper = 1e-9;             // costs nearer to nothing have no sign
constexpr double lost = 1e-7;                // to rounding, before all is worked out anew
constexpr int most_pivots = 2'000;           // in one solve
constexpr std::int64_t rebuilt_after = 100;  // pivots, before what was lost to rounding grows

}  // namespace

Tableau::Tableau(std::vector<double> weight)
    : columns_(weight.size()), weight_(std::move(weight)), least_(columns_), most_(columns_) {
  left_ = weight_;
  at_most_.assign(columns_, false);
  for (std::size_t c = 0; c < columns_; ++c) {
    place_.push_back({false, c});
    outer_.push_back(c);
  }
}

void Tableau::bound_column(std::size_t column, double least, double most) {
  least_[column] = least;
  most_[column] = most;
}

void Tableau::bound_row(std::size_t row, double least, double most) {
  bound_column(columns_ + row, least, most);
}

void Tableau::add_row(std::vector<double> coefficient, double least, double most) {
  std::vector<double> entries(columns_);
  for (std::size_t c = 0; c < columns_; ++c) {
    if (coefficient[c] == 0) continue;
    const Place& place = place_[c];
    if (!place.basic) {
      entries[place.at] += coefficient[c];
      continue;
    }
    for (std::size_t j = 0; j < columns_; ++j) entries[j] += coefficient[c] * entry_[place.at][j];
  }
  place_.push_back({true, basic_.size()});
  basic_.push_back(columns_ + matrix_.size());
  entry_.push_back(std::move(entries));
  matrix_.push_back(std::move(coefficient));
  least_.push_back(least);
  most_.push_back(most);
}

void Tableau::remove_rows(const std::vector<bool>& gone) {
  std::vector<std::size_t> number(place_.size());  // by old variable
  std::size_t kept = 0;
  for (std::size_t v = 0; v < place_.size(); ++v) {
    number[v] = kept;
    if (v >= columns_ && gone[v - columns_]) continue;
    least_[kept] = least_[v];
    most_[kept] = most_[v];
    if (v >= columns_ && kept < v) matrix_[kept - columns_] = std::move(matrix_[v - columns_]);
    ++kept;
  }
  std::size_t row = 0;
  for (std::size_t i = 0; i < basic_.size(); ++i) {
    if (basic_[i] >= columns_ && gone[basic_[i] - columns_]) continue;
    basic_[row] = number[basic_[i]];
    if (row < i) entry_[row] = std::move(entry_[i]);
    ++row;
  }
  basic_.resize(row);
  entry_.resize(row);
  matrix_.resize(kept - columns_);
  least_.resize(kept);
  most_.resize(kept);
  place_.resize(kept);
  for (std::size_t& variable : outer_) variable = number[variable];
  for (std::size_t i = 0; i < basic_.size(); ++i) place_[basic_[i]] = {true, i};
  for (std::size_t j = 0; j < columns_; ++j) place_[outer_[j]] = {false, j};
}

double Tableau::value_of(std::size_t variable) const {
  const Place& place = place_[variable];
  if (place.basic) return value_[place.at];
  return at_most_[place.at] ? most_[variable] : least_[variable];
}

void Tableau::start_over() {
  entry_ = matrix_;
  left_ = weight_;
  for (std::size_t c = 0; c < columns_; ++c) {
    outer_[c] = c;
    place_[c] = {false, c};
  }
  for (std::size_t r = 0; r < matrix_.size(); ++r) {
    basic_[r] = columns_ + r;
    place_[columns_ + r] = {true, r};
  }
  since_rebuilt_ = 0;
}

void Tableau::rebuild() {
  // The rows' own sums again, and from there to the same basis by the largest pivots.
  std::vector<bool> outer(place_.size());
  for (const std::size_t variable : outer_) outer[variable] = true;
  start_over();
  for (std::size_t r = 0; r < matrix_.size(); ++r) {
    if (!outer[columns_ + r]) continue;
    std::size_t best = columns_;
    double largest = 1e-7;
    for (std::size_t j = 0; j < columns_; ++j) {
      if (outer[outer_[j]] || std::abs(entry_[r][j]) <= largest) continue;
      largest = std::abs(entry_[r][j]);
      best = j;
    }
    if (best < columns_) pivot(r, best);
  }
  since_rebuilt_ = 0;
}

void Tableau::pivot(std::size_t row, std::size_t column) {
  std::vector<double>& leaves = entry_[row];
  const double by = 1 / leaves[column];
  for (double& entry : leaves) entry *= -by;
  leaves[column] = by;
  const auto put_in = [&](std::vector<double>& sum) {
    const double times = sum[column];
    if (times == 0) return;
    sum[column] = 0;
    double* const to = sum.data();
    const double* const from = leaves.data();
    for (std::size_t j = 0; j < columns_; ++j) to[j] += times * from[j];
  };
  for (std::size_t i = 0; i < entry_.size(); ++i) {
    if (i != row) put_in(entry_[i]);
  }
  put_in(left_);
  std::swap(basic_[row], outer_[column]);
  place_[basic_[row]] = {true, row};
  place_[outer_[column]] = {false, column};
  ++since_rebuilt_;
}

void Tableau::stand_at_bounds() {
  for (std::size_t j = 0; j < columns_; ++j) {
    const std::size_t v = outer_[j];
    // A bound that is not there cannot be stood at: rounding may have turned the sign of next to nothing.
    at_most_[j] = std::isinf(least_[v]) || (left_[j] < 0 && !std::isinf(most_[v]));
  }
}

bool Tableau::sound() const {
  for (std::size_t j = 0; j < columns_; ++j) {
    const std::size_t v = outer_[j];
    if (left_[j] < -cheaper ? std::isinf(most_[v]) : left_[j] > cheaper && std::isinf(least_[v]))
      return false;
  }
  return true;
}

// Whether rows are still their columns' sums, and what is left of the weights is what the rows' prices leave.
bool Tableau::exact() const {
  std::vector<double> left = weight_;
  for (std::size_t r = 0; r < matrix_.size(); ++r) {
    const std::vector<double>& row = matrix_[r];
    const Place& place = place_[columns_ + r];
    double sum = 0, size = 1;
    for (std::size_t c = 0; c < columns_; ++c) {
      const double part = row[c] * value_of(c);
      sum += part;
      size += std::abs(part);
    }
    if (std::abs(sum - value_of(columns_ + r)) > lost * size) return false;
    if (place.basic) continue;
    for (std::size_t c = 0; c < columns_; ++c) left[c] -= left_[place.at] * row[c];
  }
  for (std::size_t c = 0; c < columns_; ++c) {
    const Place& place = place_[c];
    if (std::abs(left[c] - (place.basic ? 0 : left_[place.at])) > lost) return false;
  }
  return true;
}

void Tableau::find_values() {
  at_.resize(columns_);
  for (std::size_t j = 0; j < columns_; ++j) at_[j] = at_most_[j] ? most_[outer_[j]] : least_[outer_[j]];
  value_.resize(basic_.size());
  for (std::size_t i = 0; i < basic_.size(); ++i) {
    // Four sums at once: none waits for the one before.
    double sum[4] = {0, 0, 0, 0};
    const double* const entry = entry_[i].data();
    std::size_t j = 0;
    for (; j + 4 <= columns_; j += 4) {
      for (std::size_t k = 0; k < 4; ++k) sum[k] += entry[j + k] * at_[j + k];
    }
    for (; j < columns_; ++j) sum[0] += entry[j] * at_[j];
    value_[i] = (sum[0] + sum[1]) + (sum[2] + sum[3]);
  }
}

std::size_t Tableau::leaving(bool& below) const {
  // The one that misses its bound by most, measured along the edge that mends it.
  std::size_t best = basic_.size();
  double furthest = 0;
  for (std::size_t i = 0; i < basic_.size(); ++i) {
    const std::size_t v = basic_[i];
    const double miss = std::max(least_[v] - value_[i], value_[i] - most_[v]);
    if (miss <= violated * (1 + std::abs(value_[i]))) continue;
    double squares = 1;
    for (const double entry : entry_[i]) squares += entry * entry;
    if (miss * miss <= furthest * squares) continue;
    furthest = miss * miss / squares;
    best = i;
    below = value_[i] < least_[v];
  }
  return best;
}

std::size_t Tableau::entering(std::size_t row, bool below) {
  steps_.clear();
  for (std::size_t j = 0; j < columns_; ++j) {
    const double entry = below ? entry_[row][j] : -entry_[row][j];
    const std::size_t v = outer_[j];
    if (least_[v] == most_[v] || std::abs(entry) < least_pivot) continue;
    if (at_most_[j] ? entry > 0 : entry < 0) continue;
    steps_.emplace_back(std::abs(left_[j] / entry), j);
  }
  std::sort(steps_.begin(), steps_.end());
  const std::size_t v = basic_[row];
  double missing = below ? least_[v] - value_[row] : value_[row] - most_[v];
  for (std::size_t i = 0; i < steps_.size(); ++i) {
    const std::size_t j = steps_[i].second;
    const double range = most_[outer_[j]] - least_[outer_[j]];
    missing -= range * std::abs(entry_[row][j]);
    if (missing > violated) continue;
    // Of steps of one length the largest entry is the safest pivot.
    std::size_t best = i;
    for (std::size_t k = i + 1; k < steps_.size() && steps_[k].first <= steps_[i].first + 1e-12; ++k) {
      if (std::abs(entry_[row][steps_[k].second]) > std::abs(entry_[row][steps_[best].second])) best = k;
    }
    std::swap(steps_[i], steps_[best]);
    for (std::size_t k = 0; k < i; ++k) at_most_[steps_[k].second] = !at_most_[steps_[k].second];
    return steps_[i].second;
  }
  return columns_;
}

Tableau::End Tableau::solve() {
  if (since_rebuilt_ >= rebuilt_after) rebuild();
  if (!sound()) start_over();
  stand_at_bounds();
  bool checked = false;
  for (int round = 0; round < most_pivots; ++round) {
    if (since_rebuilt_ >= 2 * rebuilt_after) {
      rebuild();
      if (!sound()) start_over();
      stand_at_bounds();
    }
    find_values();
    bool below = false;
    const std::size_t row = leaving(below);
    const bool solved = row == basic_.size();
    if (solved && (!sound() || (!checked && !exact()))) {
      checked = true;  // from here on few pivots are made, and nothing is lost
      start_over();
      stand_at_bounds();
      continue;
    }
    const std::size_t column = solved ? columns_ : entering(row, below);
    if (column == columns_) {
      prices_.assign(matrix_.size(), 0);
      for (std::size_t j = 0; j < columns_; ++j) {
        if (outer_[j] < columns_) continue;
        const double price = solved ? left_[j] : below ? -entry_[row][j] : entry_[row][j];
        prices_[outer_[j] - columns_] = price;
      }
      if (solved) return End::solved;
      if (basic_[row] >= columns_) prices_[basic_[row] - columns_] = below ? 1 : -1;
      return End::no_solution;
    }
    pivot(row, column);
    ++pivots_;
    at_most_[column] = !below;
  }
  since_rebuilt_ = rebuilt_after;
  return End::gave_up;
}

}  // namespace models::cutting
