// The linear relaxation of a cover problem over the patterns known so far, kept warm between solves.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "models/cutting/cover.h"

namespace models::cutting {

// What the relaxation minimises: the sources' cost with pieces that are left uncut at a high price, or the number of
// pieces left uncut alone (to find out whether there is any solution).
enum class Aim { cost, uncut, goal };

class Master {
 public:
  explicit Master(const CoverProblem& problem);
  ~Master();
  Master(const Master&) = delete;
  Master& operator=(const Master&) = delete;

  // Adds a pattern and says whether it is a new one.
  bool add(const Pattern& pattern);
  [[nodiscard]] const std::vector<Pattern>& patterns() const { return patterns_; }
  // Drops patterns far from use, when there are more than `most`. Indices of patterns change.
  void forget_idle(std::size_t most);

  void bound_sources(const std::vector<double>& least, const std::vector<double>& most);
  // Of sources that each of the problem's measures sums.
  void bound_measures(const std::vector<double>& least, const std::vector<double>& most);
  void free_measures();
  void bound_pattern(std::size_t pattern, int least, int most);
  void free_patterns();
  void aim_at(Aim aim);
  // What Aim::goal is: another sum over the sources, while the cost is held.
  // A piece left uncut costs so many of the largest weight.
  void set_goal(const Objective& goal, double piece_price = uncut_price);

  // Solves to optimality. False when there is no solution or the simplex method gave up.
  bool solve();

  [[nodiscard]] double value() const;  // of the aim, in its own units
  [[nodiscard]] double uncut() const;  // pieces left uncut
  [[nodiscard]] std::vector<double> sources() const;
  [[nodiscard]] std::vector<double> uses() const;  // by pattern
  // Dual values, rounded down to whole ticks, so many to one unit of the aim.
  [[nodiscard]] Prices prices(double ticks) const;
  [[nodiscard]] double piece_price() const { return piece_price_; }  // what an uncut piece costs
  [[nodiscard]] double goal_piece_price() const { return goal_uncut_price_ * goal_scale_; }
  [[nodiscard]] std::int64_t iterations() const { return iterations_; }

  static constexpr double uncut_price = 10;  // in prices of the dearest source
  static constexpr int unbounded = 1'000'000'000;

 private:
  struct Simplex;
  [[nodiscard]] double unit() const;  // of the aim, in the simplex' objective

  const CoverProblem& problem_;
  std::unique_ptr<Simplex> lp_;
  std::vector<Pattern> patterns_;
  std::vector<std::size_t> sorted_;  // indices of patterns_ in order of content, to find doubles
  double scale_ = 1;                 // cost to one unit of the simplex' objective
  double piece_price_ = 0;
  Objective goal_;
  double goal_scale_ = 1;
  double goal_uncut_price_ = uncut_price;
  bool columns_came_ = true;  // since the last solve
  bool fresh_ = true;         // not solved as yet, or not since columns went
  Aim aim_ = Aim::cost;
  std::int64_t iterations_ = 0;
  // Columns: sources, then steps down to the next smaller kind, then uncut pieces, then patterns.
  int first_step_ = 0;
  int first_uncut_ = 0;
  int first_pattern_ = 0;
  // Rows: items, kinds, groups, measures, the cost.
  int kind_row_ = 0;
  int group_row_ = 0;
  int measure_row_ = 0;
  int cost_row_ = 0;
};

}  // namespace models::cutting
