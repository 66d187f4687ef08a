// A small linear programme kept solved while bounds move and rows come and go: the dual simplex method on a dense
// tableau. With tens of columns and rows a pivot costs a microsecond or two, less than a large solver's call.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace models::cutting {

// minimise sum weight(c) x(c), every column within finite bounds, every row's sum within its own.
class Tableau {
 public:
  explicit Tableau(std::vector<double> weight);

  void bound_column(std::size_t column, double least, double most);
  void bound_row(std::size_t row, double least, double most);
  // Coefficients by column.
  void add_row(std::vector<double> coefficient, double least, double most);
  // Only rows that are slack.
  void remove_rows(const std::vector<bool>& gone);

  // From the basis of slack rows alone.
  void start_over();

  enum class End { solved, no_solution, gave_up };
  End solve();

  [[nodiscard]] std::size_t rows() const { return matrix_.size(); }
  [[nodiscard]] bool slack(std::size_t row) const { return place_[columns_ + row].basic; }
  [[nodiscard]] double column(std::size_t column) const { return value_of(column); }
  [[nodiscard]] double row(std::size_t row) const { return value_of(columns_ + row); }
  // What one more of each row's side would cost; where there is no solution, what the rows are weighed by to show it.
  [[nodiscard]] const std::vector<double>& prices() const { return prices_; }
  [[nodiscard]] std::int64_t pivots() const { return pivots_; }

 private:
  // Variables: columns, then the sums of the rows. Those that are basic are sums of the others, which stand at bounds.
  struct Place {
    bool basic = false;
    std::size_t at = 0;  // in the tableau's rows, or its columns
  };
  [[nodiscard]] double value_of(std::size_t variable) const;
  void rebuild();
  void pivot(std::size_t row, std::size_t column);
  void stand_at_bounds();
  // Whether every outer variable can stand at the bound that its cost asks for. The method starts so and stays so, but
  // for rounding.
  [[nodiscard]] bool sound() const;
  [[nodiscard]] bool exact() const;
  void find_values();
  [[nodiscard]] std::size_t leaving(bool& below) const;
  // The column that enters for `row`, or none where nothing can mend it. Columns passed on the way go to their other
  // bound.
  [[nodiscard]] std::size_t entering(std::size_t row, bool below);

  std::size_t columns_;
  std::vector<double> weight_;
  std::vector<std::vector<double>> matrix_;  // of each row, by column
  std::vector<double> least_, most_;         // by variable
  std::vector<Place> place_;                 // by variable
  std::vector<std::size_t> basic_, outer_;   // variables, by row and column of the tableau
  std::vector<std::vector<double>> entry_;   // basic variable = sum over the outer ones
  std::vector<double> left_;                 // what one of each outer variable costs
  std::vector<bool> at_most_;                // outer variables that stand at their upper bound
  std::vector<double> at_, value_;           // of outer and of basic variables
  std::vector<double> prices_;
  std::vector<std::pair<double, std::size_t>> steps_;  // while a column is chosen
  std::int64_t pivots_ = 0;
  std::int64_t since_rebuilt_ = 0;
};

}  // namespace models::cutting
