// The relaxation in which it is known of each board only how it may be used: which of them are ripped, and between which
// places they are crosscut.
#pragma once

#include <map>
#include <vector>

#include "models/cutting/board_uses.h"
#include "models/cutting/board_worths.h"
#include "models/cutting/cutter.h"
#include "models/cutting/ripping_pricer.h"

namespace models::cutting {

class UsesRelaxation {
 public:
  // The problem and the limits must outlive it.
  UsesRelaxation(const StickProblem& problem, std::vector<BoardUse> of, const Saw& saw, const Limits& limits);
  UsesRelaxation(const UsesRelaxation&) = delete;
  UsesRelaxation& operator=(const UsesRelaxation&) = delete;

  // A pattern that lies so on a board of this section and length, where it does on any.
  void add(int section, Nanometres length, const RippedPattern& lies);
  // All that are known there.
  void add(const UsesRelaxation& other);

  // The relaxation where as many of each group of uses are used as `counts` says, all of them or at most. As few boards
  // as may be are ripped in part.
  enum class End { none, solved, unknown };
  [[nodiscard]] End solve(const UseBounds& bounds, const std::vector<int>& counts, bool all);
  // How often each use is used, as it was solved last.
  [[nodiscard]] const std::vector<double>& used() const { return used_; }
  // Where boards are crosscut then, by kind of board that is ripped in part: from the left to the right.
  struct Placed {
    Stretch anywhere;
    double often = 0;
  };
  [[nodiscard]] std::map<int, std::vector<Placed>> crosscuts() const;
  [[nodiscard]] int kind_of(std::size_t use) const;

  [[nodiscard]] const std::vector<BoardUse>& uses() const { return uses_.uses; }
  [[nodiscard]] Work work() const { return {0, cutter_.iterations(), pricer_.steps()}; }

 private:
  const StickProblem& whole_;
  BoardUses uses_;
  RippingPricer pricer_;
  Cutter cutter_;
  BoardWorths worths_;
  Nanometres kerf_;
  std::vector<double> used_;
};

}  // namespace models::cutting
