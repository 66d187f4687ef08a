// Whether given boards, of which a part may be ripped, hold all pieces.
//
// Where a board is crosscut is told first only in steps: the strips then reach to the end of the step and the rest from
// its beginning, a little too long together. What cannot be cut from such boards cannot be cut from real ones. What can be
// is a plan where strips and rest fit after all; else the step is divided where they overlap, and it is tried again.
#pragma once

#include <map>
#include <set>

#include "models/cutting/board_uses.h"
#include "models/cutting/cutter.h"
#include "models/cutting/ripping_pricer.h"

namespace models::cutting {

class PartFitter : public Fitter {
 public:
  // Problem and pricer must outlive the fitter.
  PartFitter(const StickProblem& problem, RippingPricer& pricer, const Saw& saw, const Limits& limits);
  Fit fit(const std::vector<int>& taken, const Spare& spare, std::vector<PatternUse>& patterns) override;
  [[nodiscard]] Work work() const override {
    return {0, work_.lp_iterations + uses_cutter_.iterations(), work_.pricing_steps + uses_pricer_.steps()};
  }

 private:
  using Way = std::pair<int, int>;  // kind of the problem, layout
  // Where the crosscut may be, with the kerf behind it.
  struct Places {
    std::vector<Stretch> all;                // ascending
    std::map<Nanometres, Nanometres> steps;  // from, to: together they cover them all
    std::set<Nanometres> points;             // just there
  };
  using Steps = std::map<Way, Places>;
  using Uses = std::vector<RippingPricer::Uses>;  // by kind
  struct Stepped;

  // A board ripped in part, and between which places its crosscut was looked for: at the first its rest has the room
  // that it took, at the last its strips have.
  struct Parted {
    std::size_t source = 0;
    Nanometres rest_has_room = 0, strips_have_room = 0;
  };
  // Of what may be done, by all questions or since the last one began.
  [[nodiscard]] bool worked_out(const Work& before) const;

  // By how many boards are used in which way (part_splits.cpp).
  Fit split(const std::vector<int>& taken, std::vector<PatternUse>& patterns);
  void add_known_patterns();

  // Boards used in known ways, each crosscut somewhere (crosscuts.cpp).
  struct Box {  // from and to, by board ripped in part
    std::vector<Nanometres> from, to;
  };
  struct Tried {
    bool strips_fit = true, rests_fit = true;
    std::vector<PatternUse> patterns;  // where both do
  };
  Fit crosscut(const std::vector<int>& used, std::vector<PatternUse>& patterns);
  Fit crosscut_one(const std::vector<int>& used, const Box& anywhere, std::vector<PatternUse>& patterns);
  Fit crosscut_some(const std::vector<int>& used, const Box& anywhere, std::vector<PatternUse>& patterns);
  [[nodiscard]] Box anywhere(const std::vector<int>& used) const;
  [[nodiscard]] std::vector<double> relaxed_crosscuts(const std::vector<int>& used) const;
  [[nodiscard]] Stepped boards_at(const std::vector<int>& used, const Box& box) const;
  [[nodiscard]] Tried try_at(const std::vector<int>& used, const std::vector<Nanometres>& places,
                             int& whole_tries);
  bool may_hold(const Stepped& boards, int section);
  Fit hold(const Stepped& boards, int section, bool wholly, std::vector<PatternUse>& patterns);

  // In stepped_boards.cpp.
  [[nodiscard]] Uses near_enough(const std::vector<int>& taken, const Spare& spare) const;
  [[nodiscard]] Steps first_steps(const Uses& uses) const;
  [[nodiscard]] Stepped stepped(const std::vector<int>& taken, const Uses& uses, const Steps& steps) const;
  // The plan's boards with their strips and rests; where some overlap, there are none, but how each was parted.
  [[nodiscard]] std::vector<PatternUse> real_boards(const Stepped& stepped, const CoverPlan& plan,
                                                    std::vector<Parted>& parted);
  static void divide_at(Places& places, Nanometres place);
  [[nodiscard]] static bool is_among(const std::vector<Stretch>& places, Nanometres place);
  void divide(const Stepped& stepped, const std::vector<Parted>& parted, Steps& steps) const;

  const StickProblem& problem_;
  RippingPricer& pricer_;
  Saw saw_;
  BoardUses uses_;
  RippingPricer uses_pricer_;
  Cutter uses_cutter_;
  bool patterns_added_ = false;
  std::map<int, Nanometres> shortest_pieces_;                   // by section, with the kerf
  std::map<int, std::set<std::vector<ItemCount>>> piece_sets_;  // by section, known from former questions
  std::map<std::pair<int, std::map<Nanometres, int>>, bool> may_hold_;  // by section and lengths
  Nanometres kerf_;
  Limits limits_;
  Work work_;
};

}  // namespace models::cutting
