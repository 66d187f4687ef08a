// The relaxation of a cover problem to its sources alone: how many of each, under the cuts known so far.
#pragma once

#include <vector>

#include "models/cutting/cover.h"
#include "models/cutting/cuts.h"
#include "models/cutting/tableau.h"

namespace models::cutting {

// What a node of the search may take of each source, and after the sources of each measure.
struct PurchaseBounds {
  std::vector<std::int64_t> least;
  std::vector<std::int64_t> most;
};

class Purchase {
 public:
  Purchase(const CoverProblem& problem, const Objective& objective);

  // Adds a cut and says whether it is a new one.
  bool add(const Cut& cut);
  [[nodiscard]] const std::vector<Cut>& cuts() const { return cuts_; }

  enum class End { solved, no_solution, gave_up };
  // Solves within the bounds. `no_solution` is proven in whole numbers.
  End solve(const PurchaseBounds& bounds);

  // Of each source, and of each measure.
  [[nodiscard]] const std::vector<double>& taken() const { return taken_; }
  [[nodiscard]] const std::vector<double>& measured() const { return measured_; }
  // The relaxation's own value, and
  [[nodiscard]] double value() const { return value_; }
  // the least whole value that a plan within the bounds can have: proven in whole numbers from the dual values.
  [[nodiscard]] std::int64_t bound() const { return bound_; }
  // The cuts that hold at their dual values, summed: as tight as the relaxation itself.
  [[nodiscard]] Cut sum_of_cuts() const;
  [[nodiscard]] std::int64_t iterations() const { return lp_.pivots() / light; }

 private:
  static constexpr std::int64_t light = 8;  // pivots here are the work of one in a relaxation over patterns
  [[nodiscard]] std::int64_t proven(const std::vector<double>& row, const PurchaseBounds& bounds,
                                    bool with_weights) const;

  void put_in_row(std::size_t index);
  void drop_idle_rows();
  bool put_back_violated();

  const CoverProblem& problem_;
  const Objective& objective_;
  Tableau lp_;
  std::vector<Cut> cuts_;
  std::vector<double> scales_;     // of each cut's row
  std::vector<std::size_t> rows_;  // the cuts that stand in the relaxation; the others hold there unasked
  std::vector<double> prices_;     // dual values of the cuts, for one whole
  std::vector<double> taken_;
  std::vector<double> measured_;
  double value_ = 0;
  std::int64_t bound_ = 0;
  double weight_scale_ = 1;
  double cost_scale_ = 1;
  // Rows: groups, the limit on cost, measures, cuts.
  std::size_t measure_row_ = 0;
  std::size_t cut_row_ = 0;
};

}  // namespace models::cutting
