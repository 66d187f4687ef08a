// Whether given boards, of which a part may be ripped, hold all pieces.
//
// A relaxation knows of each board only how it is used and between which places it is crosscut. What it cannot cut cannot be
// cut. What it can is tried with each crosscut where the relaxation has it; where that does not hold all pieces, the
// crosscuts are looked for in narrower ranges, until their places are known.
#pragma once

#include "models/cutting/cutter.h"
#include "models/cutting/placed_boards.h"
#include "models/cutting/uses_relaxation.h"

namespace models::cutting {

class PartFitter : public Fitter {
 public:
  // Problem and pricer must outlive the fitter.
  PartFitter(const StickProblem& problem, RippingPricer& pricer, const Saw& saw, const Limits& limits);
  Fit fit(const std::vector<int>& taken, std::vector<PatternUse>& patterns) override;
  [[nodiscard]] Work work() const override;

 private:
  struct Question {
    std::vector<int> counts;  // of boards, by group of uses
    bool all = false;         // are used, or else no more
    Work before;              // what was done before it was asked first
    int narrowed = 0;         // how often, since then
  };
  // By how many boards are used in which way.
  Fit split(UsesRelaxation& relaxed, const Question& asked, std::vector<PatternUse>& patterns);
  // Where so many are used in each way, as the relaxation was solved last.
  Fit crosscut(const UsesRelaxation& relaxed, const std::vector<int>& used, const Question& asked,
               std::vector<PatternUse>& patterns);
  // Of what may be done, by all questions or by this one.
  [[nodiscard]] bool worked_out(const Work& before) const;

  const StickProblem& problem_;
  RippingPricer& pricer_;
  Saw saw_;
  Limits limits_;
  UsesRelaxation anywhere_;
  PlacedBoards placed_;
  Nanometres step_ = 0;  // all pieces are multiples of it, with the kerf
  bool began_ = false;
  Work work_;  // in narrower ranges
};

}  // namespace models::cutting
