// Whether boards of which it is known how each is used and where it is crosscut hold all pieces: each section is then cut
// for itself.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "models/cutting/blanks.h"
#include "models/cutting/crosscut_places.h"
#include "models/cutting/cutter.h"
#include "models/cutting/ripping_pricer.h"

namespace models::cutting {

class PlacedBoards {
 public:
  // Problem and pricer must outlive it.
  PlacedBoards(const StickProblem& problem, RippingPricer& pricer, const Saw& saw);

  // `used` is how many boards are used in each way; of those that are ripped in part, `crosscut` has each one. A no is
  // proven. `patterns` are of the problem.
  [[nodiscard]] Fit fit(const std::vector<BoardUse>& uses, const std::vector<int>& used,
                        const std::vector<CrosscutBoard>& crosscut, std::vector<PatternUse>& patterns);
  [[nodiscard]] const Work& work() const { return work_; }

 private:
  // A board that is cut, or one clear length of a board that is not ripped.
  struct Board {
    int kind = 0;                     // of the problem
    int rip = -1;                     // layout
    Nanometres ripped = 0, rest = 0;  // how long each part is, with a kerf behind it
  };
  struct Lengths {  // what is to be cut, for each section a family of its own
    StickProblem problem;
    std::vector<Blanks> blanks;  // by source
  };
  [[nodiscard]] std::vector<Board> boards_of(const std::vector<BoardUse>& uses, const std::vector<int>& used,
                                             const std::vector<CrosscutBoard>& crosscut) const;
  [[nodiscard]] Lengths lengths_of(const std::vector<Board>& boards) const;
  // By the relaxation alone or, where `wholly`, by whole patterns. A no is proven.
  [[nodiscard]] Fit hold(const Lengths& lengths, int section, bool wholly, std::vector<PatternUse>& patterns);
  [[nodiscard]] bool may_hold(const Lengths& lengths, int section);
  // The patterns of single lengths on their boards.
  [[nodiscard]] std::vector<PatternUse> on_boards(const std::vector<Board>& boards, const Lengths& lengths,
                                                  const std::vector<PatternUse>& patterns) const;

  const StickProblem& problem_;
  RippingPricer& pricer_;
  Nanometres kerf_;
  std::set<int> sections_;                                      // that are asked for
  std::map<int, std::set<std::vector<ItemCount>>> piece_sets_;  // by section, known from former questions
  std::map<std::pair<int, std::map<Nanometres, int>>, bool> may_hold_;  // by section and lengths
  Work work_;
};

}  // namespace models::cutting
