// Whether the pieces of one family can be cut from given sources: first the relaxation, which answers no with a cut that
// holds for all plans, then whole patterns.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "models/cutting/cuts.h"
#include "models/cutting/master.h"
#include "models/cutting/part.h"

namespace models::cutting {

enum class Fit { yes, no, unknown };

// Knows a better way to tell whether given sources hold a family's pieces.
class Fitter {
 public:
  virtual ~Fitter() = default;
  // Sources are by number in the whole problem. Where they hold the pieces, `patterns` are how, in the whole's numbers.
  virtual Fit fit(const std::vector<int>& taken, std::vector<PatternUse>& patterns) = 0;
  [[nodiscard]] virtual Work work() const = 0;  // of all answers
};

class Cutter {
 public:
  // Asks the fitter, where there is one, instead of trying itself.
  Cutter(const CoverProblem& whole, int family, Pricer& pricer, const Limits& limits,
         Fitter* fitter = nullptr);

  void add(const Pattern& pattern);  // one of the whole problem, if it is this family's

  // A cut that `taken` (by source of the whole) does not meet, where the relaxation says that the pieces do not fit;
  // nothing where they do. With `depth` near 1 the cut is as deep as can be, with less it is sooner found.
  [[nodiscard]] std::vector<Cut> lacking(const std::vector<double>& taken, double depth);

  // What the relaxation minimises within bounds; by source of the whole. A piece left uncut costs so many of the largest
  // weight.
  void set_goal(const Objective& goal, double piece_price = Master::uncut_price);

  // The relaxation where no fewer and no more of each source are taken, and after the sources of each of the problem's
  // measures. Only for a problem of one family.
  struct Relaxed {
    // Of the goal, with the patterns known: where there is a cut and no more patterns, the least there is.
    double value = 0;
    std::vector<double> taken;  // by source; empty where it could not be solved
    double uncut = 0;           // pieces
    std::optional<Cut> cut;     // what all plans meet; only looked for where the value is enough
    // What the cut is made of, in whole numbers: what each source is worth at most, and all pieces together.
    std::vector<double> worth;
    double asked = 0;
    bool more = false;  // patterns were found that may lower the value
  };
  [[nodiscard]] Relaxed relax(const std::vector<std::int64_t>& least, const std::vector<std::int64_t>& most,
                              double enough, Aim aim = Aim::goal);
  // What the relaxation uses as it was solved last: patterns of the whole, and how often.
  [[nodiscard]] std::vector<std::pair<Pattern, double>> uses() const;
  // All patterns known so far, of the whole.
  [[nodiscard]] std::vector<Pattern> known_patterns() const;
  // Its value with the patterns known; nothing where it could not be solved.
  [[nodiscard]] std::optional<double> value_within(const std::vector<std::int64_t>& least,
                                                   const std::vector<std::int64_t>& most);

  // Whether whole patterns on whole sources hold all pieces; they are then in patterns(). Where it is unknown it may be
  // asked again: other ways are tried then.
  [[nodiscard]] Fit fit(const std::vector<int>& taken);
  [[nodiscard]] const std::vector<PatternUse>& patterns() const { return found_; }

  // Those that give blanks of the family, by number in the whole.
  [[nodiscard]] const std::vector<int>& sources() const { return part_.sources; }

  // Patterns of the whole that the relaxation takes where there are as many sources as one likes.
  [[nodiscard]] std::vector<Pattern> relaxed_patterns();

  [[nodiscard]] std::int64_t iterations() const;
  [[nodiscard]] bool worked_out() const;  // the limits are reached

 private:
  using Blanks = std::vector<std::int64_t>;  // by kind
  struct Answer {
    Fit fit = Fit::unknown;
    std::vector<PatternUse> patterns;
    int tried = 0;  // dives
  };

  [[nodiscard]] std::vector<double> of_part(const std::vector<double>& taken) const;
  [[nodiscard]] Cut cut_at(const Prices& prices, const std::vector<double>& worth, double ticks) const;
  [[nodiscard]] std::vector<double> source_worths(const std::vector<double>& worth) const;
  // Prices new patterns at the relaxation as it stands; whether there were any.
  bool enrich(const std::vector<int>& at_most, bool exact = true);

  // At the prices of the relaxation that may leave some of the sources unused. Nothing where it could not be solved.
  struct Spare {
    Prices prices;
    std::vector<double> kind_worth, source_worth;
    double spare = 0;
  };
  [[nodiscard]] std::optional<Spare> spare_of(const std::vector<int>& sources);

  // Rounds the relaxation step by step (dive.cpp). The sources are those of the part.
  bool dive(const std::vector<int>& sources, int variant);
  // Lists all patterns that could matter and searches them to the end (exact.cpp).
  Fit cut_exactly(const std::vector<int>& sources, bool thorough);
  void bound(const std::vector<std::int64_t>& least, const std::vector<std::int64_t>& most, Aim aim);

  const CoverProblem& whole_;
  Part part_;
  PartPricer pricer_;
  const Limits& limits_;
  Fitter* fitter_;
  std::int64_t steps_before_;
  Master master_;
  double ticks_ = 1;        // to one unit of cost
  double uncut_ticks_ = 1;  // to one piece
  double goal_ticks_ = 1;   // to one unit of the goal
  std::int64_t exact_iterations_ = 0;
  std::map<Blanks, Answer> answers_;
  std::vector<PatternUse> found_;
};

}  // namespace models::cutting
