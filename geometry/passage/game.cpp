#include "geometry/passage/game.h"

#include <algorithm>
#include <cmath>

namespace geometry::passage {

// With all entries made positive by a shift, the row mixture x / sum(x) comes from the linear program
// maximise sum(x) so that x . column <= 1 for every column; the columns' mixture are its shadow prices. The
// slack basis is feasible, so the plain simplex method starts at once; four or eight constraints need only
// a few pivots.
Mixture solve(const Game& game) {
  const int rows = game.rows, columns = game.columns, width = rows + columns;
  double low = INFINITY, high = -INFINITY;
  for (int i = 0; i < rows; ++i)
    for (int c = 0; c < columns; ++c) {
      low = std::min(low, game.entry[i][c]);
      high = std::max(high, game.entry[i][c]);
    }
  const double scale = 1 / std::max(high - low, 1e-9);  // entries come to lie in [1, 2]

  // One line for each column of the game: its constraint, slacks last, then the right-hand side.
  std::array<std::array<double, most_rows + most_columns + 1>, most_columns> line{};
  std::array<double, most_rows + most_columns + 1> gain{};
  std::array<int, most_columns> basis{};
  for (int c = 0; c < columns; ++c) {
    for (int i = 0; i < rows; ++i) line[c][i] = 1 + (game.entry[i][c] - low) * scale;
    line[c][rows + c] = 1;
    line[c][width] = 1;
    basis[c] = rows + c;
  }
  for (int i = 0; i < rows; ++i) gain[i] = 1;

  constexpr int most_pivots = 60;  // a stop for cycling; the bound then is weaker but holds
  for (int pivots = 0; pivots < most_pivots; ++pivots) {
    int enter = 0;
    for (int j = 1; j < width; ++j)
      if (gain[j] > gain[enter]) enter = j;
    if (gain[enter] <= 1e-12) break;
    int leave = -1;
    for (int c = 0; c < columns; ++c)
      if (line[c][enter] > 1e-12 &&
          (leave < 0 || line[c][width] * line[leave][enter] < line[leave][width] * line[c][enter]))
        leave = c;
    if (leave < 0) break;
    const double pivot = 1 / line[leave][enter];
    for (int j = 0; j <= width; ++j) line[leave][j] *= pivot;
    for (int c = 0; c < columns; ++c) {
      if (c == leave || line[c][enter] == 0) continue;
      const double factor = line[c][enter];
      for (int j = 0; j <= width; ++j) line[c][j] -= factor * line[leave][j];
    }
    const double factor = gain[enter];
    for (int j = 0; j <= width; ++j) gain[j] -= factor * line[leave][j];
    basis[leave] = enter;
  }

  Mixture mixture;
  double sum = 0;
  for (int c = 0; c < columns; ++c)
    if (basis[c] < rows) sum += mixture.rows[basis[c]] = std::max(0.0, line[c][width]);
  if (sum > 0) {
    for (int i = 0; i < rows; ++i) mixture.rows[i] /= sum;
  } else {
    mixture.rows[0] = 1;
  }
  double prices = 0;
  for (int c = 0; c < columns; ++c) prices += mixture.columns[c] = std::max(0.0, -gain[rows + c]);
  for (int c = 0; c < columns; ++c)
    mixture.columns[c] = prices > 0 ? mixture.columns[c] / prices : 1.0 / columns;
  mixture.value = -INFINITY;
  for (int c = 0; c < columns; ++c) {
    double mean = 0;
    for (int i = 0; i < rows; ++i) mean += mixture.rows[i] * game.entry[i][c];
    mixture.value = std::max(mixture.value, mean);
  }
  return mixture;
}

}  // namespace geometry::passage
