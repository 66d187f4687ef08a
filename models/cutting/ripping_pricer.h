// Prices patterns for boards of which a part may be ripped: what the rest of a board is worth at most and what strips of
// any length side by side are worth at most, put together at the best place for the crosscut.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "models/cutting/profile.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

// How the pieces of a pattern lie on its board.
struct RippedPattern {
  int rip = -1;                                // index into the problem's layouts; -1: nothing is ripped
  std::vector<std::vector<ItemCount>> strips;  // by strip of the layout
  std::vector<ItemCount> rest;                 // of the board's own section
};

class RippingPricer : public Pricer {
 public:
  // The problem must outlive the pricer.
  RippingPricer(const StickProblem& problem, const Saw& saw);
  std::vector<Pattern> sample(const Prices& prices, const std::vector<int>& at_most) override;
  Priced price(const Prices& prices, const std::vector<int>& at_most) override;
  // Never: there are far too many.
  std::optional<std::vector<Pattern>> list(const Prices& prices, const std::vector<int>& at_most,
                                           std::size_t most) override;
  [[nodiscard]] std::int64_t steps() const override;

  // The pattern of pieces that lie so; its layout is known from then on.
  Pattern pattern_of(int kind, const RippedPattern& lies);
  // How a pattern of this pricer lies.
  [[nodiscard]] const RippedPattern& lying(const Pattern& pattern) const { return lying_.at(pattern); }
  // All patterns so far.
  [[nodiscard]] const std::map<Pattern, RippedPattern>& known() const { return lying_; }
  // How much of a stick of a section these pieces take, with a kerf behind them.
  [[nodiscard]] Nanometres taken(int section, const std::vector<ItemCount>& items) const;
  [[nodiscard]] bool fits(int kind, const RippedPattern& lies) const;
  // How much of the board is ripped then, with the kerf of the crosscut behind it; 0 where no strip has a piece.
  [[nodiscard]] Nanometres ripped_length(const RippedPattern& lies) const;

 private:
  struct Family {            // one section
    std::vector<int> items;  // where ends may meet, by shape of the nesting
    Nanometres twice_longest = 0;
    std::shared_ptr<Nesting> nesting;
    Profile profile;
  };
  using Step = Profile::Step;
  struct Split {  // the best of one layout in one kind
    double worth = 0;
    const Step* rest = nullptr;
    std::vector<const Step*> strips;
  };
  void fill(const Prices& prices, const std::vector<int>& at_most, bool exact);
  [[nodiscard]] Split best_split(int kind, int rip) const;
  [[nodiscard]] const Step& within(int section, Nanometres twice_length) const;
  [[nodiscard]] std::vector<ItemCount> items_at(int section, const Step& step) const;
  std::vector<Pattern> patterns(int kind, double over, double& worth);
  const StickProblem& problem_;
  Nanometres kerf_;
  Nanometres shortest_;             // part that may be ripped, with the kerf behind it
  std::map<int, Family> families_;  // by section
  std::map<Pattern, RippedPattern> lying_;
  std::int64_t steps_ = 0;
};

}  // namespace models::cutting
